#pragma once
// Real roots of a polynomial inside the unit interval; used by the other files of this folder.

#include <vector>

namespace pinwright {

/// Roots in [0, 1], ascending, of c[0] + c[1] t + ... + c[n] t^n.
/// Method: the roots of the derivative cut [0, 1] into stretches on which the polynomial is
/// monotone; each stretch whose ends differ in sign holds one root, found by bisection with secant
/// steps. A turning point or an end whose |value| is at most `touch` counts as a root, so a
/// tangency is found once. Roots closer than 1e-9 in t are told once.
/// A polynomial that stays within `touch` on the whole interval gives {0, 1}: it holds everywhere.
/// Coefficients that are not finite give no roots. Work is bounded: n (n + 1) / 2 bisections.
std::vector<double> unit_roots(const std::vector<double>& c, double touch);

/// The power-basis coefficients of the cubic with Bernstein ordinates b0..b3.
std::vector<double> power_basis(double b0, double b1, double b2, double b3);

}  // namespace pinwright
