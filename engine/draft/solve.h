#pragma once
// The small systems of equations of a draft: one to three unknowns.

#include <functional>
#include <vector>

namespace pinwright::drafting {

using Unknowns = std::vector<double>;
using Equations = std::function<std::vector<double>(const Unknowns&)>;

/// Finds x with equations(x) = 0, as many equations as unknowns, by Newton's method with central
/// differences and step halving. On success x is the solution with every residual below
/// `tolerance`; on failure (no convergence in 60 steps, a singular system, a residual that is not
/// finite at the start) x is left at the best point found and false is returned.
bool solve(Unknowns& x, const Equations& equations, double tolerance);

/// Finds t in [low, high] where the growing function f crosses zero, to the last bits, by
/// bisection. Nothing is found (false) when f(low) and f(high) have the same sign or are not
/// finite.
bool bisect(double low, double high, const std::function<double(double)>& f, double& t);

}  // namespace pinwright::drafting
