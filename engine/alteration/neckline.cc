// Lower and widen the neckline.
//
//      C..........N        lower: C goes down the centre (or up), N stays
//      |  `-.    /
//      C'-.   `-/ N'       widen: N goes out along the shoulder to N' on front and back, C stays
//
// Both run out to nothing at the other end; angles at fold and shoulder are kept. Inverse: the
// negative amount.
#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> lower_neckline(Edit& edit, DistanceMm amount, const std::string& piece_id) {
  const std::size_t at = piece_index(edit.block, piece_id);
  const auto body = at == kNowhere ? std::nullopt : bodice_anatomy(edit.block.pieces[at]);
  if (!body)
    return not_here("this block has no " + piece_id + " with a neckline",
                    "name the front or the back");
  Piece& piece = edit.piece(at);
  CornerMotions motions = still(piece);
  motions[body->centre_corner] = translation({0.0, -amount.mm()});
  edit.note.text = piece.name + ": neckline " + (amount.mm() > 0 ? "lowered " : "raised ") +
                   mm_text(amount.mm()) + " at the centre";
  edit.note.pieces.push_back(piece_id);
  const double room = length(piece.edges[body->centre].curve);
  if (amount.mm() > 0.5 * room)
    return too_large("the centre edge is only " + mm_text(room) + " long", "take a smaller amount");
  move_corners(edit, at, motions);
  return Done{};
}

Result<Done> widen_neckline(Edit& edit, DistanceMm amount) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  for (const auto& [at, body] : halves) {
    Piece& piece = edit.piece(at);
    const Edge& shoulder = piece.edges[body->shoulder.back()];
    if (amount.mm() > 0.6 * length(shoulder.curve)) {
      return too_large("the shoulder of the " + piece.id + " has only " +
                           mm_text(length(shoulder.curve)) + " to give at the neck",
                       "take a smaller amount");
    }
    CornerMotions motions = still(piece);
    // Along the shoulder, away from the neck point: against the direction of travel.
    motions[body->neck_corner] = translation(-amount.mm() * end_tangent(shoulder.curve));
    move_corners(edit, at, motions);
    edit.note.pieces.push_back(piece.id);
  }
  edit.note.text = std::string("front and back: neck point moved ") + mm_text(amount.mm()) +
                   (amount.mm() > 0 ? " out" : " in") + " along the shoulder";
  return Done{};
}

}  // namespace pinwright
