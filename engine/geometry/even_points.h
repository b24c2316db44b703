#pragma once
#include <vector>

#include "engine/geometry/curve.h"

namespace pinwright {

/// count + 1 points at equal shares of the arc length, ends included (bit for bit). For looking at
/// and comparing curves: the places are right to about a thousandth of the length between two of
/// them, at a fraction of place_at()'s cost. REQUIRES: count >= 1, a curve of at least one segment.
std::vector<Vec2> even_points(const Curve& c, int count);

}  // namespace pinwright
