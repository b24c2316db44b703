#include "engine/geometry/fairing_input.h"

#include "engine/geometry/tolerance.h"

namespace pinwright {

Problems fairing_problems(const std::vector<Vec2>& points, Vec2 start_tangent, Vec2 end_tangent) {
  Problems found;
  if (points.size() < 2) {
    found.push_back({"fairing-points", "points", "A curve needs at least two points.",
                     "Give the start, the end and any points between."});
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::string place = "point " + std::to_string(i);
    if (!finite(points[i])) {
      found.push_back({"fairing-points", place, "The point is not finite.",
                       "Give both coordinates in millimetres."});
    } else if (i > 0 && finite(points[i - 1]) &&
               distance(points[i - 1], points[i]) <= kCoincidentMm) {
      found.push_back({"fairing-points", place, "The point is the same place as the one before.",
                       "Leave one of the two out."});
    }
  }
  const auto check = [&](Vec2 t, const char* place) {
    if (!finite(t) || unit(t) == Vec2{}) {
      found.push_back({"fairing-tangent", place, "The tangent has no direction.",
                       "Give a vector that points along the curve."});
    }
  };
  check(start_tangent, "start tangent");
  check(end_tangent, "end tangent");
  return found;
}

}  // namespace pinwright
