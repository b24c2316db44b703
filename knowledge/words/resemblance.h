#pragma once
// How like a stretch of text is to each sign, by its words and by what they are about.

#include <cstddef>
#include <vector>

#include "knowledge/words/clauses.h"
#include "knowledge/words/features.h"
#include "knowledge/words/likeness.h"

namespace pinwright::knowledge {

/// A word of the stretch.
struct ToldWord {
  std::size_t token = 0;
  std::vector<FeatureId> classes;
  std::optional<FeatureId> stem;
  bool place = false;
  bool lent = false;     ///< of another clause
  bool unasked = false;  ///< counts where a sign speaks of it, else not (postures)
};

/// What was told and all that can be said of its direction.
struct ToldWords {
  std::vector<ToldWord> words;
};

struct Like {
  std::size_t sign = 0;
  double score = 0.0;              ///< 0 to 1
  std::vector<std::size_t> words;  ///< places in ToldWords::words that it shares, ascending
};

/// The score is the share of the told words, by the weight of their rarity, that the sign speaks
/// of, times (0.35 + 0.65 x the share of its best phrase that was told), times what structure
/// leaves of it:
///   - a place is named and the sign knows none of the places: 0; it knows some of them: less
///   - one is tight and the other loose, long and short, high and low, front and back, wide and
///     narrow, forward and backward: a fifth
/// All figures are our own judgement, set on described try-ons.
class Resemblance {
 public:
  Resemblance(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer);

  /// What these tokens tell; lent ones are of other clauses.
  ToldWords told(const Reading& reading, const std::vector<std::size_t>& tokens,
                 const std::vector<std::size_t>& lent) const;

  /// Best first, at most `most`; signs that are not allowed are left out.
  std::vector<Like> rank(const ToldWords& told, const std::vector<bool>& allowed,
                         std::size_t most) const;

  /// The signs to be offered for it: those ranked, then those that share words with it though they
  /// are about another place.
  std::vector<std::size_t> nearest(const ToldWords& told, const std::vector<bool>& allowed,
                                   std::size_t most) const;

  /// One is a kind of the other, or both of a third.
  bool are_kin(std::size_t a, std::size_t b) const;
  /// The plainer sign of which it is a kind.
  std::optional<std::size_t> plainer(std::size_t sign) const { return plainer_[sign]; }
  /// The words tell a direction (tight, long, ...) by which the sign differs from its plainer one.
  bool tells_kind(const ToldWords& told, std::size_t sign) const;

 private:
  /// By pair of opposites: -1 the first, 1 the second, 0 neither or both.
  using Direction = std::vector<int>;
  Direction direction_of(const ToldWords& told) const;
  Direction direction_of(const Profile& profile) const;
  static std::vector<FeatureId> query_of(const ToldWords& told);
  Like compare(const ToldWords& told, const Direction& direction, std::size_t sign) const;
  double weight(const ToldWord& word) const;
  double best_phrase(const std::vector<FeatureId>& told, const Profile& profile) const;

  Features features_;
  Likeness likeness_;
  std::vector<std::vector<FeatureId>> opposites_[2];  ///< by pair
  std::vector<Direction> directions_;                 ///< by sign
  std::vector<std::optional<std::size_t>> plainer_;
};

}  // namespace pinwright::knowledge
