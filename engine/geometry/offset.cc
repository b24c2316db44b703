#include "engine/geometry/offset.h"

#include <algorithm>
#include <cmath>

#include "engine/geometry/offset_path.h"
#include "engine/geometry/polygon_tools.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

constexpr double kWidestMm = 200.0;
/// The stitching line counts as held by the cutting line when less than this sticks out: rounding
/// along edges without allowance.
constexpr double kSticksOutMm2 = 1e-6;
constexpr double kSamePointMm = 1e-9;

std::string edge_name(std::size_t i) { return "edge " + std::to_string(i); }

bool usable(const Curve& c) {
  return c.segments() > 0 &&
         std::all_of(c.points.begin(), c.points.end(), [](Vec2 p) { return finite(p); });
}

void check_edges(const std::vector<OffsetEdge>& ring, Problems& found) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const double a = ring[i].allowance_mm;
    if (!(a >= 0.0 && a <= kWidestMm)) {
      found.push_back({"allowance-range", edge_name(i),
                       "The seam allowance is " + std::to_string(a) + " mm.", "Give 0 to 200 mm."});
    }
    if (!usable(ring[i].curve)) {
      found.push_back({"outline-points", edge_name(i), "The edge is empty or not finite.",
                       "Give every edge at least one segment with finite points."});
    }
  }
}

void check_closed(const std::vector<OffsetEdge>& ring, Problems& found) {
  if (ring.empty()) {
    found.push_back({"outline-open", "outline", "The outline has no edges.",
                     "Give the edges in counter-clockwise order."});
  }
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Curve& a = ring[i].curve;
    const Curve& b = ring[(i + 1) % ring.size()].curve;
    const double gap = distance(a.end(), b.start());
    if (gap > kCoincidentMm) {
      found.push_back({"outline-open", edge_name(i),
                       "The next edge starts " + std::to_string(gap) + " mm from its end.",
                       "Let each edge start where the one before ends."});
    }
  }
}

std::vector<Vec2> without_repeats(const std::vector<Vec2>& p) {
  std::vector<Vec2> out;
  for (const Vec2& q : p) {
    if (out.empty() || distance(out.back(), q) > kSamePointMm) out.push_back(q);
  }
  while (out.size() > 1 && distance(out.back(), out.front()) <= kSamePointMm) out.pop_back();
  return out;
}

/// The stitching line as a polygon with the same points as the cutting line where they coincide.
std::vector<Vec2> stitching_polygon(std::vector<OffsetEdge> ring) {
  for (OffsetEdge& e : ring) e.allowance_mm = 0.0;
  std::vector<Vec2> p;
  for (const Run& r : offset_runs(ring)) p.insert(p.end(), r.moved.begin(), r.moved.end());
  return without_repeats(p);
}

/// Lines without length are left out; their neighbours take over.
CutLine as_drawn(const RawLine& raw) {
  CutLine cut;
  const std::size_t n = raw.points.size();
  for (std::size_t i = 0; i < n; ++i) {
    if (distance(raw.points[i], raw.points[(i + 1) % n]) <= kSamePointMm) continue;
    cut.points.push_back(raw.points[i]);
    cut.edge_of.push_back(raw.edge_of[i]);
    cut.parallel.push_back(raw.parallel[i]);
  }
  return cut;
}

double line_distance(Vec2 q, Vec2 a, Vec2 b) {
  const Vec2 d = b - a;
  const double run = dot(d, d);
  const double u = run > 0.0 ? std::clamp(dot(q - a, d) / run, 0.0, 1.0) : 0.0;
  return distance(q, a + u * d);
}

/// Edges of the cleaned line, taken from the drawn line that each of its lines lies on. A line that
/// lies on none is a piece of the stitching line and goes with its neighbour.
CutLine with_edges(const std::vector<Vec2>& points, const CutLine& drawn) {
  CutLine cut{points, {}, {}};
  const std::size_t n = points.size(), m = drawn.points.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 mid = lerp(points[i], points[(i + 1) % n], 0.5);
    std::size_t best = 0;
    double least = 1e300;
    for (std::size_t k = 0; k < m; ++k) {
      const double d = line_distance(mid, drawn.points[k], drawn.points[(k + 1) % m]);
      // of two lines in the same place the one at its full allowance counts
      const bool better = d < least - kCoincidentMm ||
                          (d < least + kCoincidentMm && drawn.parallel[k] && !drawn.parallel[best]);
      if (better) best = k, least = std::min(d, least);
    }
    cut.edge_of.push_back(drawn.edge_of[best]);
    cut.parallel.push_back(drawn.parallel[best] && least <= kCoincidentMm);
  }
  return cut;
}

}  // namespace

Result<CutLine> offset_outline(const std::vector<OffsetEdge>& ring) {
  Problems found;
  check_edges(ring, found);
  check_closed(ring, found);
  if (!found.empty()) return found;
  const std::vector<Vec2> stitching = stitching_polygon(ring);
  if (const std::optional<Vec2> at = invalid_at(stitching)) {
    return Problem{"outline-crosses",
                   "(" + std::to_string(at->x) + ", " + std::to_string(at->y) + ")",
                   "The outline crosses or touches itself.", "Part the edges that meet there."};
  }
  if (twice_area(stitching) < 0.0) {
    return Problem{"outline-clockwise", "outline", "The outline runs clockwise.",
                   "Give the edges in counter-clockwise order, each reversed."};
  }
  CutLine cut = as_drawn(joined_runs(offset_runs(ring)));
  const bool clean = cut.points.size() >= 3 && twice_area(cut.points) > 0.0 &&
                     !invalid_at(cut.points) &&
                     area_outside(stitching, cut.points) <= kSticksOutMm2;
  if (!clean) cut = with_edges(without_repeats(wound_together(cut.points, stitching)), cut);
  if (cut.points.size() < 3) {
    return Problem{"offset-failed", "outline", "No cutting line is left.",
                   "Make the seam allowances narrower."};
  }
  return cut;
}

}  // namespace pinwright
