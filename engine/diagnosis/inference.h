#pragma once
// Exact posterior of a two-level noisy-OR network, several causes at once, without cancellation.
//
// Method. A sign surely absent is a product over its causes (Heckerman, "A tractable inference
// algorithm for diagnosing multiple diseases", UAI 1989), so it is folded into each cause's own
// weights (fold.h). For signs that are there, or of which something is known that is not certain,
// Heckerman's sum has alternating signs, doubles with each of them and loses digits: at 16 it may
// be wrong by 0.025. Here they and their causes are taken out one by one (order.h, plan.h): the
// state of a cause is whether it holds, the state of a sign whether anything has switched it on so
// far. What is not connected is summed apart. Once up and once down give every cause's posterior.
//
// Cost. With w the greatest number of causes and signs open together: time and memory grow as 2^w
// times the links at that moment, and where two branches meet in k signs as 1.5^k more. w is at
// most the number of findings, and at most the number of their causes; on what fitters find it is
// far less, as a cause of one finding and a finding of one cause cost nothing, and chains and trees
// of them keep w at 2. Unknown and absent signs cost nothing. Finding the order: about the cube of
// the vertices. When the tables would pass 2^23 numbers (64 MB) or the work 2^30 multiplications
// (half a second), "evidence-too-wide" is said and nothing is tried.
//
// Accuracy: all terms positive, so relative rounding only (a few ulp per link). States that are
// 1e-308 times less probable than the leading one at some point of the sum are lost.

#include <vector>

#include "engine/base/result.h"
#include "engine/diagnosis/likelihood.h"
#include "engine/diagnosis/network.h"

namespace pinwright {

/// evidence[i] belongs to network.signs[i]: Seen::present, or a Likelihood of its own.
using Evidence = std::vector<Likelihood>;

struct Posterior {
  std::vector<double> cause;  ///< P(cause | evidence), one per cause
  double evidence = 1.0;      ///< P(evidence); may underflow to 0 with hundreds of rare signs
};

/// Every problem of check(network) too. Errors: "evidence-size"; "likelihood-range" (negative or
/// not finite); "evidence-impossible" when
/// P(evidence) = 0 (a sign seen that nothing can make, or only what another sign rules out);
/// "evidence-too-wide".
/// Laws: no evidence gives the priors; the numbering of nodes does not matter beyond rounding; a
/// cause without a link to a present sign keeps its prior against its absent signs.
Result<Posterior> posterior(const Network& network, const Evidence& evidence);

/// P(sign i is there | evidence) for every sign; 0 or 1 where the evidence is certain.
/// Errors as posterior(). Two sums for each sign that is not certain.
Result<std::vector<double>> predict_signs(const Network& network, const Evidence& evidence);

}  // namespace pinwright
