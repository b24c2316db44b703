// Spread the sleeve at the upper arm.
//
//         .-^-.              cut from the crown down and across at the upper arm; spread by b:
//       /   |   \            the underarm corners go out by b / 2 each, the crown sinks until the
//     U-----+-----U          cap is again as long as its armhole asks for (restore).
//      \    |    /           A long sleeve keeps its hem; a short one is spread through the hem.
//       \___|___/
//
// Steps: common practice. Inverse: the negative amount.
#include "engine/alteration/operations.h"

namespace pinwright {

Result<Done> widen_upper_arm(Edit& edit, WholeMm amount) {
  const std::size_t at = sleeve_index(edit.block);
  if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
  const Piece& piece = edit.block.pieces[at];
  const SleeveAnatomy sleeve = *sleeve_anatomy(piece);
  const double width =
      piece.edges[sleeve.underarm_front].curve.end().x - piece.edges[sleeve.cap_back].curve.end().x;
  if (-amount.mm() > 0.4 * width)
    return too_large("the sleeve is only " + mm_text(width) + " wide at the upper arm",
                     "take a smaller amount");
  edit.note.text = piece.name + ": " + (amount.mm() > 0 ? "spread " : "overlapped ") +
                   mm_text(amount.mm()) + " at the upper arm, cap redrawn to the armhole";
  edit.note.pieces.push_back(piece.id);
  widen_sleeve_underarm(edit, at, amount.mm() / 2.0, amount.mm() / 2.0);
  return Done{};
}

}  // namespace pinwright
