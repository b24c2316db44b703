#include "api/drawing/cutting_line.h"

#include <algorithm>
#include <cmath>

#include "engine/geometry/intersect.h"
#include "engine/geometry/tolerance.h"
#include "engine/geometry/transform.h"

namespace pinwright::api {
namespace {

constexpr double kBeyondMm = 100.0;

Affine mirror_at(Vec2 on, Vec2 along) {
  const Vec2 u = unit(along);
  Affine m{2 * u.x * u.x - 1, 2 * u.x * u.y, 2 * u.x * u.y, 2 * u.y * u.y - 1, {}};
  m.move = on - apply(m, on);
  return m;
}

/// The edge away from the mouth, carried straight on so that it is long enough.
Curve carried_on(const Curve& away) {
  const Vec2 end = away.end();
  return joined(away, straight_curve(end, end + kBeyondMm * end_tangent(away)));
}

bool lower_side(EdgeRole role) { return role == EdgeRole::side || role == EdgeRole::armhole; }

DartCap cap_of(const Piece& piece, std::size_t dart, std::size_t in) {
  const std::size_t n = piece.edges.size();
  const Edge& before = piece.edges[(in + n - 1) % n];
  const Edge& leg_in = piece.edges[in];
  const Edge& leg_out = piece.edges[(in + 1) % n];
  const Edge& after = piece.edges[(in + 2) % n];
  const Vec2 a = leg_in.curve.start();
  const Vec2 p = leg_in.curve.end();
  const Vec2 b = leg_out.curve.end();
  DartCap cap{dart, {}, {}, p, true};
  const Vec2 half_way = lerp(a, b, 0.5);
  const bool to_a = lower_side(before.role) && lower_side(after.role) ? a.y < b.y : a.x < b.x;
  const Vec2 leg_end = to_a ? a : b;
  const Curve away = carried_on(to_a ? reversed(before.curve) : after.curve);
  const Curve mirrored = apply(mirror_at(p, leg_end - p), away);
  const Vec2 middle = unit(unit(a - p) + unit(b - p));
  const Curve ray = straight_curve(p, p + (distance(p, leg_end) + 2 * kBeyondMm) * middle);
  const auto met = intersections(mirrored, ray);
  if (!met.empty() && distance(met.front().point, half_way) < distance(a, b)) {
    Curve half = split(mirrored, met.front().on_a).first;
    if (half.segments() > 0) {
      half.points.front() = leg_end;
      Curve other = apply(mirror_at(p, middle), half);
      other.points.back() = half.end();
      other.points.front() = to_a ? b : a;
      cap.to_peak = to_a ? half : other;
      cap.from_peak = reversed(to_a ? other : half);
      cap.bridged = false;
      return cap;
    }
  }
  cap.to_peak = straight_curve(a, half_way);
  cap.from_peak = straight_curve(half_way, b);
  return cap;
}

std::size_t leg_index(const Piece& piece, const Dart& dart) {
  const std::size_t in = edge_index(piece, dart.leg_in);
  if (in == kNowhere) return kNowhere;
  return piece.edges[(in + 1) % piece.edges.size()].id == dart.leg_out ? in : kNowhere;
}

}  // namespace

std::vector<DartCap> dart_caps(const Piece& piece) {
  std::vector<DartCap> caps;
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    const std::size_t in = leg_index(piece, piece.darts[i]);
    if (in != kNowhere && piece.edges.size() > 3) caps.push_back(cap_of(piece, i, in));
  }
  return caps;
}

Result<CuttingLine> cutting_line(const Piece& piece, const std::vector<DartCap>& caps) {
  const std::size_t n = piece.edges.size();
  std::vector<OffsetEdge> ring;
  std::vector<std::size_t> owner;
  std::vector<const DartCap*> cap_at(n, nullptr);
  std::vector<bool> skipped(n, false);
  for (const DartCap& cap : caps) {
    const std::size_t in = leg_index(piece, piece.darts[cap.dart]);
    cap_at[in] = &cap;
    skipped[(in + 1) % n] = true;
  }
  for (std::size_t i = 0; i < n; ++i) {
    if (skipped[i]) continue;
    if (cap_at[i] != nullptr) {
      const double width = std::max(piece.edges[(i + n - 1) % n].allowance.width_mm,
                                    piece.edges[(i + 2) % n].allowance.width_mm);
      ring.push_back({cap_at[i]->to_peak, width, AllowanceKind::plain});
      ring.push_back({cap_at[i]->from_peak, width, AllowanceKind::plain});
      owner.insert(owner.end(), 2, kNowhere);
    } else {
      const Edge& edge = piece.edges[i];
      ring.push_back({edge.curve, edge.allowance.width_mm, edge.allowance.kind});
      owner.push_back(i);
    }
  }
  auto line = offset_outline(ring);
  if (!line.ok()) return line.problems();
  CuttingLine out;
  out.points = std::move(line.value().points);
  for (const std::size_t e : line.value().edge_of) out.edge_of.push_back(owner[e]);
  return out;
}

}  // namespace pinwright::api
