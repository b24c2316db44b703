#include "engine/alteration/dart_turn.h"

#include <algorithm>
#include <cmath>

#include "engine/alteration/follow.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

constexpr double kBelowMarkMm = 15.0;  // of a side dart's mouth, as the blocks are drafted
constexpr double kFromEndMm = 15.0;    // a mouth keeps so far from the ends of its seam

struct Mouth {
  std::size_t edge = kNowhere;
  double s = 0.0;
};

// The place at share of the whole run's length.
Mouth along(const Piece& piece, const std::vector<std::size_t>& run, double share) {
  double total = 0.0;
  for (const std::size_t e : run) total += length(piece.edges[e].curve);
  double left = share * total;
  for (const std::size_t e : run) {
    const double part = length(piece.edges[e].curve);
    if (left <= part || e == run.back()) return {e, left};
    left -= part;
  }
  return {};
}

Mouth mouth_in(const Piece& piece, const std::vector<std::size_t>& run, const std::string& seam,
               Vec2 mark) {
  if (seam == "shoulder") return along(piece, run, 0.5);
  const bool side = seam == "side";
  for (const std::size_t e : run) {
    const Curve& curve = piece.edges[e].curve;
    const auto places = side ? at_height(curve, mark.y - kBelowMarkMm) : at_x(curve, mark.x);
    if (!places.empty()) return {e, length_to(curve, places.front())};
  }
  return along(piece, run, side ? 0.7 : 0.5);
}

bool in_line(const Curve& a, const Curve& b) {
  return std::abs(cross(end_tangent(a), start_tangent(b))) < 1e-6;
}

}  // namespace

std::size_t dart_index(const Piece& piece, const std::string& id) {
  for (std::size_t i = 0; i < piece.darts.size(); ++i)
    if (piece.darts[i].id == id) return i;
  return kNowhere;
}

void end_short_of(Piece& piece, const DartPlace& dart, Vec2 mark, double short_of) {
  const Vec2 mouth = piece.edges[dart.in].curve.start();
  const Vec2 tip = mark + short_of * unit(mouth - mark);
  piece.edges[dart.in].curve = straight_curve(mouth, tip);
  piece.edges[dart.out].curve = straight_curve(tip, mouth);
}

Result<DartPlace> open_place(Block& block, std::size_t piece_at, const std::string& seam,
                             Vec2 point, const std::string& toward) {
  const Piece& piece = block.pieces[piece_at];
  std::vector<std::size_t> run;
  for (std::size_t i = 0; i < piece.edges.size(); ++i)
    if (lies_in(piece.edges[i], seam)) run.push_back(i);
  const auto in_ring = [&](std::size_t a, std::size_t b) {
    return ring_order(piece, a) < ring_order(piece, b);
  };
  std::sort(run.begin(), run.end(), in_ring);
  if (run.empty() || !bodice_anatomy(piece))
    return not_here("the " + piece.id + " has no " + seam + " for a dart to start from",
                    "name another seam");
  const Landmark* mark = find_landmark(piece, toward);
  Mouth mouth = mouth_in(piece, run, seam, mark == nullptr ? point : mark->at);
  const double room = length(piece.edges[mouth.edge].curve);
  if (room < 3.0 * kFromEndMm)
    return not_here("the " + piece.edges[mouth.edge].id + " is too short for a dart",
                    "name another seam");
  mouth.s = std::clamp(mouth.s, kFromEndMm, room - kFromEndMm);
  return insert_dart(block, piece_at, mouth.edge, mouth.s, point, toward);
}

Result<Block> drawn_to_mark(const Block& before, std::size_t piece_at,
                            const std::vector<std::string>& darts) {
  Edit edit(before);
  for (const std::string& id : darts) {
    const Piece& piece = edit.block.pieces[piece_at];
    point_at_mark(edit, place_of_dart(piece, piece_at, dart_index(piece, id)), 0.0);
  }
  for (const auto part : {&solve_body, &follow_notches}) {
    const Result<Done> done = part(edit);
    if (!done) return done.problems();
  }
  if (first_wiggle(edit, changed_curves(edit)).piece != kNowhere)
    return not_here("the seam cannot be drawn fair with its dart run out to its mark",
                    "lengthen or shorten the dart first, or leave it where it is");
  return std::move(edit.block);
}

double short_of_mark(const Piece& piece, const DartPlace& d) {
  return distance(piece.edges[d.in].curve.end(), dart_mark(piece, piece.darts[d.dart]));
}

void turn_intake(Block& block, std::size_t piece_at, const std::string& from_id,
                 const std::string& to_id, double share) {
  Piece& piece = block.pieces[piece_at];
  const DartPlace from = place_of_dart(piece, piece_at, dart_index(piece, from_id));
  const DartPlace to = place_of_dart(piece, piece_at, dart_index(piece, to_id));
  const Vec2 tip = piece.edges[from.in].curve.end();
  const Vec2 first = piece.edges[from.in].curve.start() - tip;
  const Vec2 second = piece.edges[from.out].curve.end() - tip;
  if (ring_order(piece, from.in) < ring_order(piece, to.in)) {
    turn_part(piece, from.out, to.before, rotation_about(tip, share * turn(second, first)));
  } else {
    turn_part(piece, to.out, from.before, rotation_about(tip, share * turn(first, second)));
  }
  if (share < 1.0) return;
  const Curve line = sewn_line(piece, from);
  Curve exact = line;
  exact.points.back() = piece.edges[from.after].curve.end();
  const bool straight = piece.edges[from.before].straight && piece.edges[from.after].straight &&
                        in_line(piece.edges[from.before].curve, piece.edges[from.after].curve);
  remove_dart(block, from, exact, straight);
}

void point_at_mark(Edit& edit, const DartPlace& d, double short_of) {
  const Piece& piece = edit.block.pieces[d.piece];
  const Vec2 mark = dart_mark(piece, piece.darts[d.dart]);
  const Vec2 middle = lerp(piece.edges[d.in].curve.start(), piece.edges[d.out].curve.end(), 0.5);
  CornerMotions motions = still(piece);
  motions[d.in] =
      translation(mark + short_of * unit(middle - mark) - piece.edges[d.in].curve.end());
  move_corners(edit, d.piece, motions);
}

}  // namespace pinwright
