#pragma once
// The same bounded problem solved by Ceres.

#include "engine/sizing/bounded_least_squares.h"

namespace pinwright {

/// REQUIRES: no inequalities.
Eigen::VectorXd ceres_reference(const LeastSquares& problem);

}  // namespace pinwright
