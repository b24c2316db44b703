#include "engine/geometry/area.h"

namespace pinwright {

double signed_area(const std::vector<Curve>& ring) {
  if (ring.empty() || ring.front().points.empty()) return 0.0;
  // about the first point instead of the origin: a piece far out on the sheet loses no digits
  const Vec2 o = ring.front().start();
  double twenty_areas = 0.0;
  for (const Curve& c : ring) {
    for (std::size_t i = 0; i < c.segments(); ++i) {
      const Cubic s = c.segment(i);
      const Vec2 a = s.p[0] - o, b = s.p[1] - o, d = s.p[2] - o, e = s.p[3] - o;
      // 1/2 of the integral of B x B' dt, Bernstein products integrated term by term
      twenty_areas += 6.0 * (cross(a, b) + cross(d, e)) +
                      3.0 * (cross(a, d) + cross(b, d) + cross(b, e)) + cross(a, e);
    }
  }
  return twenty_areas / 20.0;
}

}  // namespace pinwright
