// Shift the shoulder seam.
//
//       back                       from the tip: the front's tip P is lowered to P' and the back's
//      N.                          raised by the same, both about the neck point N; sewn together
//      | `-.  P'                   the cloth is the same, only the seam lies elsewhere.
//      |    `.P                    whole: the seam goes forward parallel to itself, at the neck as
//      N.    )  back               at the arm.
//        `-. P
//           `P'                    Shoulder lengths stay equal; the front armhole loses what the
//           )  front               back armhole gains (whole: the necklines likewise). The sleeve's
//                                  crown, its top notch, goes forward with the seam.
//
// Inverse: the negative amount (seam backward). Common practice; 1/4 to 1/2 in is usual, 1 in much.
#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

// Outward from the piece, across the line from neck point to tip.
Vec2 across_shoulder(const Piece& piece, const BodiceAnatomy& body) {
  const Vec2 neck = piece.edges[body.neck_corner].curve.end();
  const Vec2 tip = piece.edges[body.shoulder_corner].curve.end();
  return left_normal(unit(tip - neck));
}

Result<Done> shift_half(Edit& edit, std::size_t at, const BodiceAnatomy& body, double out,
                        bool whole) {
  const Piece& piece = edit.block.pieces[at];
  const double armhole = length(piece.edges[body.armhole].curve);
  const double neckline = length(piece.edges[body.neckline].curve);
  if (-out > 0.3 * armhole || (whole && -out > 0.3 * neckline))
    return too_large("the " + piece.id + " has not so much to give at the shoulder",
                     "take a smaller amount");
  CornerMotions motions = still(piece);
  if (whole) {
    move_shoulder(piece, body, motions, translation(out * across_shoulder(piece, body)));
  } else {
    const std::optional<Affine> turn_by = turn_shoulder_tip(piece, body, out);
    if (!turn_by)
      return too_large("the shoulder is too short to swing so far", "take a smaller amount");
    move_shoulder(piece, body, motions, *turn_by);
    motions[body.neck_corner] = std::nullopt;
    // The armhole is cut off or run on: its direction at the tip stays.
    const Vec2 tip = piece.edges[body.shoulder_corner].curve.end();
    motions[body.shoulder_corner] = translation(apply(*turn_by, tip) - tip);
  }
  edit.wanted_length[{at, body.armhole}] = armhole + out;
  move_corners(edit, at, motions);
  edit.note.pieces.push_back(piece.id);
  return Done{};
}

}  // namespace

Result<Done> shift_shoulder_seam(Edit& edit, DistanceMm amount, bool whole) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const double f = amount.mm();
  const Result<Done> front = shift_half(edit, found->front, found->front_at, -f, whole);
  if (!front) return front;
  const Result<Done> back = shift_half(edit, found->back, found->back_at, f, whole);
  if (!back) return back;
  if (whole) keep_neckline(edit, *found);
  edit.note.text =
      std::string("front and back: shoulder seam ") + mm_text(f) +
      (f > 0 ? " forward" : " backward") +
      (whole ? " along its whole length" : " at the shoulder tip, to nothing at the neck");
  return Done{};
}

}  // namespace pinwright
