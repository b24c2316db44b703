#pragma once
// The constraints as numbers: value and gradient at given unknowns.

#include <Eigen/Core>

#include "engine/constraint/variables.h"

namespace pinwright {

/// Length of an edge and its derivative by the control points. The derivative is
/// integral of b_i'(t) T(t) dt with b_i the Bernstein basis and T the unit tangent (differentiation
/// under the integral), by Gauss-Legendre; the length itself is arc_length.h's.
struct LengthGradient {
  double length = 0.0;
  std::vector<Vec2> by_point;
};
LengthGradient length_gradient(const Curve& curve);

/// Residuals of a system: lengths in mm, angles in radians times kAngleScaleMm, smooth joints as
/// the sine of the bend times kAngleScaleMm, so that one tolerance serves all.
/// 100 mm: at that radius 0.05 degrees are 0.09 mm, about what a pencil line shows.
inline constexpr double kAngleScaleMm = 100.0;

struct Residuals {
  Eigen::VectorXd value;
  Eigen::MatrixXd jacobian;
};

/// Holds references: block, system and variables must outlive it.
class Constraints {
 public:
  Constraints(const Block& block, const System& system, const Variables& variables);
  int count() const;
  Residuals at(const Eigen::VectorXd& x) const;
  /// Name of a row, in the fitter's words.
  std::string name(int row) const;

 private:
  struct SmoothJoint {
    EdgeAt edge;
    std::size_t joint = 0;  ///< index of the shared control point
  };

  Curve curve(EdgeAt at, const Eigen::VectorXd& x) const;

  const Block& block_;
  const System& system_;
  const Variables& variables_;
  std::vector<SmoothJoint> joints_;
};

}  // namespace pinwright
