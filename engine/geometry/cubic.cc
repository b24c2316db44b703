#include "engine/geometry/cubic.h"

#include <algorithm>
#include <cmath>

#include "engine/geometry/roots.h"

namespace pinwright {
namespace {

/// Derivatives shorter than this part of the control polygon's extent count as vanished.
constexpr double kVanished = 1e-12;

double extent(const Cubic& c) {
  double e = 0.0;
  for (const Vec2& q : c.p) e = std::max({e, std::abs(q.x - c.p[0].x), std::abs(q.y - c.p[0].y)});
  return e;
}

}  // namespace

Cubic straight(Vec2 a, Vec2 b) {
  return {{a,
           {a.x + (b.x - a.x) / 3.0, a.y + (b.y - a.y) / 3.0},
           {b.x - (b.x - a.x) / 3.0, b.y - (b.y - a.y) / 3.0},
           b}};
}

Vec2 point(const Cubic& c, double t) {
  if (t <= 0.0) return c.p[0];
  if (t >= 1.0) return c.p[3];
  const double s = 1.0 - t;
  const double b0 = s * s * s, b1 = 3.0 * s * s * t, b2 = 3.0 * s * t * t, b3 = t * t * t;
  return {b0 * c.p[0].x + b1 * c.p[1].x + b2 * c.p[2].x + b3 * c.p[3].x,
          b0 * c.p[0].y + b1 * c.p[1].y + b2 * c.p[2].y + b3 * c.p[3].y};
}

Vec2 derivative(const Cubic& c, double t) {
  const double s = 1.0 - t;
  return 3.0 * s * s * (c.p[1] - c.p[0]) + 6.0 * s * t * (c.p[2] - c.p[1]) +
         3.0 * t * t * (c.p[3] - c.p[2]);
}

Vec2 second_derivative(const Cubic& c, double t) {
  return 6.0 * (1.0 - t) * (c.p[2] - 2.0 * c.p[1] + c.p[0]) +
         6.0 * t * (c.p[3] - 2.0 * c.p[2] + c.p[1]);
}

Vec2 tangent(const Cubic& c, double t) {
  const double least = kVanished * extent(c);
  const Vec2 d = derivative(c, t);
  if (norm(d) > least) return unit(d);
  if (t <= 0.5) {
    if (t <= kVanished) {
      for (std::size_t i = 1; i < 4; ++i) {
        if (distance(c.p[0], c.p[i]) > least) return unit(c.p[i] - c.p[0]);
      }
      return {};
    }
  } else if (t >= 1.0 - kVanished) {
    for (std::size_t i = 3; i-- > 0;) {
      if (distance(c.p[i], c.p[3]) > least) return unit(c.p[3] - c.p[i]);
    }
    return {};
  }
  // a cusp inside: the direction in which the curve leaves it
  const Vec2 dd = second_derivative(c, t);
  return norm(dd) > least ? unit(dd) : unit(c.p[3] - c.p[0]);
}

double curvature(const Cubic& c, double t) {
  const Vec2 d = derivative(c, t);
  const double n = norm(d);
  if (!(n > kVanished * extent(c))) return 0.0;
  return cross(d, second_derivative(c, t)) / (n * n * n);
}

std::pair<Cubic, Cubic> split(const Cubic& c, double t) {
  const Vec2 ab = lerp(c.p[0], c.p[1], t);
  const Vec2 bc = lerp(c.p[1], c.p[2], t);
  const Vec2 cd = lerp(c.p[2], c.p[3], t);
  const Vec2 abc = lerp(ab, bc, t);
  const Vec2 bcd = lerp(bc, cd, t);
  const Vec2 mid = t <= 0.0 ? c.p[0] : t >= 1.0 ? c.p[3] : lerp(abc, bcd, t);
  return {{{c.p[0], ab, abc, mid}}, {{mid, bcd, cd, c.p[3]}}};
}

Box bounds(const Cubic& c) {
  Box box{c.p[0], c.p[0]};
  const auto take = [&](Vec2 q) {
    box.low = {std::min(box.low.x, q.x), std::min(box.low.y, q.y)};
    box.high = {std::max(box.high.x, q.x), std::max(box.high.y, q.y)};
  };
  take(c.p[3]);
  const auto extremes = [&](double a, double b, double d, double e) {
    const double d0 = b - a, d1 = d - b, d2 = e - d;
    for (const double t : unit_roots({d0, 2.0 * (d1 - d0), d2 - 2.0 * d1 + d0}, 0.0)) {
      take(point(c, t));
    }
  };
  extremes(c.p[0].x, c.p[1].x, c.p[2].x, c.p[3].x);
  extremes(c.p[0].y, c.p[1].y, c.p[2].y, c.p[3].y);
  return box;
}

}  // namespace pinwright
