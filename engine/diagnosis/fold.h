#pragma once
// First half of inference: everything that concerns one cause alone is folded into its weights.

#include <cstddef>
#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {

/// A sign that was seen, or of which something is known that is not certain, and that two or more
/// possible causes share.
struct SharedSign {
  Likelihood observed;
  double leak = 0.0;
  std::vector<std::size_t> causes;  ///< ascending
  std::vector<double> strengths;    ///< one per cause
};

/// P(evidence, causes) = exp(log_scale) * product of on / off
/// * P(what was observed of the shared signs | causes).
struct Folded {
  std::vector<double> on;   ///< weight of each cause holding; on + off = 1
  std::vector<double> off;  ///< weight of it not holding
  std::vector<SharedSign> shared;
  double log_scale = 0.0;
  bool impossible = false;  ///< a present sign that nothing can make any more
};

/// REQUIRES: check(network) is empty, evidence has one entry a sign.
/// Signs surely absent fold by product; any other with one possible cause left folds as well. A
/// cause whose weight of holding has become 0 is no longer possible.
Folded fold(const Network& network, const Evidence& evidence);

/// Check of what every entry point is given: problems of the network, "evidence-size",
/// "likelihood-range".
Problems check(const Network& network, const Evidence& evidence);

}  // namespace pinwright
