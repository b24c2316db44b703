#pragma once
// The knowledge's phrases, made ready for matching.

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "knowledge/model.h"
#include "knowledge/words/sequences.h"
#include "knowledge/words/spelling.h"

namespace pinwright::knowledge {

/// Number of a term: a class or a plain word of the phrases.
using TermId = std::size_t;

struct ReadyItem {
  TermId term = 0;
  bool gap = false;
  int option = 0;
};

struct ReadyPhrase {
  std::size_t sign = 0;  ///< index into Knowledge::signs
  bool denies = false;
  bool ordered = false;
  std::vector<ReadyItem> items;
  std::vector<std::vector<TermId>> options;  ///< unordered: the brackets, each as a whole
};

enum class PlaceWord : unsigned char { none, where, place };

class Lexicon {
 public:
  Lexicon(const Knowledge& k, const Stemmer& stemmer);

  const std::vector<ReadyPhrase>& phrases() const { return phrases_; }
  /// Phrases of which this term must be said; every phrase stands with its rarest such term.
  const std::vector<std::size_t>& phrases_with(TermId term) const { return by_term_[term]; }
  std::size_t terms() const { return by_term_.size(); }
  const Sequences& sequences() const { return sequences_; }

  /// `place`: the term names a zone (neckline, bust); `where`: front, back, side and the like.
  PlaceWord place_of_term(TermId term) const { return place_of_term_[term]; }
  PlaceWord place_of_stem(std::string_view stem) const;
  /// The stem is a word of the sign's zone.
  bool zone_has(std::size_t sign, std::string_view stem) const;
  /// Its name tells what comes of a test: "Pinned out, the fold runs to the bust point".
  bool is_test(std::size_t sign) const { return is_test_[sign]; }
  /// Its name tells of too little: tight, strains, pulls.
  bool is_lack(std::size_t sign) const { return is_lack_[sign]; }
  /// Its name tells of too much: gapes, stands off, loose, slack.
  bool is_excess(std::size_t sign) const { return is_excess_[sign]; }
  std::optional<TermId> class_term(const std::string& id) const {
    const auto known = term_ids_.find("<" + id);
    return known == term_ids_.end() ? std::nullopt : std::optional(known->second);
  }
  bool is_class(TermId term) const { return is_class_[term]; }

  /// Signs that have the term in any phrase, ascending.
  const std::vector<std::size_t>& signs_of_term(TermId term) const { return signs_of_term_[term]; }
  /// Signs whose name or zone has the stem, ascending.
  const std::vector<std::size_t>* signs_of_stem(std::string_view stem) const;
  /// Every stem that phrases, classes and names know, for misspelt words.
  const std::map<std::string, std::vector<std::size_t>, std::less<>>& known() const {
    return signs_of_stem_;
  }

 private:
  void learn_places(const Knowledge& k, const Stemmer& stemmer);
  void learn_phrases(const Knowledge& k, const Stemmer& stemmer);
  void learn_names(const Knowledge& k, const Stemmer& stemmer);
  void learn_phrase(std::size_t sign, const std::string& text, bool denies, const Knowledge& k,
                    const Stemmer& stemmer);
  void index_phrases();
  TermId term(const std::string& name, bool word_class, const Knowledge& k, const Stemmer& stemmer);
  PlaceWord place_of_words(std::string_view words, const Stemmer& stemmer, bool whole) const;

  std::vector<ReadyPhrase> phrases_;
  std::vector<std::vector<std::size_t>> by_term_;
  std::vector<PlaceWord> place_of_term_;
  std::vector<bool> is_class_;
  std::vector<std::vector<std::size_t>> signs_of_term_;
  std::map<std::string, TermId> term_ids_;
  std::map<std::string, std::vector<std::size_t>, std::less<>> signs_of_stem_;
  std::set<std::string, std::less<>> place_stems_;
  std::set<std::string, std::less<>> where_stems_;
  std::vector<std::set<std::string, std::less<>>> zone_stems_;  ///< by sign
  std::vector<bool> is_lack_;                                   ///< by sign
  std::vector<bool> is_excess_;                                 ///< by sign
  std::vector<bool> is_test_;                                   ///< by sign
  Sequences sequences_;
};

}  // namespace pinwright::knowledge
