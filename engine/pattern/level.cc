#include "engine/pattern/level.h"

#include <cmath>
#include <limits>

#include "engine/geometry/intersect.h"
#include "engine/geometry/tolerance.h"
#include "engine/geometry/transform.h"

namespace pinwright {
namespace {

struct Hit {
  double x = 0.0;
  std::size_t edge = kNowhere;
};

/// The first crossing right of `after`, on any edge but `skip`.
Hit next_hit(const Piece& piece, double y, double after, std::size_t skip) {
  Hit best{std::numeric_limits<double>::infinity(), kNowhere};
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    if (i == skip) continue;
    const Curve& curve = piece.edges[i].curve;
    for (const CurvePlace& place : at_height(curve, y)) {
      const double x = point(curve, place).x;
      if (x > after && x < best.x) best = {x, i};
    }
  }
  return best;
}

/// The dart that has the edge as a leg, and its other leg.
std::size_t other_leg(const Piece& piece, std::size_t edge) {
  const std::string& id = piece.edges[edge].id;
  for (const Dart& dart : piece.darts) {
    if (dart.leg_in == id) return edge_index(piece, dart.leg_out);
    if (dart.leg_out == id) return edge_index(piece, dart.leg_in);
  }
  return kNowhere;
}

/// Turns the piece about the dart's point so that leg `from` comes to lie where leg `onto` is.
void turn_onto(Piece& piece, std::size_t from, std::size_t onto) {
  const Curve& a = piece.edges[from].curve;
  const Curve& b = piece.edges[onto].curve;
  const bool from_is_in = (from + 1) % piece.edges.size() == onto;
  const Vec2 tip = from_is_in ? a.end() : a.start();
  const Vec2 mouth_from = from_is_in ? a.start() : a.end();
  const Vec2 mouth_onto = from_is_in ? b.end() : b.start();
  const Affine map = rotation_about(tip, turn(mouth_from - tip, mouth_onto - tip));
  for (Edge& edge : piece.edges) edge.curve = apply(map, edge.curve);
}

}  // namespace

std::optional<double> cloth_width(const Piece& piece, double y) {
  if (!std::isfinite(y)) return std::nullopt;
  Piece turned;  // made when the first dart is met
  const Piece* now = &piece;
  const Hit first = next_hit(piece, y, -std::numeric_limits<double>::infinity(), kNowhere);
  if (first.edge == kNowhere) return std::nullopt;
  const double start = piece.fold ? 0.0 : first.x;
  double at = first.x;
  std::size_t skip = first.edge;
  // Each dart is passed at most once.
  for (std::size_t passed = 0; passed <= piece.darts.size(); ++passed) {
    const Hit hit = next_hit(*now, y, at + kCoincidentMm, skip);
    if (hit.edge == kNowhere) return std::nullopt;
    const std::size_t leg = other_leg(*now, hit.edge);
    if (leg == kNowhere) return hit.x - start;
    if (now == &piece) {
      turned.edges = piece.edges;
      turned.darts = piece.darts;
      now = &turned;
    }
    turn_onto(turned, leg, hit.edge);
    at = hit.x;
    skip = leg;
  }
  return std::nullopt;
}

}  // namespace pinwright
