#pragma once
// Exact posterior of a two-level noisy-OR network, several causes at once, without cancellation.

#include <vector>

#include "engine/base/result.h"
#include "engine/diagnosis/network.h"

namespace pinwright {

enum class Seen : unsigned char { unknown, present, absent };

/// evidence[i] belongs to network.signs[i].
using Evidence = std::vector<Seen>;

struct Posterior {
  std::vector<double> cause;   ///< P(cause | evidence), one per cause
  double evidence = 1.0;       ///< P(evidence)
};

/// Errors: "evidence-size"; "evidence-impossible" when P(evidence) = 0 (a sign seen that nothing
/// can make); "evidence-too-wide" when the frontier would pass 2^24 states.
Result<Posterior> posterior(const Network& network, const Evidence& evidence);

/// P(sign i is seen | evidence) for every sign with Seen::unknown; evidence otherwise 0 or 1.
Result<std::vector<double>> predict_signs(const Network& network, const Evidence& evidence);

}  // namespace pinwright
