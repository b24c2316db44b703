#pragma once
// The objective's own Hessian and its factor.

#include <Eigen/Core>
#include <vector>

#include "engine/constraint/variables.h"

namespace pinwright {

/// H = W + s D2^T D2: the identity, and for every edge that bends the second differences of its
/// control points' movement. Unknowns are numbered along the rings, so that H is a narrow band but
/// for the rows that close a ring; it is kept and factored (H = L L^T) in its envelope: from the
/// first entry of each row to the diagonal (A. George & J. W. Liu, Computer Solution of Large
/// Sparse Positive Definite Systems, 1981, ch. 4). Cost: count x (mean row width)^2, some
/// microseconds for a block.
class Stiffness {
 public:
  Stiffness(const Variables& variables, double smoothness);

  int count() const { return static_cast<int>(first_.size()); }
  /// b becomes L^-1 b / L^-T b, in place; `from` is the first entry of b that is not nothing.
  /// REQUIRES: b.size() == count().
  void forward(Eigen::Ref<Eigen::VectorXd> b, int from = 0) const;
  void backward(Eigen::Ref<Eigen::VectorXd> b) const;
  /// H itself, dense: for tests.
  static Eigen::MatrixXd dense(const Variables& variables, double smoothness);

 private:
  double* row(int i) { return values_.data() + offset_[static_cast<std::size_t>(i)]; }
  const double* row(int i) const { return values_.data() + offset_[static_cast<std::size_t>(i)]; }

  std::vector<int> first_;              ///< column of the first entry of a row
  std::vector<std::ptrdiff_t> offset_;  ///< of column 0 of the row in values_ (may be negative)
  std::vector<double> values_;
};

}  // namespace pinwright
