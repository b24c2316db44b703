#pragma once
// One unknown: where a growing function crosses zero.

#include <functional>

namespace pinwright::drafting {

/// Finds t in [low, high] where the growing function f crosses zero, to the last bits, by
/// bisection. Nothing is found (false) when f(low) and f(high) have the same sign or are not
/// finite.
bool bisect(double low, double high, const std::function<double(double)>& f, double& t);

}  // namespace pinwright::drafting
