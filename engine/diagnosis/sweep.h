#pragma once
// Second half of inference: the shared present signs, counted with positive terms only.

#include <vector>

#include "engine/base/result.h"
#include "engine/diagnosis/fold.h"

namespace pinwright {

/// P(cause | evidence) : P(not cause | evidence) as on : off, on + off = 1. Both are kept so that
/// neither side of a near certainty is lost.
struct Marginals {
  std::vector<double> on;
  std::vector<double> off;
  double log_evidence = 0.0;
};

/// Errors: "evidence-impossible", "evidence-too-wide".
Result<Marginals> sweep(const Folded& folded);

/// ln P(evidence) alone, by the forward half; minus infinity when it is impossible.
/// Errors: "evidence-too-wide".
Result<double> log_evidence(const Folded& folded);

}  // namespace pinwright
