#pragma once
// Shapes for the geometry tests.

#include <cmath>
#include <numbers>
#include <random>

#include "engine/geometry/curve.h"

namespace pinwright {

inline constexpr double kPi = std::numbers::pi;

/// Seeded: every run sees the same cubics. The seed is told in failures by SCOPED_TRACE.
class Chance {
 public:
  explicit Chance(unsigned seed) : engine_(seed) {}
  double number(double low, double high) {
    // not std::uniform_real_distribution: its bits differ between libraries
    return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
  }
  Vec2 point(double size) { return {number(0, size), number(0, size)}; }
  Cubic cubic(double size) { return {{point(size), point(size), point(size), point(size)}}; }
  /// Neighbouring segments joined smoothly or with a corner, as it falls.
  Curve curve(std::size_t segments, double size) {
    Curve c;
    c.points.push_back(point(size));
    while (c.points.size() < 3 * segments + 1) c.points.push_back(point(size));
    return c;
  }

 private:
  std::mt19937 engine_;
};

/// Counter-clockwise arc of a circle, `n` cubics of the usual handles.
inline Curve arc(Vec2 centre, double r, double from, double by, int n) {
  Curve c;
  const double step = by / n, k = 4.0 / 3.0 * std::tan(step / 4.0) * r;
  for (int i = 0; i <= n; ++i) {
    const double a = from + i * step;
    const Vec2 out{std::cos(a), std::sin(a)};
    const Vec2 p = centre + r * out, d = k * left_normal(out);
    if (i > 0) c.points.push_back(p - d);
    c.points.push_back(p);
    if (i < n) c.points.push_back(p + d);
  }
  return c;
}

/// A parabola y = a x^2 over [x0, x1] as a cubic.
inline Cubic parabola(double a, double x0, double x1) {
  const double w = (x1 - x0) / 3.0;
  const Vec2 p{x0, a * x0 * x0}, q{x1, a * x1 * x1};
  return {{p, p + w * Vec2{1.0, 2.0 * a * x0}, q - w * Vec2{1.0, 2.0 * a * x1}, q}};
}

}  // namespace pinwright
