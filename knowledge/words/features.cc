#include "knowledge/words/features.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "knowledge/words/function_words.h"
#include "knowledge/words/phrases.h"

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kMostTimes = 2;
constexpr double kNameCounts = 3.0;     ///< what a name counts against a phrase
constexpr double kTellingCounts = 1.5;  ///< the same of a telling
constexpr double kAsked = 0.6;  ///< what a word of the question counts against one of a phrase

void add_feature(std::vector<FeatureId>& features, FeatureId feature) {
  if (std::find(features.begin(), features.end(), feature) == features.end()) {
    features.push_back(feature);
  }
}

}  // namespace

Features::Features(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer) {
  std::vector<Columns> all_columns;
  for (const Sign& sign : k.signs) {
    Profile profile;
    Columns columns(5);
    const std::vector<FeatureItem> name = items_of(sign.name, lexicon, stemmer);
    learn(profile, name, 1.0, columns[0]);
    profile.phrases.push_back({name, 0.0, false});
    for (const std::string& text : sign.phrases) {
      FeaturePhrase phrase = phrase_of(text, lexicon, stemmer);
      learn(profile, phrase.items, 1.0, columns[1]);
      if (!phrase.items.empty()) profile.phrases.push_back(std::move(phrase));
    }
    profile.own_phrases = profile.phrases.size();
    std::string zone = sign.zone;
    std::replace(zone.begin(), zone.end(), '-', ' ');
    learn(profile, items_of(zone, lexicon, stemmer), 1.0, columns[2]);
    learn(profile, items_of(sign.ask, lexicon, stemmer), kAsked, columns[3]);
    profiles_.push_back(std::move(profile));
    all_columns.push_back(std::move(columns));
  }
  learn_tellings(k, lexicon, stemmer, all_columns);
  for (std::size_t s = 0; s < profiles_.size(); ++s) {
    for (const auto& column : all_columns[s]) {
      std::string text;
      for (const auto& [f, times] : column) {
        for (std::size_t n = 0; n < std::min(times, kMostTimes); ++n) text += word(f) + " ";
      }
      profiles_[s].columns.push_back(std::move(text));
    }
  }
  weigh();
}

void Features::weigh() {
  std::vector<std::size_t> signs(weights_.size());
  usual_.assign(weights_.size(), 0.0);
  for (Profile& profile : profiles_) {
    for (const auto& [feature, how_much] : profile.has) ++signs[feature];
    double all = 0.0;
    for (std::size_t p = 0; p < profile.phrases.size(); ++p) {
      const double counts = p == 0 ? kNameCounts : p < profile.own_phrases ? 1.0 : kTellingCounts;
      for (const FeatureItem& item : profile.phrases[p].items) {
        const double one = counts / static_cast<double>(item.own.size() + item.like.size());
        for (FeatureId f : item.own) profile.shares[f] += one;
        for (FeatureId f : item.like) profile.shares[f] += one;
        all += counts;
      }
    }
    for (auto& [feature, share] : profile.shares) {
      share /= all;
      usual_[feature] += share / static_cast<double>(profiles_.size());
    }
  }
  const double all = static_cast<double>(profiles_.size()) + 1.0;
  for (std::size_t f = 0; f < weights_.size(); ++f) {
    weights_[f] = std::log(all / (static_cast<double>(signs[f]) + 0.5));
  }
  for (Profile& profile : profiles_) {
    for (FeaturePhrase& phrase : profile.phrases) {
      for (FeatureItem& item : phrase.items) {
        for (FeatureId f : item.own.empty() ? item.like : item.own) {
          item.weight = std::max(item.weight, weights_[f]);
        }
        phrase.weight += item.weight;
      }
    }
  }
}

FeatureId Features::fresh(PlaceWord place) {
  weights_.push_back(0.0);
  is_place_.push_back(place == PlaceWord::place);
  return weights_.size() - 1;
}

FeatureId Features::class_feature(TermId term, PlaceWord place) {
  if (term >= of_class_.size()) of_class_.resize(term + 1);
  if (!of_class_[term]) of_class_[term] = fresh(place);
  return *of_class_[term];
}

FeatureId Features::stem_feature(const std::string& stem, PlaceWord place) {
  const auto known = of_stem_.find(stem);
  if (known != of_stem_.end()) return known->second;
  return of_stem_.emplace(stem, fresh(place)).first->second;
}

std::optional<FeatureId> Features::of_stem(std::string_view stem) const {
  const auto known = of_stem_.find(std::string(stem));
  if (known == of_stem_.end()) return std::nullopt;
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
      const FeatureId f = class_feature(run.id, lexicon.place_of_term(run.id));
      add_feature(at[i].like, f);
      for (std::size_t t : run.tokens) inside[t] = inside[t] || t != i;
    }
  }
  std::vector<FeatureItem> items;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i].kind != Token::Kind::word) continue;
    const bool than = i + 1 < words.size() && words[i + 1].text == "than";
    const bool content =
        (load_of(words[i].text) == Load::content || than) && !is_negation(words[i].text);
    if (content)
      add_feature(at[i].own, stem_feature(words[i].stem, lexicon.place_of_stem(words[i].stem)));
    if (!content && at[i].like.empty()) continue;
    if (!content && inside[i]) continue;
    items.push_back(std::move(at[i]));
  }
  return items;
}

FeaturePhrase Features::phrase_of(const std::string& text, const Lexicon& lexicon,
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
      if (is_negation(item.text)) out.negated = !out.negated;
      continue;
    }
    flush();
    if (item.kind == PhraseItem::Kind::gap) continue;
    const std::optional<TermId> term = lexicon.class_term(item.text);
    if (!term) continue;
    const FeatureId f = class_feature(*term, lexicon.place_of_term(*term));
    class_names_.emplace(item.text, f);
    out.items.push_back({{f}, {}, 0.0});
  }
  flush();
  return out;
}

void Features::learn_tellings(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer,
                              std::vector<Columns>& columns) {
  std::map<std::string_view, std::size_t> signs;
  for (std::size_t s = 0; s < k.signs.size(); ++s) signs.emplace(k.signs[s].id, s);
  for (const Telling& telling : k.tellings) {
    const std::string own_words = "said-" + telling.about;  // a cause is told by this sign
    const auto sign =
        signs.contains(telling.about) ? signs.find(telling.about) : signs.find(own_words);
    if (sign == signs.end()) continue;
    for (const std::string& text : telling.said) {
      FeaturePhrase one{items_of(text, lexicon, stemmer), 0.0, false};
      for (const Token& token : tokens(text)) {
        if (token.kind == Token::Kind::word && is_negation(token.text)) {
          one.negated = !one.negated;
        }
      }
      Profile& profile = profiles_[sign->second];
      learn(profile, one.items, 1.0, columns[sign->second][4]);
      if (!one.items.empty()) profile.phrases.push_back(std::move(one));
    }
  }
}

void Features::learn(Profile& profile, const std::vector<FeatureItem>& items, double how_much,
                     std::map<FeatureId, std::size_t>& column) {
  for (const FeatureItem& item : items) {
    for (const auto* features : {&item.own, &item.like}) {
      for (FeatureId f : *features) {
        double& has = profile.has[f];
        has = std::max(has, how_much);
        ++column[f];
      }
    }
  }
}

}  // namespace pinwright::knowledge
