#pragma once
// The same system solved by Ceres (libceres-dev), which has no equality constraints.

#include "engine/constraint/system.h"

namespace pinwright {

/// Minimises the same objective with the constraints as residuals of weight `weight` (per mm), by
/// Levenberg-Marquardt with a dense QR, and writes the answer into `block`. `rounds` > 1: the
/// method of multipliers (Nocedal & Wright, 2006, 17.3), whose answer does not depend on the
/// weight. Gives the worst residual left, mm.
double ceres_solve(Block& block, const System& system, double weight, int rounds);

}  // namespace pinwright
