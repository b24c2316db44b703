// Swing the shoulder; recut the armhole at the shoulder.
//
//        N                      N---.P'  P
//         `-.   P                       |     move the tip: P goes along the shoulder to P' on
//            `-. \             armhole ) )    front and back; the armhole runs out to nothing
//               `P'  swing: the shoulder turns about N until its tip has dropped by the amount;
//                 )  the armhole's base drops by the same, so that armhole and sleeve keep
//                U'  their size.
//
// Inverse: the negative amount.
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> swing_shoulder(Edit& edit, DistanceMm amount, bool armhole_follows) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  for (const auto& [at, body] : halves) {
    Piece& piece = edit.piece(at);
    const Vec2 neck = piece.edges[body->neck_corner].curve.end();
    const Vec2 tip = piece.edges[body->shoulder_corner].curve.end();
    const Vec2 arm = tip - neck;
    const double now = std::asin(arm.y / norm(arm));
    const double wanted = (arm.y - amount.mm()) / norm(arm);
    if (std::abs(wanted) > 0.85)
      return too_large("the shoulder cannot drop so far", "take a smaller amount");
    const double angle = std::asin(wanted) - now;  // P lies to the right of N
    CornerMotions motions = still(piece);
    // Dart mouths in the shoulder turn with it; the dart's own point stays where it is.
    const Affine turn_by = rotation_about(neck, angle);
    for (std::size_t i = body->shoulder_corner; i != body->neck_corner; i = next_in(piece, i))
      motions[i] = turn_by;
    for (const Dart& dart : piece.darts) {
      const std::size_t in = edge_index(piece, dart.leg_in);
      if (motions[in]) motions[in] = std::nullopt;
    }
    if (armhole_follows) {
      edit.wanted_length[{at, body->armhole}] = length(piece.edges[body->armhole].curve);
      motions[body->underarm_corner] = lower_along_side(edit, at, *body, amount.mm());
    }
    move_corners(edit, at, motions);
    edit.note.pieces.push_back(piece.id);
  }
  edit.note.text = std::string("front and back: shoulder point ") +
                   (amount.mm() > 0 ? "lowered " : "raised ") + mm_text(amount.mm()) +
                   (armhole_follows ? ", armhole base with it" : "");
  return Done{};
}

Result<Done> move_shoulder_tip(Edit& edit, DistanceMm amount) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  for (const auto& [at, body] : halves) {
    Piece& piece = edit.piece(at);
    const Edge& shoulder = piece.edges[body->shoulder.front()];
    if (amount.mm() > 0.6 * length(shoulder.curve)) {
      return too_large("the shoulder of the " + piece.id + " has only " +
                           mm_text(length(shoulder.curve)) + " to give at its end",
                       "take a smaller amount");
    }
    CornerMotions motions = still(piece);
    motions[body->shoulder_corner] = translation(amount.mm() * start_tangent(shoulder.curve));
    move_corners(edit, at, motions);
    edit.note.pieces.push_back(piece.id);
  }
  edit.note.text = std::string("front and back: shoulder ") +
                   (amount.mm() > 0 ? "shortened " : "lengthened ") + mm_text(amount.mm()) +
                   " at the armhole, armhole recut";
  return Done{};
}

}  // namespace pinwright
