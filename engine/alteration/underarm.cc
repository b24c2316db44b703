// Lower or raise the base of the armhole, on front, back and sleeve alike.
//
//        P                     .--^--.
//         )                   /       .
//     . .U  |   U goes down   U       U    the sleeve's underarm corners go down their seams
//       `U' |   the side      U'     U'    by the same; the cap is redrawn to the armhole
//           |   seam
//
// Inverse: the negative amount.
#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> lower_underarm(Edit& edit, DistanceMm amount) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  for (const auto& [at, body] : halves) {
    Piece& piece = edit.piece(at);
    const double room = length(piece.edges[body->side.back()].curve);
    if (amount.mm() > 0.6 * room) {
      return too_large("the side seam of the " + piece.id + " has only " + mm_text(room) +
                           " to give under the arm",
                       "take a smaller amount");
    }
    CornerMotions motions = still(piece);
    motions[body->underarm_corner] = lower_along_side(edit, at, *body, amount.mm());
    move_corners(edit, at, motions);
    edit.note.pieces.push_back(piece.id);
  }
  const std::size_t sleeve = sleeve_index(edit.block);
  if (sleeve != kNowhere) {
    const SleeveAnatomy at = *sleeve_anatomy(edit.block.pieces[sleeve]);
    if (amount.mm() > 0.6 * length(edit.block.pieces[sleeve].edges[at.underarm_front].curve))
      return too_large("the sleeve's underarm seam is too short for it", "take a smaller amount");
    lower_sleeve_underarm(edit, sleeve, amount.mm());
    edit.note.pieces.push_back(edit.block.pieces[sleeve].id);
  }
  edit.note.text = std::string("front, back") + (sleeve != kNowhere ? " and sleeve" : "") +
                   ": underarm " + (amount.mm() > 0 ? "lowered " : "raised ") +
                   mm_text(amount.mm());
  return Done{};
}

}  // namespace pinwright
