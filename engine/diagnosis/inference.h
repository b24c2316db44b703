#pragma once
// Exact posterior of a two-level noisy-OR network, several causes at once, without cancellation.
//
// Method. An absent sign is a product over its causes (Heckerman, "A tractable inference algorithm
// for diagnosing multiple diseases", UAI 1989), so it is folded into each cause's own weights. For
// present signs Heckerman's sum has alternating signs and loses digits; here they are counted with
// positive terms only: the causes are taken one by one, and the state is which of the present signs
// something has switched on so far. A sign is in the state only from its first cause to its last;
// at its last it must be on. One sweep forward and one backward give every cause's posterior.
//
// Cost: time and memory grow with 2^frontier, the greatest number of present signs open at one
// time (times the links, times the square root of the causes for memory). The frontier is at most
// the number of present signs that two or more still possible causes share; the order of causes is
// chosen greedily to keep it small. Unknown signs cost nothing.
//
// Accuracy: relative rounding only (a few ulp per link). States that are 1e-308 times less
// probable than the leading one at some point of the sweep are lost.

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
/// "evidence-too-wide" when the tables would pass 2^24 numbers (128 MB).
/// Laws: no evidence gives the priors; the numbering of nodes does not matter beyond rounding; a
/// cause without a link to a present sign keeps its prior against its absent signs.
Result<Posterior> posterior(const Network& network, const Evidence& evidence);

/// P(sign i is there | evidence) for every sign; 0 or 1 where the evidence is certain.
/// Errors as posterior(). Two forward sweeps for each sign that is not certain.
Result<std::vector<double>> predict_signs(const Network& network, const Evidence& evidence);

}  // namespace pinwright
