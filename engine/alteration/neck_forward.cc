// Move the neck forward.
//
//      back                  the hole for the neck goes forward without becoming larger: on the
//      back C C'--.                 and N go up by f, on the front down by f; the shoulder seam
//      turns about C--. N'               its tip P, which stays.
//          `N -.
//       front   P            Necklines, shoulders and armholes keep their lengths; the armholes and
//      C-.  N'-'             everything below keep their places.
//      C'-`-'
//
// For a neck carried forward: common practice. Inverse: the negative amount (neck carried back).
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> move_neck_forward(Edit& edit, DistanceMm amount) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const double f = amount.mm();
  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  for (const auto& [at, body] : halves) {
    const Piece& piece = edit.block.pieces[at];
    const double up = at == found->back ? f : -f;
    const Vec2 tip = piece.edges[body->shoulder_corner].curve.end();
    const Vec2 neck = piece.edges[body->neck_corner].curve.end();
    const double r = distance(tip, neck);
    if (r < 2.0 * std::abs(f) || -up > 0.3 * length(piece.edges[body->centre].curve))
      return too_large("the shoulder is too short to swing so far", "take a smaller amount");
    const Affine turn_by = rotation_about(tip, -2.0 * std::asin(up / (2.0 * r)));
    CornerMotions motions = still(piece);
    move_shoulder(piece, *body, motions, turn_by);
    motions[body->shoulder_corner] = std::nullopt;
    motions[body->centre_corner] = translation({0.0, up});
    move_corners(edit, at, motions);
    edit.note.pieces.push_back(piece.id);
  }
  keep_neckline(edit, *found);
  edit.note.text = std::string("front and back: neckline moved ") + mm_text(f) +
                   (f > 0 ? " forward" : " backward") + ", shoulder seam turned about its tip";
  return Done{};
}

}  // namespace pinwright
