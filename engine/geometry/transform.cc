#include "engine/geometry/transform.h"

#include <cmath>

namespace pinwright {

Affine translation(Vec2 by) { return {1, 0, 0, 1, by}; }

Affine rotation_about(Vec2 pivot, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {
      c, -s, s, c, {pivot.x - (c * pivot.x - s * pivot.y), pivot.y - (s * pivot.x + c * pivot.y)}};
}

Affine mirror_x(double at) { return {-1, 0, 0, 1, {2.0 * at, 0}}; }

Affine then(const Affine& first, const Affine& second) {
  return {second.a * first.a + second.b * first.c, second.a * first.b + second.b * first.d,
          second.c * first.a + second.d * first.c, second.c * first.b + second.d * first.d,
          apply(second, first.move)};
}

Vec2 apply(const Affine& m, Vec2 p) {
  return {m.a * p.x + m.b * p.y + m.move.x, m.c * p.x + m.d * p.y + m.move.y};
}

Cubic apply(const Affine& m, const Cubic& c) {
  return {{apply(m, c.p[0]), apply(m, c.p[1]), apply(m, c.p[2]), apply(m, c.p[3])}};
}

Curve apply(const Affine& m, const Curve& c) {
  Curve out = c;
  for (Vec2& p : out.points) p = apply(m, p);
  return out;
}

}  // namespace pinwright
