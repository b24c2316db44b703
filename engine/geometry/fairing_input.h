#pragma once
// What fair_through and refit ask of their input; used by these two alone.

#include <vector>

#include "engine/base/result.h"
#include "engine/geometry/vec2.h"

namespace pinwright {

/// Everything that is wrong with the points and tangents, in one pass.
Problems fairing_problems(const std::vector<Vec2>& points, Vec2 start_tangent, Vec2 end_tangent);

}  // namespace pinwright
