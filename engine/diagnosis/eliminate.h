#pragma once
// Second half of inference: a plan run on weights, up for P(evidence) and down for every cause.
// Shenoy and Shafer, "Axioms for probability and belief-function propagation" (UAI 1990), here with
// the "either has switched it on" product for signs (plan.h).

#include <limits>
#include <vector>

#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/plan.h"

namespace pinwright {

/// P(cause | evidence) : P(not cause | evidence) as on : off, on + off = 1. Both are kept so that
/// neither side of a near certainty is lost.
struct Marginals {
  std::vector<double> on;
  std::vector<double> off;
  double log_evidence = 0.0;
};

/// ln 0: nothing is left.
inline constexpr double kImpossibleLog = -std::numeric_limits<double>::infinity();

/// Numbers at work; may be kept for the next run.
struct Store {
  std::vector<double> numbers;
  std::vector<double> work;
};

/// ln of the part's sum; minus infinity when nothing is left. Leaves in `store` what down() needs.
double up(const Plan& plan, const Shape& shape, const Network& network, const Folded& folded,
          Store& store);

/// Writes on and off of the part's causes. REQUIRES: up() with the same arguments was above minus
/// infinity. False when the two halves meet nowhere within the range of numbers.
bool down(const Plan& plan, const Shape& shape, const Network& network, const Folded& folded,
          Store& store, Marginals& marginals);

}  // namespace pinwright
