#pragma once
// Small dense least squares with bounds and linear inequalities, solved exactly.
//
//     minimise |A x - b|^2   such that   least <= x <= most,   C x >= d
//
// Method: the columns are scaled to unit length and A is reduced by Householder QR, which turns the
// problem into the least distance from a point to a polyhedron (Lawson & Hanson, Solving Least
// Squares Problems, 1974, ch. 23; the normal equations, which square the condition, are never
// formed). That is solved by the dual active-set method of Goldfarb & Idnani (Mathematical
// Programming 27, 1983): it starts at the unconstrained answer, needs no feasible start, and when
// nothing satisfies all constraints it ends with the constraints that contradict each other
// (Farkas' lemma). At the end the equations of the active set are solved once more and the
// Karush-Kuhn-Tucker conditions are checked.
// Where A lacks rank the answer is found by proximal steps from 0 (Rockafellar, SIAM J. Control
// Optim. 14, 1976): a minimiser, with no part of it that A does not see unless a bound asks for it.

#include <Eigen/Core>
#include <vector>

namespace pinwright {

struct LeastSquares {
  Eigen::MatrixXd a;  ///< rows x n, n >= 1
  Eigen::VectorXd b;
  Eigen::VectorXd least;  ///< n lower bounds, -infinity for none; empty: no lower bounds
  Eigen::VectorXd most;   ///< n upper bounds, +infinity for none; empty: no upper bounds
  Eigen::MatrixXd c;      ///< k x n; no rows: no inequalities
  Eigen::VectorXd d;
};

/// Constraints are numbered: 0 to n-1 the lower bounds, n to 2n-1 the upper bounds, from 2n on the
/// rows of c.
struct LeastSquaresAnswer {
  bool feasible = false;   ///< false: no x satisfies all constraints; `clash` says which
  bool converged = false;  ///< false: numbers that are not finite, or the rounds ran out
  Eigen::VectorXd x;       ///< n; empty unless feasible and converged
  /// One for each constraint, >= 0, 0 where it does not press: A^T (A x - b) = sum of multiplier
  /// times the constraint's normal.
  Eigen::VectorXd multiplier;
  std::vector<int> active;  ///< constraints that hold x, ascending
  std::vector<int> clash;  ///< when not feasible: constraints that contradict each other, ascending
  int rank = 0;            ///< of A
  /// Worst violation of the optimality conditions, each relative to the size of its terms.
  double kkt = 0.0;
  int rounds = 0;
};

/// The same input gives the same bits. REQUIRES: the sizes agree.
LeastSquaresAnswer solve_least_squares(const LeastSquares& problem);

}  // namespace pinwright
