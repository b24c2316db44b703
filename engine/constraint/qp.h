#pragma once
// The quadratic programme of one round.

#include <Eigen/Core>
#include <vector>

#include "engine/constraint/residuals.h"
#include "engine/constraint/stiffness.h"

namespace pinwright {

/// minimise 1/2 (d - e)^T H (d - e)  such that  v + J d = 0 (equalities), v + J d >= 0
/// (inequalities), with v and J of `rows` and H factored in `stiffness`.
///
/// Primal-dual active set (Nocedal & Wright, Numerical Optimization, 2006, 16.5): for a working set
/// the minimum is d = e + H^-1 J_W^T m with (J_W H^-1 J_W^T) m = -v_W - J_W e; the inequality with
/// the most negative multiplier leaves, else the one most violated enters, until neither is left.
/// The Schur complement is scaled to a unit diagonal and factored with pivoting; rows that depend
/// on others (constraints that say the same twice) are left out of the factor. `working` holds a
/// flag a row for the inequalities, is where the search starts and is left as it ended (warm
/// start). d need not fulfil rows that contradict each other: the caller looks at the residuals.
void solve_qp(const Residuals& rows, const Stiffness& stiffness, const Eigen::VectorXd& e,
              std::vector<bool>& working, Eigen::VectorXd& d);

}  // namespace pinwright
