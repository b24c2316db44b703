#pragma once
// Polygons by GEOS, behind plain points; used by offset.cc alone. Each call makes and ends its own
// GEOS context, so calls from several threads do not meet.

#include <optional>
#include <string>
#include <vector>

#include "engine/geometry/vec2.h"

namespace pinwright {

/// Twice the signed area, positive when counter-clockwise. The last point is not repeated.
double twice_area(const std::vector<Vec2>& ring);

/// How often the closed line runs round q, counter-clockwise positive.
int winding(const std::vector<Vec2>& ring, Vec2 q);

/// Empty when the ring is a valid polygon, else where it is not.
std::optional<Vec2> invalid_at(const std::vector<Vec2>& ring);

/// The area of `inner` that lies outside of `outer`, mm^2; infinity when it cannot be told.
double area_outside(const std::vector<Vec2>& inner, const std::vector<Vec2>& outer);

/// The outer ring, counter-clockwise, of all that `line` winds round a positive number of times
/// together with `kept`; empty when there is none.
std::vector<Vec2> wound_together(const std::vector<Vec2>& line, const std::vector<Vec2>& kept);

}  // namespace pinwright
