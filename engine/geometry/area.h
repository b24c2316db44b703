#pragma once
#include <vector>

#include "engine/geometry/curve.h"

namespace pinwright {

/// Signed area of a closed ring in mm^2, positive when it runs counter-clockwise. Exact for cubic
/// segments up to rounding: Green's theorem, A = 1/2 closed integral of (x dy - y dx), in closed
/// form per segment. REQUIRES: each curve starts where the one before ends, the last closes it.
double signed_area(const std::vector<Curve>& ring);

}  // namespace pinwright
