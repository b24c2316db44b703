#include "engine/geometry/nearest.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "engine/geometry/roots.h"

namespace pinwright {
namespace {

/// Distances this close count as equal, so that rounding does not choose the place.
constexpr double kEqualMm = 1e-10;

/// Distance from q to the bounding box of the control points: a lower bound for the segment.
double box_distance(const Cubic& c, Vec2 q) {
  Vec2 low = c.p[0], high = c.p[0];
  for (const Vec2& p : c.p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return norm(
      {std::max({low.x - q.x, q.x - high.x, 0.0}), std::max({low.y - q.y, q.y - high.y, 0.0})});
}

/// Ends of c and every t at which c - q stands square to the curve.
std::vector<double> candidates(const Cubic& c, Vec2 q) {
  const std::vector<double> x =
      power_basis(c.p[0].x - q.x, c.p[1].x - q.x, c.p[2].x - q.x, c.p[3].x - q.x);
  const std::vector<double> y =
      power_basis(c.p[0].y - q.y, c.p[1].y - q.y, c.p[2].y - q.y, c.p[3].y - q.y);
  std::vector<double> square(6, 0.0);
  for (std::size_t i = 0; i < 4; ++i) {
    for (std::size_t j = 1; j < 4; ++j) {
      square[i + j - 1] += static_cast<double>(j) * (x[i] * x[j] + y[i] * y[j]);
    }
  }
  std::vector<double> ts{0.0};
  for (const double t : unit_roots(square, 0.0)) {
    if (t > 0.0 && t < 1.0) ts.push_back(t);
  }
  ts.push_back(1.0);
  return ts;
}

}  // namespace

Nearest nearest(const Curve& c, Vec2 q) {
  std::vector<Nearest> found;
  double best = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const Cubic s = c.segment(i);
    if (box_distance(s, q) > best) continue;
    for (const double t : candidates(s, q)) {
      const Vec2 p = point(s, t);
      const double d = distance(p, q);
      if (!(d <= best + kEqualMm)) continue;
      best = std::min(best, d);
      found.push_back({{i, t}, p, d});
    }
  }
  for (const Nearest& n : found) {
    if (n.distance <= best + kEqualMm) return n;
  }
  return {{}, c.start(), std::numeric_limits<double>::infinity()};
}

}  // namespace pinwright
