#pragma once
// How like a stretch of text is to each sign, by its words and by what they are about.

#include <cstddef>
#include <map>
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

struct ToldWords {
  std::vector<ToldWord> words;
  bool negated = false;  ///< an odd number of "not"s that no finding has taken
};

struct Like {
  std::size_t sign = 0;
  double score = 0.0;              ///< 0 to 1
  double best = 0.0;               ///< likeness of its best phrase or telling alone, 0 to 1
  bool absent = false;             ///< told with a "not" that the sign's own words have not
  std::vector<std::size_t> words;  ///< places in ToldWords::words that it shares, ascending
};

/// What is compared: how far the sign's best phrase or telling and the told words have each other
/// (geometric mean of the shares, by rarity); the mean of its best eight; and the log-likelihood of
/// the told words among all that is said of the sign, against all signs (smoothed as by F. Jelinek
/// and R. L. Mercer, 1980). Then what structure leaves of it:
///   - a place is named and the sign knows none of the places, or not all: less
///   - one is tight and the other loose, long and short, high and low, front and back, wide and
///     narrow, forward and backward: a fifth
/// A phrase with a "not" counts less against words without one. All figures are our own judgement,
/// set on tellings that were kept apart.
class Resemblance {
 public:
  Resemblance(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer);

  /// What these tokens tell; lent ones are of other clauses.
  ToldWords told(const Reading& reading, const std::vector<std::size_t>& tokens,
                 const std::vector<std::size_t>& lent) const;

  /// The signs that share words with it, best first by their index (likeness.h): the only ones that
  /// rank() and nearest() look at. One for a whole sentence serves all its parts.
  std::vector<std::size_t> shortlist(const ToldWords& told) const;

  /// Best first, at most `most`; signs that are not allowed are left out.
  std::vector<Like> rank(const ToldWords& told, const std::vector<std::size_t>& shortlist,
                         const std::vector<bool>& allowed, std::size_t most) const;

  /// The signs to be offered for it: those ranked, then those of the list that share words with it
  /// though they are about another place.
  std::vector<std::size_t> nearest(const ToldWords& told, const std::vector<std::size_t>& shortlist,
                                   const std::vector<bool>& allowed, std::size_t most) const;

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
  struct Asked;
  static std::vector<FeatureId> query_of(const ToldWords& told);
  Asked asked_of(const ToldWords& told) const;
  double likelihood(const Asked& asked, const Profile& profile) const;
  double likeness(const Asked& asked, const FeaturePhrase& phrase) const;
  double structure(const Asked& asked, std::size_t sign) const;
  Like compare(const Asked& asked, std::size_t sign) const;
  double weight(const ToldWord& word) const;

  Features features_;
  Likeness likeness_;
  std::vector<std::vector<FeatureId>> opposites_[2];  ///< by pair
  std::vector<Direction> directions_;                 ///< by sign
  std::vector<std::optional<std::size_t>> plainer_;
};

/// The shortlist of every sentence, each made when it is first asked for.
class Shortlists {
 public:
  Shortlists(const Reading& reading, const Resemblance& resemblance)
      : reading_(reading), resemblance_(resemblance) {}
  const std::vector<std::size_t>& of_sentence(std::size_t sentence);

 private:
  const Reading& reading_;
  const Resemblance& resemblance_;
  std::map<std::size_t, std::vector<std::size_t>> made_;
};

}  // namespace pinwright::knowledge
