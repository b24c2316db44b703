#pragma once
// What words and signs are compared by: stems and classes, each with the weight of its rarity.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "knowledge/words/lexicon.h"

namespace pinwright::knowledge {

using FeatureId = std::size_t;

/// A word of a phrase, a name or a question: its class or its stem, and the classes of which it is
/// a member.
struct FeatureItem {
  std::vector<FeatureId> own;   ///< the class that stands there, or the word's stem
  std::vector<FeatureId> like;  ///< classes that have the word
};

/// A phrase as what it must say.
struct FeaturePhrase {
  std::vector<FeatureItem> items;
};

/// One sign.
struct Profile {
  std::map<FeatureId, double> has;  ///< 1 from name, phrases, zone; less from the question
  std::vector<FeaturePhrase> phrases;
  std::vector<FeaturePhrase> tellings;  ///< whole sentences of different people
  std::vector<std::string> columns;     ///< name, phrases, zone, question as feature words
};

class Features {
 public:
  Features(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer);

  const std::vector<Profile>& profiles() const { return profiles_; }
  /// ln of how few signs have it; 0 for all.
  double weight(FeatureId feature) const { return weights_[feature]; }
  bool is_place(FeatureId feature) const { return is_place_[feature]; }
  std::optional<FeatureId> of_class(TermId term) const;
  std::optional<FeatureId> of_stem(std::string_view stem) const;
  std::optional<FeatureId> of_class_name(std::string_view id) const;
  /// The feature as one word of letters and digits.
  static std::string word(FeatureId feature) { return "f" + std::to_string(feature); }
  std::size_t size() const { return weights_.size(); }

 private:
  FeatureId feature(const std::string& key, PlaceWord place);
  std::vector<FeatureItem> items_of(std::string_view text, const Lexicon& lexicon,
                                    const Stemmer& stemmer);
  FeaturePhrase phrase_of(const std::string& text, const Knowledge& k, const Lexicon& lexicon,
                          const Stemmer& stemmer);
  void learn_tellings(const Knowledge& k, const Sign& sign, Profile& profile,
                      const Lexicon& lexicon, const Stemmer& stemmer);
  void learn(Profile& profile, const std::vector<FeatureItem>& items, double how_much,
             std::string& column);

  std::map<std::string, FeatureId, std::less<>> ids_;  ///< "k<term>" or "w<stem>"
  std::map<std::string, FeatureId, std::less<>> class_names_;
  std::vector<double> weights_;
  std::vector<bool> is_place_;
  std::vector<Profile> profiles_;
};

}  // namespace pinwright::knowledge
