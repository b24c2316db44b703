#include "engine/geometry/curve.h"

#include <algorithm>
#include <cmath>

namespace pinwright {
namespace {

/// More pieces than this a segment are never made, whatever the flatness asked for.
constexpr double kMostPieces = 4096.0;

CurvePlace inside(const Curve& c, CurvePlace at) {
  if (at.segment >= c.segments()) return {c.segments() - 1, 1.0};
  return {at.segment, at.t >= 0.0 ? std::min(at.t, 1.0) : 0.0};
}

}  // namespace

Curve straight_curve(Vec2 a, Vec2 b) {
  const Cubic s = straight(a, b);
  return {{s.p[0], s.p[1], s.p[2], s.p[3]}};
}

Curve chain(const std::vector<Cubic>& segments) {
  Curve c;
  if (segments.empty()) return c;
  c.points.reserve(3 * segments.size() + 1);
  c.points.push_back(segments.front().p[0]);
  for (const Cubic& s : segments) c.points.insert(c.points.end(), s.p.begin() + 1, s.p.end());
  return c;
}

Vec2 point(const Curve& c, CurvePlace at) {
  if (c.segments() == 0) return c.start();
  at = inside(c, at);
  return point(c.segment(at.segment), at.t);
}

Vec2 tangent(const Curve& c, CurvePlace at) {
  if (c.segments() == 0) return {};
  at = inside(c, at);
  return tangent(c.segment(at.segment), at.t);
}

double curvature(const Curve& c, CurvePlace at) {
  if (c.segments() == 0) return 0.0;
  at = inside(c, at);
  return curvature(c.segment(at.segment), at.t);
}

Vec2 start_tangent(const Curve& c) {
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const Vec2 d = tangent(c.segment(i), 0.0);
    if (d != Vec2{}) return d;
  }
  return {};
}

Vec2 end_tangent(const Curve& c) {
  for (std::size_t i = c.segments(); i-- > 0;) {
    const Vec2 d = tangent(c.segment(i), 1.0);
    if (d != Vec2{}) return d;
  }
  return {};
}

Curve reversed(const Curve& c) { return {{c.points.rbegin(), c.points.rend()}}; }

std::pair<Curve, Curve> split(const Curve& c, CurvePlace at) {
  const std::size_t n = c.segments();
  if (n == 0) return {};
  at = inside(c, at);
  if (at.t >= 1.0) at = {at.segment + 1, 0.0};
  const auto begin = c.points.begin();
  if (at.t <= 0.0) {  // at a joint: no segment is cut
    const auto joint = begin + static_cast<std::ptrdiff_t>(3 * at.segment);
    std::pair<Curve, Curve> parts;
    if (at.segment > 0) parts.first.points.assign(begin, joint + 1);
    if (at.segment < n) parts.second.points.assign(joint, c.points.end());
    return parts;
  }
  const auto [left, right] = split(c.segment(at.segment), at.t);
  const auto first = begin + static_cast<std::ptrdiff_t>(3 * at.segment);
  Curve a{{begin, first + 1}}, b{{right.p.begin(), right.p.end()}};
  a.points.insert(a.points.end(), left.p.begin() + 1, left.p.end());
  b.points.insert(b.points.end(), first + 4, c.points.end());
  return {a, b};
}

Curve joined(const Curve& a, const Curve& b) {
  if (a.points.empty()) return b;
  Curve c = a;
  if (!b.points.empty()) c.points.insert(c.points.end(), b.points.begin() + 1, b.points.end());
  return c;
}

Box bounds(const Curve& c) {
  Box box{c.start(), c.start()};
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const Box s = bounds(c.segment(i));
    box.low = {std::min(box.low.x, s.low.x), std::min(box.low.y, s.low.y)};
    box.high = {std::max(box.high.x, s.high.x), std::max(box.high.y, s.high.y)};
  }
  return box;
}

std::vector<Vec2> flatten(const Curve& c, double flatness_mm) {
  std::vector<Vec2> line;
  if (c.points.empty()) return line;
  line.push_back(c.start());
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const Cubic s = c.segment(i);
    // Wang's bound: n equal steps of t stay within (d (d - 1) / 8) M / n^2, M the greatest second
    // difference of the control points, d = 3.
    const double m =
        std::max(norm(s.p[2] - 2.0 * s.p[1] + s.p[0]), norm(s.p[3] - 2.0 * s.p[2] + s.p[1]));
    const double pieces = std::ceil(std::sqrt(0.75 * m / flatness_mm) - 1e-9);
    const int n = pieces > 1.0 ? static_cast<int>(std::min(pieces, kMostPieces)) : 1;
    for (int k = 1; k < n; ++k) line.push_back(point(s, static_cast<double>(k) / n));
    line.push_back(s.p[3]);
  }
  return line;
}

}  // namespace pinwright
