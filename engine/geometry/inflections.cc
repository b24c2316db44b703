#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "engine/geometry/fairing.h"
#include "engine/geometry/roots.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

/// Flatter than a circle of 10 km: straight.
constexpr double kStraight = 1e-7;

/// Signs of the curvature of c in order, straight parts left out.
void signs_of(const Cubic& c, std::vector<int>& signs) {
  // B' x B'' is a quadratic in t: with B' = a + b t + d t^2 it is
  // a x b + 2 (a x d) t + (b x d) t^2
  const Vec2 a = 3.0 * (c.p[1] - c.p[0]);
  const Vec2 b = 6.0 * (c.p[2] - 2.0 * c.p[1] + c.p[0]);
  const Vec2 d = 3.0 * (c.p[3] - c.p[0] + 3.0 * (c.p[1] - c.p[2]));
  std::vector<double> stops{0.0};
  for (const double t : unit_roots({cross(a, b), 2.0 * cross(a, d), cross(b, d)}, 0.0)) {
    if (t > stops.back() && t < 1.0) stops.push_back(t);
  }
  stops.push_back(1.0);
  for (std::size_t i = 1; i < stops.size(); ++i) {
    // The sign is one all along: the first place that is bent enough tells it, the middle first.
    for (int k = 8; k < 23; ++k) {
      const double at = static_cast<double>(k % 15 + 1) / 16.0;
      const double bend = curvature(c, stops[i - 1] + (stops[i] - stops[i - 1]) * at);
      if (std::abs(bend) < kStraight) continue;
      signs.push_back(bend > 0.0 ? 1 : -1);
      break;
    }
  }
}

}  // namespace

int inflections(const Curve& c) {
  std::vector<int> signs;
  if (!std::all_of(c.points.begin(), c.points.end(), [](Vec2 p) { return finite(p); })) return 0;
  Vec2 arriving;
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const Cubic s = c.segment(i);
    const Vec2 leaving = tangent(s, 0.0);
    if (leaving == Vec2{}) continue;  // shrunk to a point
    if (arriving != Vec2{}) {
      const double corner = turn(arriving, leaving);
      if (std::abs(corner) > kJoinDegrees * std::numbers::pi / 180.0) {
        signs.push_back(corner > 0.0 ? 1 : -1);
      }
    }
    signs_of(s, signs);
    arriving = tangent(s, 1.0);
  }
  int changes = 0;
  for (std::size_t i = 1; i < signs.size(); ++i) changes += signs[i] != signs[i - 1] ? 1 : 0;
  return changes;
}

}  // namespace pinwright
