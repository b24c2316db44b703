// Let out or take in the side seam.
//
//        U  U'      level all:   U and S both go out by e
//        |   \      level bust:  U goes out, S stays
//        |    \     level hem:   S goes out, U stays (in a bodice that ends at the waist: waist)
//        S-----S'   level waist, side longer than to the waist: the middle goes out, U and S stay
//
// e is half of the amount on the half pattern, on the front's side edge and on the back's alike.
// Where U moves, the sleeve's underarm corners go out by the same. Inverse: the negative amount.
#include <cmath>
#include <numbers>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

// Every control point of the side edges, by its height between S (0) and U (1).
template <class Share>
void shift_side(Piece& piece, const BodiceAnatomy& body, double out, const Share& share) {
  const double low = piece.edges[body.side_corner].curve.end().y;
  const double high = piece.edges[body.underarm_corner].curve.end().y;
  for (const std::size_t s : body.side) {
    std::vector<Vec2>& points = piece.edges[s].curve.points;
    for (std::size_t i = 1; i + 1 < points.size(); ++i)
      points[i].x += out * share((points[i].y - low) / (high - low));
  }
}

}  // namespace

Result<Done> let_out_side(Edit& edit, HalfMm amount, const std::string& level) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const double e = amount.mm() / 2.0;
  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  const bool to_waist = edit.block.pieces[found->front]
                            .edges[next_in(edit.block.pieces[found->front], found->front_at.centre)]
                            .role == EdgeRole::waist;
  if (level == "hem" && to_waist)
    return not_here("this bodice ends at the waist", "use level waist");
  const bool top = level == "all" || level == "bust";
  const bool foot = level == "all" || level == "hem" || (level == "waist" && to_waist);
  const bool middle = level == "waist" && !to_waist;
  for (const auto& [at, body] : halves) {
    Piece& piece = edit.piece(at);
    const double low = piece.edges[body->side_corner].curve.end().y;
    const double high = piece.edges[body->underarm_corner].curve.end().y;
    const double width = piece.edges[body->side_corner].curve.end().x;
    if (-e > 0.4 * width)
      return too_large("the " + piece.id + " is only " + mm_text(width) + " wide",
                       "take a smaller amount");
    const auto share = [&](double u) {
      if (middle) return 0.5 - 0.5 * std::cos(2.0 * std::numbers::pi * u);
      return top && foot ? 1.0 : (top ? u : 1.0 - u);
    };
    // Corners on the side: S, the dart's mouth, U. Each moves by its own share, so that straight
    // edges stay straight.
    CornerMotions motions = still(piece);
    for (std::size_t i = body->side_corner;; i = next_in(piece, i)) {
      const double u = (piece.edges[i].curve.end().y - low) / (high - low);
      const double by = e * share(u);
      bool leg_point = false;
      for (const Dart& d : piece.darts) leg_point = leg_point || edge_index(piece, d.leg_in) == i;
      if (!leg_point && std::abs(by) > 0.0) motions[i] = translation({by, 0.0});
      if (i == body->underarm_corner) break;
    }
    if (middle) {
      bool straight = false;
      for (const std::size_t s : body->side) straight = straight || piece.edges[s].straight;
      if (straight)
        return not_here("the side seam is a straight line", "use level all, bust or hem");
      motions = still(piece);
      shift_side(piece, *body, e, share);
    } else {
      move_corners(edit, at, motions);
      if (!(top && foot)) {
        // Handles of curved sides go by their own height, not rigidly with their corner.
        const Piece& old = edit.before.pieces[at];
        for (const std::size_t s : body->side) {
          std::vector<Vec2>& points = piece.edges[s].curve.points;
          const std::vector<Vec2>& was = old.edges[s].curve.points;
          if (piece.edges[s].straight) continue;
          for (std::size_t i = 1; i + 1 < points.size(); ++i)
            points[i] = {was[i].x + e * share((was[i].y - low) / (high - low)), was[i].y};
        }
      }
    }
    // Where the two sides slant unlike, the underarm's height gives so that they stay equal.
    if (top != foot) edit.free_corners.push_back({{at, body->underarm_corner}, {false, true}});
    edit.note.pieces.push_back(piece.id);
  }
  const std::size_t sleeve = sleeve_index(edit.block);
  if (top && sleeve != kNowhere) {
    widen_sleeve_underarm(edit, sleeve, e, e);
    edit.note.pieces.push_back(edit.block.pieces[sleeve].id);
  }
  edit.note.text = std::string("front and back: side seam ") + (e > 0 ? "let out " : "taken in ") +
                   mm_text(e) + " on each edge (" + mm_text(amount.mm()) +
                   " on the half pattern, " + mm_text(amount.whole().mm()) +
                   " in all), level: " + level;
  return Done{};
}

}  // namespace pinwright
