// Widen or narrow the sleeve at its hem.
//
//     U-----------U        the hem corners go out by b / 2 each, the underarm seams keep their
//      |         |         length and run out to nothing at the underarm; the hem is squared to
//    H'|H_______H|H'       them again. The cap keeps height, width and length.
//
// Steps: common practice. Inverse: the negative amount (taper).
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> widen_sleeve_hem(Edit& edit, WholeMm amount) {
  const std::size_t at = sleeve_index(edit.block);
  if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
  Piece& piece = edit.piece(at);
  const SleeveAnatomy sleeve = *sleeve_anatomy(piece);
  const std::size_t front_hem = before_in(piece, sleeve.underarm_front);
  const std::size_t back_hem = sleeve.underarm_back;
  const double width = piece.edges[front_hem].curve.end().x - piece.edges[back_hem].curve.end().x;
  if (-amount.mm() > 0.4 * width)
    return too_large("the sleeve is only " + mm_text(width) + " wide at its hem",
                     "take a smaller amount");
  const double seam_length = length(piece.edges[sleeve.underarm_front].curve);
  if (std::abs(amount.mm()) > 0.5 * seam_length)
    return too_large("an underarm seam of " + mm_text(seam_length) + " cannot swing so far",
                     "take a smaller amount");
  const Vec2 crown = piece.edges[sleeve.cap_front].curve.end();
  edit.crown.x = crown.x;
  edit.crown.height = crown.y - 0.5 * (piece.edges[sleeve.cap_front].curve.start().y +
                                       piece.edges[sleeve.cap_back].curve.end().y);
  CornerMotions motions = still(piece);
  motions[front_hem] = translation({0.5 * amount.mm(), 0.0});
  motions[back_hem] = translation({-0.5 * amount.mm(), 0.0});
  for (const std::size_t seam : {sleeve.underarm_front, sleeve.underarm_back})
    edit.wanted_length[{at, seam}] = length(piece.edges[seam].curve);
  if (next_in(piece, back_hem) == front_hem)
    edit.wanted_length[{at, front_hem}] = length(piece.edges[front_hem].curve) + amount.mm();
  edit.free_corners.push_back({{at, front_hem}, {true, true}});
  edit.free_corners.push_back({{at, back_hem}, {true, true}});
  edit.note.pieces.push_back(piece.id);
  edit.note.text = piece.name + ": " + (amount.mm() > 0 ? "widened " : "narrowed ") +
                   mm_text(amount.mm()) + " at the hem";
  move_corners(edit, at, motions);
  return Done{};
}

}  // namespace pinwright
