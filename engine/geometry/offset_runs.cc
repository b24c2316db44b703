#include <algorithm>
#include <cmath>

#include "engine/geometry/offset_path.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

constexpr double kCorner = 1e-3;  // radians
constexpr double kChordMm = 0.5 * kFlatnessMm;
constexpr int kDeepest = 7;  // 1024 stretches a segment at most

/// b(t) moved outward: to the right of the direction of travel, the ring being counter-clockwise.
Vec2 moved(const Cubic& c, double t, double by) {
  return point(c, t) - by * left_normal(tangent(c, t));
}

/// Points of the moved curve after t0 up to t1.
void sample(const Cubic& c, double by, double t0, Vec2 p0, double t1, Vec2 p1, int depth,
            std::vector<Vec2>& out) {
  const double mid = 0.5 * (t0 + t1);
  const Vec2 m = moved(c, mid, by);
  const Vec2 chord = p1 - p0;
  const double run = dot(chord, chord);
  const double u = run > 0.0 ? std::clamp(dot(m - p0, chord) / run, 0.0, 1.0) : 0.0;
  if (depth < kDeepest && distance(m, p0 + u * chord) > kChordMm) {
    sample(c, by, t0, p0, mid, m, depth + 1, out);
    sample(c, by, mid, m, t1, p1, depth + 1, out);
    return;
  }
  out.push_back(p1);
}

void sample_segment(const Cubic& c, double by, std::vector<Vec2>& out) {
  // straight: the ends are enough; else eight stretches first, lest an S hide between two samples
  const double bend =
      std::max(norm(c.p[2] - 2.0 * c.p[1] + c.p[0]), norm(c.p[3] - 2.0 * c.p[2] + c.p[1]));
  const int stretches = bend <= 1e-9 ? 1 : 8;
  Vec2 from = moved(c, 0.0, by);
  if (out.empty()) out.push_back(from);
  for (int i = 1; i <= stretches; ++i) {
    const double t0 = static_cast<double>(i - 1) / stretches,
                 t1 = static_cast<double>(i) / stretches;
    const Vec2 to = moved(c, t1, by);
    sample(c, by, t0, from, t1, to, 0, out);
    from = to;
  }
}

}  // namespace

std::vector<Run> offset_runs(const std::vector<OffsetEdge>& ring) {
  std::vector<Run> runs;
  for (std::size_t e = 0; e < ring.size(); ++e) {
    const OffsetEdge& edge = ring[e];
    bool open = false;
    for (std::size_t i = 0; i < edge.curve.segments(); ++i) {
      const Cubic c = edge.curve.segment(i);
      const Vec2 leave = tangent(c, 0.0), arrive = tangent(c, 1.0);
      if (leave == Vec2{}) continue;  // shrunk to a point
      const double corner = open ? turn(runs.back().end_dir, leave) : 0.0;
      if (!open || std::abs(corner) > kCorner) {
        runs.push_back({e, edge.allowance_mm, edge.kind, c.p[0], c.p[3], leave, arrive, {}});
        open = true;
      } else if (corner != 0.0) {
        // a bend too small for a corner: one point on the bisector
        const double half = std::cos(0.5 * corner);
        runs.back().moved.back() =
            c.p[0] - edge.allowance_mm / half * left_normal(unit(runs.back().end_dir + leave));
      }
      sample_segment(c, edge.allowance_mm, runs.back().moved);
      runs.back().end = c.p[3], runs.back().end_dir = arrive;
    }
  }
  return runs;
}

}  // namespace pinwright
