// Turn the sleeve in the armhole.
//
//          <-r
//         C'  C             forward by r, the underarm with it: the whole cap goes r toward the
//         back
//        .--^--.            over the sleeve, so that the armhole takes hold of the sleeve r further
//      /         \          back and the grain hangs forward; hem and grainline stay, the underarm
//     U' U     U' U         seams swing and keep their length.
//      \         /          The underarm stays: only the crown goes r back; both halves are redrawn
//       |_______|           to their armholes, the front one flatter, the back one fuller.
//
// Test and remedy: common practice (the grain hangs plumb, its crosswise threads level at the
// armpit). Inverse: the negative amount, which turns backward.
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> turn_sleeve(Edit& edit, DistanceMm amount, bool underarm_follows) {
  const std::size_t at = sleeve_index(edit.block);
  if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
  Piece& piece = edit.piece(at);
  const SleeveAnatomy sleeve = *sleeve_anatomy(piece);
  const double r = amount.mm();
  const Vec2 crown = piece.edges[sleeve.cap_front].curve.end();
  edit.note.pieces.push_back(piece.id);
  edit.note.text = piece.name + ": turned " + (r > 0 ? "forward " : "backward ") + mm_text(r) +
                   " along the armhole" + (underarm_follows ? "" : ", the underarm left in place");
  edit.crown.x = crown.x - r;
  if (!underarm_follows) return Done{};
  edit.crown.height = crown.y - 0.5 * (piece.edges[sleeve.cap_front].curve.start().y +
                                       piece.edges[sleeve.cap_back].curve.end().y);
  const Affine back = translation({-r, 0.0});
  CornerMotions motions = still(piece);
  set_from_to(piece, motions, sleeve.underarm_front, sleeve.cap_back, back);
  for (const std::size_t seam : {sleeve.underarm_front, sleeve.underarm_back})
    edit.wanted_length[{at, seam}] = length(piece.edges[seam].curve);
  edit.free_corners.push_back({{at, sleeve.underarm_front}, {false, true}});
  edit.free_corners.push_back({{at, sleeve.cap_back}, {false, true}});
  move_corners(edit, at, motions);
  return Done{};
}

}  // namespace pinwright
