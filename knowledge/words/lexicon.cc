#include "knowledge/words/lexicon.h"

#include <algorithm>

#include "knowledge/words/function_words.h"
#include "knowledge/words/phrases.h"
#include "knowledge/words/text.h"

namespace pinwright::knowledge {
namespace {

constexpr std::string_view kWhere =
    "front back side left right upper lower center middle inner outer over under";
/// Words of zone names that do not say which zone.
constexpr std::string_view kGeneric =
    "line edge end point area part length width depth height all round whole fit general other "
    "garment total half level";

void add_sorted(std::vector<std::size_t>& numbers, std::size_t number) {
  const auto at = std::lower_bound(numbers.begin(), numbers.end(), number);
  if (at == numbers.end() || *at != number) numbers.insert(at, number);
}

std::set<std::string, std::less<>> stems(std::string_view words) {
  std::set<std::string, std::less<>> found;
  for (const Token& token : tokens(words)) found.insert(token.stem);
  return found;
}

}  // namespace

Lexicon::Lexicon(const Knowledge& k, const Stemmer& stemmer) {
  learn_places(k, stemmer);
  learn_phrases(k, stemmer);
  learn_names(k, stemmer);
  index_phrases();
}

void Lexicon::learn_places(const Knowledge& k, const Stemmer&) {
  where_stems_ = stems(kWhere);
  const std::set<std::string, std::less<>> generic = stems(kGeneric);
  for (const Zone& zone : k.zones) {
    std::set<std::string> own;
    for (const Token& token : tokens(zone.id + " " + zone.name)) {
      if (token.kind != Token::Kind::word || load_of(token.text) == Load::noise) continue;
      if (!generic.contains(token.stem) && !where_stems_.contains(token.stem)) {
        own.insert(token.stem);
      }
    }
    if (own.empty()) {  // a zone named "length" has no better word
      for (const Token& token : tokens(zone.id)) own.insert(token.stem);
    }
    place_stems_.insert(own.begin(), own.end());
  }
}

bool Lexicon::zone_has(std::size_t sign, std::string_view stem) const {
  return zone_stems_[sign].contains(stem);
}

PlaceWord Lexicon::place_of_stem(std::string_view stem) const {
  if (place_stems_.contains(stem)) return PlaceWord::place;
  return where_stems_.contains(stem) ? PlaceWord::where : PlaceWord::none;
}

/// `whole`: every word must be one of place or where.
PlaceWord Lexicon::place_of_words(std::string_view words, const Stemmer&, bool whole) const {
  PlaceWord found = PlaceWord::none;
  for (const Token& token : tokens(words)) {
    const PlaceWord place = place_of_stem(token.stem);
    if (place == PlaceWord::none && whole) return PlaceWord::none;
    found = std::max(found, place);
  }
  return found;
}

TermId Lexicon::term(const std::string& name, bool word_class, const Knowledge& k,
                     const Stemmer& stemmer) {
  const std::string key = (word_class ? "<" : "") + name;
  const auto [known, fresh] = term_ids_.emplace(key, by_term_.size());
  if (!fresh) return known->second;
  const TermId id = known->second;
  by_term_.emplace_back();
  signs_of_term_.emplace_back();
  is_class_.push_back(word_class);
  place_of_term_.push_back(place_of_words(name, stemmer, true));
  if (!word_class) {
    sequences_.add(name, id, stemmer);
    return id;
  }
  for (const WordClass& words : k.words) {
    if (words.id != name) continue;
    for (const std::string& member : words.words) sequences_.add(member, id, stemmer);
  }
  return id;
}

void Lexicon::learn_phrases(const Knowledge& k, const Stemmer& stemmer) {
  for (std::size_t s = 0; s < k.signs.size(); ++s) {
    for (const std::string& text : k.signs[s].phrases) learn_phrase(s, text, false, k, stemmer);
    for (const std::string& text : k.signs[s].denied_by) learn_phrase(s, text, true, k, stemmer);
  }
}

void Lexicon::learn_phrase(std::size_t sign, const std::string& text, bool denies,
                           const Knowledge& k, const Stemmer& stemmer) {
  const Result<Phrase> phrase = parse_phrase(text);
  if (!phrase) return;  // the loader refuses such phrases
  ReadyPhrase ready{sign, denies, phrase->ordered, {}, {}};
  int last_option = 0;
  for (const PhraseItem& item : phrase->items) {
    if (item.kind == PhraseItem::Kind::gap) {
      if (ready.ordered) ready.items.push_back({0, true, 0});
      continue;
    }
    const bool word_class = item.kind == PhraseItem::Kind::word_class;
    std::vector<std::string> words = {item.text};
    if (!word_class) {
      words.clear();
      for (const Token& token : tokens(item.text)) words.push_back(token.text);
    }
    for (const std::string& word : words) {
      if (!word_class && load_of(word) == Load::noise) continue;
      const TermId id = term(word, word_class, k, stemmer);
      add_sorted(signs_of_term_[id], sign);
      if (ready.ordered || item.option == 0) {
        ready.items.push_back({id, false, item.option});
      } else {
        if (item.option != last_option) ready.options.emplace_back();
        last_option = item.option;
        ready.options.back().push_back(id);
      }
    }
  }
  const bool says = std::any_of(ready.items.begin(), ready.items.end(), [](const ReadyItem& item) {
    return !item.gap && item.option == 0;
  });
  if (says) phrases_.push_back(std::move(ready));
}

void Lexicon::learn_names(const Knowledge& k, const Stemmer&) {
  for (std::size_t s = 0; s < k.signs.size(); ++s) {
    const Sign& sign = k.signs[s];
    zone_stems_.push_back(stems(sign.zone));
    const auto named = stems(sign.name);
    const auto lacks = [](const std::string& stem) {
      return stem == "tight" || stem == "strain" || stem == "bind" || stem == "pull" ||
             stem == "cut" || stem == "choke";
    };
    is_lack_.push_back(std::any_of(named.begin(), named.end(), lacks));
    const auto exceeds = [](const std::string& stem) {
      return stem == "gape" || stem == "stand" || stem == "loos" || stem == "slack" ||
             stem == "bag" || stem == "excess" || stem == "wide" || stem == "swing";
    };
    is_excess_.push_back(std::any_of(named.begin(), named.end(), exceeds));
    is_test_.push_back(std::any_of(named.begin(), named.end(), is_test_stem));
    for (const Token& token : tokens(sign.name + " " + sign.zone + " " + sign.id)) {
      if (token.kind != Token::Kind::word || load_of(token.text) != Load::content) continue;
      add_sorted(signs_of_stem_[token.stem], s);
    }
  }
  for (const auto& [name, id] : term_ids_) {
    if (!is_class_[id]) {
      for (const Token& token : tokens(name)) {
        for (std::size_t s : signs_of_term_[id]) add_sorted(signs_of_stem_[token.stem], s);
      }
      continue;
    }
    for (const WordClass& words : k.words) {
      if ("<" + words.id != name) continue;
      for (const std::string& member : words.words) {
        for (const Token& token : tokens(member)) {
          if (load_of(token.text) != Load::content) continue;
          for (std::size_t s : signs_of_term_[id]) add_sorted(signs_of_stem_[token.stem], s);
        }
      }
    }
  }
}

const std::vector<std::size_t>* Lexicon::signs_of_stem(std::string_view stem) const {
  const auto known = signs_of_stem_.find(stem);
  return known == signs_of_stem_.end() ? nullptr : &known->second;
}

void Lexicon::index_phrases() {
  std::vector<std::size_t> uses(by_term_.size());
  for (const ReadyPhrase& phrase : phrases_) {
    for (const ReadyItem& item : phrase.items) {
      if (!item.gap && item.option == 0) ++uses[item.term];
    }
  }
  for (std::size_t p = 0; p < phrases_.size(); ++p) {
    const ReadyItem* rarest = nullptr;
    for (const ReadyItem& item : phrases_[p].items) {
      if (item.gap || item.option != 0) continue;
      if (!rarest || uses[item.term] < uses[rarest->term]) rarest = &item;
    }
    by_term_[rarest->term].push_back(p);
  }
}

}  // namespace pinwright::knowledge
