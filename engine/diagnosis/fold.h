#pragma once
// First half of inference: everything that concerns one cause alone is folded into its weights.
//
//   causes   o   o   o   o        shared signs: known to be there, or known softly, and linked to
//            |\ /|   |   |        two causes or more; they are what ties causes together
//   signs    x . x   -   .        x shared   - surely absent: folds by product   . unknown: nothing
//
// A sign that was seen but has one cause only (a lone sign) folds as well.

#include <cstddef>
#include <optional>
#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {

/// A sign that ties causes together.
struct SharedSign {
  std::size_t sign = 0;
  std::vector<std::size_t> causes;  ///< ascending
  std::vector<double> strengths;    ///< one per cause
};

struct LoneSign {
  std::size_t sign = 0;
  std::optional<std::size_t> cause;  ///< none: only its leak can make it
  double strength = 0.0;
};

/// Which signs matter and whom they tie together; numbers apart.
struct Shape {
  std::vector<SharedSign> shared;
  std::vector<LoneSign> lone;
};

/// P(evidence, causes) = exp(log_scale) * product of on / off
/// * P(what was observed of the shared signs | causes).
struct Folded {
  std::vector<double> on;        ///< weight of each cause holding; on + off = 1
  std::vector<double> off;       ///< weight of it not holding
  std::vector<Likelihood> seen;  ///< one per shared sign: what was observed of it
  double log_scale = 0.0;
  bool impossible = false;  ///< something was observed that nothing can make any more
};

/// REQUIRES: check(network) is empty, evidence has one entry a sign.
Shape shape_of(const Network& network, const Evidence& evidence);

/// REQUIRES: as above; every sign of `evidence` that is neither unknown nor surely absent is in the
/// shape. So one shape serves an evidence and all that differ from it by findings taken back or by
/// further signs found absent.
Folded fold(const Network& network, const Evidence& evidence, const Shape& shape);

/// Check of what every entry point is given: problems of the network, "evidence-size",
/// "likelihood-range".
Problems check(const Network& network, const Evidence& evidence);

}  // namespace pinwright
