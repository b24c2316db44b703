#pragma once
// The one set of causes that explains all findings best, and the next best one.

#include <optional>
#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {

struct Explanation {
  std::vector<std::size_t> causes;  ///< those that hold, ascending; all others do not
  double log_joint = 0.0;           ///< ln P(these hold, no others do, evidence)
};

struct BestExplanation {
  Explanation best;
  std::optional<Explanation> next;  ///< the next best; none when no cause is in play
  /// How many times as probable as the next best; 1 where two are equally good, infinity without a
  /// next best that is possible.
  double times_next = 1.0;
};

/// The most probable state of all causes together (the most probable explanation of Pearl 1988, 5),
/// which is not the list of the causes that are each probable by themselves: of two rivals that
/// share the probability it takes one.
///
/// In play are the causes linked to a sign that leans to present, and those more likely than not
/// before any. Others never hold in the best set. `next` is the most probable other set of causes
/// in play, the others still out.
///
/// Exact, by branch and bound over sets, part by part (order.h). Bound of a node with causes S
/// taken in and some undecided: every sign that leans to present gains at most what all undecided
/// causes would gain it, and at most the sum of what each would (its log-likelihood is concave);
/// which of the two is decided for each sign by a weight in [0, 1], the weights by coordinate
/// descent on the bound. A sign that leans to absent loses at least its chord (its log-likelihood
/// is convex). Cost: a few dozen nodes on what fitters find; at most 2^16 nodes a part, then
/// "evidence-too-wide" is said and no set is given.
/// Other errors: those of posterior().
Result<BestExplanation> best_explanation(const Network& network, const Evidence& evidence);

}  // namespace pinwright
