#pragma once
// The constraints as numbers: value and gradient at given unknowns.

#include <Eigen/Core>
#include <string>
#include <vector>

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

/// One row a constraint, gradients by their entries that are not nothing (an unknown may stand in a
/// row more than once: its entries add up). Equalities want value = 0; of an inequality the row is
/// signed so that it wants value >= 0.
class Residuals {
 public:
  struct Entry {
    int unknown = 0;
    double factor = 0.0;
  };

  int count() const { return static_cast<int>(value.size()); }
  std::vector<double> value;
  std::vector<bool> inequality;
  std::vector<Entry> entries;
  std::vector<int> row_start;  ///< count() + 1 of them

  const Entry* begin(int row) const { return entries.data() + row_start[index(row)]; }
  const Entry* end(int row) const { return entries.data() + row_start[index(row) + 1]; }
  /// How far a row is from holding: |value|, or what an inequality lacks.
  double miss(int row) const {
    const double v = value[index(row)];
    return inequality[index(row)] ? (v < 0.0 ? -v : 0.0) : (v < 0.0 ? -v : v);
  }
  /// The worst miss; not finite when any value is not.
  double worst() const;
  /// Gradients as a dense matrix: for tests.
  Eigen::MatrixXd jacobian(int unknowns) const;

 private:
  static std::size_t index(int row) { return static_cast<std::size_t>(row); }
};

/// Holds references: block, system and variables must outlive it.
class Constraints {
 public:
  Constraints(const Block& block, const System& system, const Variables& variables);
  int count() const;
  /// Fills `r`, whose memory is used again.
  void at(const Eigen::VectorXd& x, Residuals& r) const;
  /// Name of a row, in the fitter's words, and what to do to relax it (may be empty).
  std::string name(int row) const;
  std::string relax(int row) const;

 private:
  struct SmoothJoint {
    EdgeAt edge;
    std::size_t joint = 0;  ///< index of the shared control point
  };

  Curve curve(EdgeAt at, const Eigen::VectorXd& x) const;
  Vec2 corner(CornerAt at, const Eigen::VectorXd& x) const;

  const Block& block_;
  const System& system_;
  const Variables& variables_;
  std::vector<SmoothJoint> joints_;
};

}  // namespace pinwright
