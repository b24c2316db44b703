// Shorten the upper chest.
//
//      C      N              the front is cut across above the bust from the centre to the hinge a
//      |`----' \             on the armhole (at its notch); what lies above turns about a until it
//      |        P            has come down by d at the centre:
//    d |-------- )a            N and P turn with it, so neck and shoulder come in a little;
//      |        (              C comes down by d and stays on the fold: the centre front is drawn
//      |    B    U             straight again, the neckline keeps its length.
//      H---------S           Shoulder and armhole keep their lengths; below the cut nothing moves.
//
// Steps: common practice (tuck from the centre front to the armhole; the handbooks give the topic,
// "hollow" or "thin chest"). Inverse: the negative amount spreads (full upper chest).
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> shorten_chest(Edit& edit, DistanceMm amount) {
  const Result<BodiceHalf> found = bodice_half(edit, "front");
  if (!found) return found.problems();
  const BodiceAnatomy& body = found->body;
  const Piece& piece = edit.block.pieces[found->at];
  const double d = amount.mm();
  const Vec2 hinge = armhole_hinge(piece, body);
  const Vec2 centre = piece.edges[body.centre_corner].curve.end();
  const Landmark* bust = find_landmark(piece, "bust-point");
  const double room =
      centre.y - (bust != nullptr ? bust->at.y : piece.edges[body.underarm_corner].curve.end().y);
  if (room <= 0.0) {
    return not_here("the front neckline reaches down to the bust, so there is no chest above it",
                    "raise the neckline first");
  }
  if (d > 0.5 * room) {
    return too_large("between neckline and bust there are only " + mm_text(room),
                     "take a smaller amount");
  }
  if (std::abs(d) > 0.5 * hinge.x)
    return too_large("the chest cannot turn so far", "take a smaller amount");
  const Affine turn_by = rotation_about(hinge, std::asin(d / hinge.x));
  CornerMotions motions = still(piece);
  set_from_to(piece, motions, body.shoulder_corner, body.neck_corner, turn_by);
  motions[body.centre_corner] = translation({0.0, -d});
  edit.wanted_length[{found->at, body.armhole}] = length(piece.edges[body.armhole].curve);
  edit.wanted_length[{found->at, body.neckline}] = length(piece.edges[body.neckline].curve);
  edit.length_if_possible.insert({found->at, body.neckline});
  edit.note.text = piece.name + ": upper chest " + (d > 0 ? "shortened " : "lengthened ") +
                   mm_text(d) + " at the centre, running out to nothing at the armhole";
  edit.note.pieces.push_back(piece.id);
  move_corners(edit, found->at, motions);
  return Done{};
}

}  // namespace pinwright
