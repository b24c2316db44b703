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

/// Lets the line across go on over the dart whose leg `onto` it has met at `at`. The dart is
/// closed: the piece is turned about the dart's point so that leg `from` comes to lie where leg
/// `onto` is. Then half of that turn is taken back about `at`: the two parts' own levels differ by
/// the dart's angle, and the line goes on midway between them. Where midway does not lead over the
/// leg the line stays on its own side of the dart and only bends. Gives the leg that the line
/// leaves.
std::size_t go_on_over(Piece& piece, std::size_t from, std::size_t onto, Vec2 at) {
  const Curve& a = piece.edges[from].curve;
  const Curve& b = piece.edges[onto].curve;
  const bool from_is_in = (from + 1) % piece.edges.size() == onto;
  const Vec2 tip = from_is_in ? a.end() : a.start();
  const Vec2 mouth_from = from_is_in ? a.start() : a.end();
  const Vec2 mouth_onto = from_is_in ? b.end() : b.start();
  const double angle = turn(mouth_from - tip, mouth_onto - tip);
  const Vec2 midway{std::cos(0.5 * angle), std::sin(0.5 * angle)};
  const Vec2 leg = mouth_onto - tip;
  const bool crosses = cross(leg, midway) * cross(leg, Vec2{1.0, 0.0}) > 0.0;
  const Affine bend = rotation_about(at, -0.5 * angle);
  const Affine map = crosses ? then(rotation_about(tip, angle), bend) : bend;
  for (Edge& edge : piece.edges) edge.curve = apply(map, edge.curve);
  return crosses ? from : onto;
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
    if (hit.edge == kNowhere) {
      // Past a leg that was met at its mouth there is no more cloth.
      if (passed > 0) return at - start;
      return std::nullopt;
    }
    const std::size_t leg = other_leg(*now, hit.edge);
    if (leg == kNowhere) return hit.x - start;
    if (now == &piece) {
      turned.edges = piece.edges;
      turned.darts = piece.darts;
      now = &turned;
    }
    skip = go_on_over(turned, leg, hit.edge, {hit.x, y});
    at = hit.x;
  }
  return std::nullopt;
}

}  // namespace pinwright
