#include "knowledge/words/features.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "knowledge/words/function_words.h"
#include "knowledge/words/phrases.h"

namespace pinwright::knowledge {
namespace {

constexpr double kTold = 0.6;   ///< what a word of a telling counts against one of a phrase
constexpr double kAsked = 0.6;  ///< what a word of the question counts against one of a phrase

void add_feature(std::vector<FeatureId>& features, FeatureId feature) {
  if (std::find(features.begin(), features.end(), feature) == features.end()) {
    features.push_back(feature);
  }
}

}  // namespace

Features::Features(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer) {
  for (const Sign& sign : k.signs) {
    Profile profile;
    profile.columns.resize(4);
    const std::vector<FeatureItem> name = items_of(sign.name, lexicon, stemmer);
    learn(profile, name, 1.0, profile.columns[0]);
    profile.phrases.push_back({name});
    for (const std::string& text : sign.phrases) {
      FeaturePhrase phrase = phrase_of(text, k, lexicon, stemmer);
      learn(profile, phrase.items, 1.0, profile.columns[1]);
      if (!phrase.items.empty()) profile.phrases.push_back(std::move(phrase));
    }
    std::string zone = sign.zone;
    std::replace(zone.begin(), zone.end(), '-', ' ');
    learn(profile, items_of(zone, lexicon, stemmer), 1.0, profile.columns[2]);
    learn(profile, items_of(sign.ask, lexicon, stemmer), kAsked, profile.columns[3]);
    learn_tellings(k, sign, profile, lexicon, stemmer);
    profiles_.push_back(std::move(profile));
  }
  std::vector<std::size_t> signs(weights_.size());
  for (const Profile& profile : profiles_) {
    for (const auto& [feature, how_much] : profile.has) ++signs[feature];
  }
  const double all = static_cast<double>(k.signs.size()) + 1.0;
  for (std::size_t f = 0; f < weights_.size(); ++f) {
    weights_[f] = std::log(all / (static_cast<double>(signs[f]) + 0.5));
  }
}

void Features::learn_tellings(const Knowledge& k, const Sign& sign, Profile& profile,
                              const Lexicon& lexicon, const Stemmer& stemmer) {
  for (const Telling& telling : k.tellings) {
    if (telling.about != sign.id) continue;
    for (const std::string& text : telling.said) {
      FeaturePhrase phrase{items_of(text, lexicon, stemmer)};
      learn(profile, phrase.items, kTold, profile.columns[1]);
      if (!phrase.items.empty()) profile.tellings.push_back(std::move(phrase));
    }
  }
}

FeatureId Features::feature(const std::string& key, PlaceWord place) {
  const auto [known, fresh] = ids_.emplace(key, weights_.size());
  if (fresh) {
    weights_.push_back(0.0);
    is_place_.push_back(place == PlaceWord::place);
  }
  return known->second;
}

std::optional<FeatureId> Features::of_class(TermId term) const {
  const auto known = ids_.find("k" + std::to_string(term));
  if (known == ids_.end()) return std::nullopt;
  return known->second;
}

std::optional<FeatureId> Features::of_stem(std::string_view stem) const {
  const auto known = ids_.find("w" + std::string(stem));
  if (known == ids_.end()) return std::nullopt;
  return known->second;
}

std::optional<FeatureId> Features::of_class_name(std::string_view id) const {
  const auto known = class_names_.find(id);
  if (known == class_names_.end()) return std::nullopt;
  return known->second;
}

std::vector<FeatureItem> Features::items_of(std::string_view text, const Lexicon& lexicon,
                                            const Stemmer& stemmer) {
  const std::vector<Token> words = tokens(text);
  std::vector<FeatureItem> at(words.size());
  std::vector<bool> inside(words.size());
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i].kind != Token::Kind::word) continue;
    for (const Run& run : lexicon.sequences().at(words, i, words.size(), stemmer)) {
      if (!lexicon.is_class(run.id)) continue;
      const FeatureId f = feature("k" + std::to_string(run.id), lexicon.place_of_term(run.id));
      add_feature(at[i].like, f);
      for (std::size_t t : run.tokens) inside[t] = inside[t] || t != i;
    }
  }
  std::vector<FeatureItem> items;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i].kind != Token::Kind::word) continue;
    const bool content = load_of(words[i].text) == Load::content;
    if (content)
      add_feature(at[i].own, feature("w" + words[i].stem, lexicon.place_of_stem(words[i].stem)));
    if (!content && at[i].like.empty()) continue;
    if (!content && inside[i]) continue;
    items.push_back(std::move(at[i]));
  }
  return items;
}

FeaturePhrase Features::phrase_of(const std::string& text, const Knowledge&, const Lexicon& lexicon,
                                  const Stemmer& stemmer) {
  FeaturePhrase out;
  const Result<Phrase> phrase = parse_phrase(text);
  if (!phrase) return out;
  std::string plain;
  const auto flush = [&] {
    for (FeatureItem& item : items_of(plain, lexicon, stemmer))
      out.items.push_back(std::move(item));
    plain.clear();
  };
  for (const PhraseItem& item : phrase->items) {
    if (item.option != 0) continue;
    if (item.kind == PhraseItem::Kind::word) {
      plain += item.text + " ";
      continue;
    }
    flush();
    if (item.kind == PhraseItem::Kind::gap) continue;
    const std::optional<TermId> term = lexicon.class_term(item.text);
    if (!term) continue;
    const FeatureId f = feature("k" + std::to_string(*term), lexicon.place_of_term(*term));
    class_names_.emplace(item.text, f);
    out.items.push_back({{f}, {}});
  }
  flush();
  return out;
}

void Features::learn(Profile& profile, const std::vector<FeatureItem>& items, double how_much,
                     std::string& column) {
  for (const FeatureItem& item : items) {
    for (const auto* features : {&item.own, &item.like}) {
      for (FeatureId f : *features) {
        double& has = profile.has[f];
        has = std::max(has, how_much);
        column += word(f) + " ";
      }
    }
  }
}

}  // namespace pinwright::knowledge
