#pragma once
// A chain of cubic Bézier segments: every edge of a pattern piece is one.

#include <cstddef>
#include <vector>

#include "engine/geometry/cubic.h"

namespace pinwright {

/// Invariant: points.size() == 3 n + 1 with n >= 1 for a usable curve; neighbouring segments share
/// their end point by construction. A default-made Curve is empty and only good to be assigned to.
struct Curve {
  std::vector<Vec2> points;

  bool operator==(const Curve&) const = default;
  std::size_t segments() const { return points.empty() ? 0 : (points.size() - 1) / 3; }
  Cubic segment(std::size_t i) const {
    return {{points[3 * i], points[3 * i + 1], points[3 * i + 2], points[3 * i + 3]}};
  }
  /// An empty curve starts and ends at the origin.
  Vec2 start() const { return points.empty() ? Vec2{} : points.front(); }
  Vec2 end() const { return points.empty() ? Vec2{} : points.back(); }
};

/// A place on a curve: segment index and t in [0, 1]. The functions below take a place outside as
/// the nearer end: t is clamped, a segment past the last means the end of the curve.
struct CurvePlace {
  std::size_t segment = 0;
  double t = 0.0;
};

Curve straight_curve(Vec2 a, Vec2 b);
/// REQUIRES: segments is not empty and each starts where the one before ends.
Curve chain(const std::vector<Cubic>& segments);
Vec2 point(const Curve& c, CurvePlace at);
Vec2 tangent(const Curve& c, CurvePlace at);
double curvature(const Curve& c, CurvePlace at);
/// Tangent at the first and at the last point (both along the direction of travel).
Vec2 start_tangent(const Curve& c);
Vec2 end_tangent(const Curve& c);
Curve reversed(const Curve& c);
/// Both parts of c at a place; either may be empty when the place is an end of c.
std::pair<Curve, Curve> split(const Curve& c, CurvePlace at);
/// a followed by b; the joint takes a's end. REQUIRES: they meet within kCoincidentMm.
Curve joined(const Curve& a, const Curve& b);
Box bounds(const Curve& c);
/// Points on the curve, ends included, no further than flatness_mm from it when joined by lines.
/// At most 4096 pieces a segment (enough for 0.01 mm on a curve of 200 m); a segment with points
/// that are not finite is one piece.
std::vector<Vec2> flatten(const Curve& c, double flatness_mm);

}  // namespace pinwright
