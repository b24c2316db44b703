#include <algorithm>
#include <vector>

#include "engine/geometry/intersect.h"
#include "engine/geometry/roots.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

/// A turning point this near to the line touches it.
constexpr double kTouchMm = 1e-9;

/// Places where the chosen coordinate of c equals `level`.
std::vector<CurvePlace> at_level(const Curve& c, double level, double Vec2::*axis) {
  std::vector<CurvePlace> found;
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const Cubic s = c.segment(i);
    // The curve lies within the span of its control points.
    const auto [low, high] = std::minmax({s.p[0].*axis, s.p[1].*axis, s.p[2].*axis, s.p[3].*axis});
    if (level < low - kTouchMm || level > high + kTouchMm) continue;
    const std::vector<double> ordinates = power_basis(s.p[0].*axis - level, s.p[1].*axis - level,
                                                      s.p[2].*axis - level, s.p[3].*axis - level);
    for (const double t : unit_roots(ordinates, kTouchMm)) {
      // the joint was already told as the end of the segment before
      const bool again = !found.empty() && found.back().segment + 1 == i &&
                         found.back().t > 1.0 - 1e-9 &&
                         distance(point(s, t), s.p[0]) <= kCoincidentMm && t < 1e-3;
      if (!again) found.push_back({i, t});
    }
  }
  return found;
}

}  // namespace

std::vector<CurvePlace> at_height(const Curve& c, double y) { return at_level(c, y, &Vec2::y); }
std::vector<CurvePlace> at_x(const Curve& c, double x) { return at_level(c, x, &Vec2::x); }

}  // namespace pinwright
