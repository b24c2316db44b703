#pragma once
// What words and signs are compared by: stems and classes, each with the weight of its rarity.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "knowledge/words/lexicon.h"

namespace pinwright::knowledge {

using FeatureId = std::size_t;

/// A word of a phrase, a name or a question: its class or its stem, and the classes of which it is
/// a member.
struct FeatureItem {
  std::vector<FeatureId> own;   ///< the class that stands there, or the word's stem
  std::vector<FeatureId> like;  ///< classes that have the word
  double weight = 0.0;          ///< of the rarest of its own
};

/// A phrase as what it must say, or a telling as what it says. A "not" is no item.
struct FeaturePhrase {
  std::vector<FeatureItem> items;
  double weight = 0.0;   ///< of all items
  bool negated = false;  ///< says it with an odd number of "not"s: "will not lie flat"
};

/// One sign.
struct Profile {
  std::map<FeatureId, double> has;     ///< 1 from all but the question, less from that
  std::vector<FeaturePhrase> phrases;  ///< the name first, then phrases, then tellings
  std::size_t own_phrases = 0;         ///< how many are name and phrases
  std::map<FeatureId, double> shares;  ///< of all that is said of it; they sum to 1
  std::vector<std::string> columns;    ///< name, phrases, zone, question, tellings, as words;
                                       ///< each at most twice a column, for the look-up's sake
};

class Features {
 public:
  Features(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer);

  const std::vector<Profile>& profiles() const { return profiles_; }
  /// ln of how few signs have it; 0 for all.
  double weight(FeatureId feature) const { return weights_[feature]; }
  /// The mean of the signs' shares.
  double usual_share(FeatureId feature) const { return usual_[feature]; }
  bool is_place(FeatureId feature) const { return is_place_[feature]; }
  std::optional<FeatureId> of_class(TermId term) const {
    return term < of_class_.size() ? of_class_[term] : std::nullopt;
  }
  std::optional<FeatureId> of_stem(std::string_view stem) const;
  std::optional<FeatureId> of_class_name(std::string_view id) const;
  /// The feature as one word of letters and digits.
  static std::string word(FeatureId feature) { return "f" + std::to_string(feature); }
  std::size_t size() const { return weights_.size(); }

 private:
  FeatureId class_feature(TermId term, PlaceWord place);
  FeatureId stem_feature(const std::string& stem, PlaceWord place);
  FeatureId fresh(PlaceWord place);
  std::vector<FeatureItem> items_of(std::string_view text, const Lexicon& lexicon,
                                    const Stemmer& stemmer);
  FeaturePhrase phrase_of(const std::string& text, const Lexicon& lexicon, const Stemmer& stemmer);
  using Columns = std::vector<std::map<FeatureId, std::size_t>>;  ///< how often each stands
  void learn_tellings(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer,
                      std::vector<Columns>& columns);
  void weigh();
  static void learn(Profile& profile, const std::vector<FeatureItem>& items, double how_much,
                    std::map<FeatureId, std::size_t>& column);

  std::vector<std::optional<FeatureId>> of_class_;      ///< by term
  std::unordered_map<std::string, FeatureId> of_stem_;  ///< only looked up in
  std::map<std::string, FeatureId, std::less<>> class_names_;
  std::vector<double> weights_;
  std::vector<double> usual_;
  std::vector<bool> is_place_;
  std::vector<Profile> profiles_;
};

}  // namespace pinwright::knowledge
