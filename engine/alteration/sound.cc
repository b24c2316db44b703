// What no step may do to a piece.
#include <cmath>

#include "engine/alteration/follow.h"
#include "engine/constraint/limits.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/area.h"
#include "engine/geometry/fairing.h"
#include "engine/geometry/intersect.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

constexpr double kLeastEdgeMm = 1.0;
constexpr double kLeastHandleMm = 0.5;
constexpr double kMostBulge = 2.0;   // length over chord; a half circle has 1.6
constexpr double kHollowRad = 0.02;  // an edge that turns by less, about a degree, is straight

// From the first direction to the last one; negative on a hollow edge.
double turns_by(const Curve& curve) {
  double sum = 0.0;
  Vec2 before;
  for (std::size_t i = 1; i < curve.points.size(); ++i) {
    const Vec2 side = curve.points[i] - curve.points[i - 1];
    if (side == Vec2{}) continue;
    if (!(before == Vec2{})) sum += turn(before, side);
    before = side;
  }
  return sum;
}

// The shorter of the handles at the ends; without one the direction of the end cannot be seen.
double end_handle(const Curve& curve) {
  const std::vector<Vec2>& p = curve.points;
  return std::min(distance(p[0], p[1]), distance(p[p.size() - 2], p.back()));
}

bool bulges(const Curve& curve) {
  return length(curve) > kMostBulge * distance(curve.start(), curve.end());
}

// A neckline or an armhole that was hollow and would be straight or round.
bool lost_its_hollow(const Edge& was, const Curve& is) {
  if (was.role != EdgeRole::neckline && was.role != EdgeRole::armhole) return false;
  return turns_by(was.curve) < -kHollowRad && turns_by(is) > -kHollowRad;
}

bool crosses_itself(const Piece& piece) {
  Curve ring = piece.edges.front().curve;
  for (std::size_t i = 1; i < piece.edges.size(); ++i) ring = joined(ring, piece.edges[i].curve);
  return !self_intersections(ring).empty();
}

// A dart turned inside out: its point lies on the outer side of its mouth.
bool inside_out(const Piece& piece, const Dart& dart) {
  const Vec2 a = find_edge(piece, dart.leg_in)->curve.start();
  const Vec2 tip = find_edge(piece, dart.leg_in)->curve.end();
  const Vec2 b = find_edge(piece, dart.leg_out)->curve.end();
  return cross(tip - a, b - tip) > -1e-9;
}

}  // namespace

EdgeAt first_wiggle(const Edit& edit, const std::vector<std::pair<EdgeAt, Curve>>& edges) {
  for (const auto& [at, curve] : edges) {
    const Edge& was = edit.before.pieces[at.piece].edges[at.edge];
    if (was.straight || curve == was.curve) continue;
    const int more = edit.runs_out.contains(at) ? 1 : 0;
    if (inflections(curve) > inflections(was.curve) + more) return at;
    if (end_handle(curve) < std::min(kLeastHandleMm, end_handle(was.curve))) return at;
  }
  return {kNowhere, kNowhere};
}

Result<Done> check_sound(const Edit& edit) {
  std::set<std::size_t> pieces;
  const std::vector<std::pair<EdgeAt, Curve>> changed = changed_curves(edit);
  for (const auto& [at, curve] : changed) {
    pieces.insert(at.piece);
    const Piece& piece = edit.block.pieces[at.piece];
    const Edge& is = piece.edges[at.edge];
    const std::string where = "the " + is.id + " of the " + piece.id;
    for (const Vec2 p : is.curve.points) {
      if (!finite(p)) return too_large(where + " can not be drawn so", "take a smaller amount");
    }
    if (length(is.curve) < kLeastEdgeMm)
      return too_large(where + " would vanish", "take a smaller amount");
    const Edge& was = edit.before.pieces[at.piece].edges[at.edge];
    if ((bulges(curve) && !bulges(was.curve)) || lost_its_hollow(was, curve))
      return too_large(where + " would lose its shape", "take a smaller amount");
    if (piece.fold && bounds(curve).low.x < -kCoincidentMm)
      return too_large(where + " would lie beyond the fold", "take a smaller amount");
  }
  const EdgeAt wiggle = first_wiggle(edit, changed);
  if (wiggle.piece != kNowhere) {
    const Piece& piece = edit.block.pieces[wiggle.piece];
    const Edge& edge = piece.edges[wiggle.edge];
    const Edge& was = edit.before.pieces[wiggle.piece].edges[wiggle.edge];
    const bool kinked = inflections(edge.curve) <=
                        inflections(was.curve) + (edit.runs_out.contains(wiggle) ? 1 : 0);
    return too_large("the " + edge.id + " of the " + piece.id +
                         (kinked ? " would bend sharply at its end" : " would gain a wiggle"),
                     "take a smaller amount, or split the change");
  }
  for (const std::size_t p : pieces) {
    const Piece& piece = edit.block.pieces[p];
    for (const Dart& dart : piece.darts) {
      if (inside_out(piece, dart)) {
        return too_large(
            "the dart '" + dart.id + "' of the " + piece.id + " would close beyond nothing",
            "take at most what the dart has to give");
      }
    }
    if (crosses_itself(piece)) {
      return too_large("the outline of the " + piece.id + " would cross itself",
                       "take a smaller amount");
    }
  }
  const std::vector<Limit> broken =
      newly_broken(edit.limits_before, edit.block, edit.block.drafted_for.body, edit.block.fabric);
  if (!broken.empty()) {
    const Limit& limit = broken.front();
    return Problem{"limit", "",
                   limit.quantity + " would be " + mm_text(limit.found) +
                       ", against the limit that " + limit.name,
                   limit.relax};
  }
  return Done{};
}

}  // namespace pinwright
