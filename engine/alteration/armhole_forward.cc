// Move the armhole forward.
//
//        P               P
//       ) ) front        \ (      front: scooped by f half way up, running out to shoulder tip and
//      ( (          back  ) )            underarm point;
//       `-`U            U'-'      back:  filled by the same. The armhole is moved, not enlarged:
//       one
//                                 gains what the other loses, and shoulder and side seam stay.
//
// For arms carried forward: 1/4 in is enough for an extreme stoop (Hertz, men's garments, pp. 49
// and 88-89). Inverse: the negative amount.
#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> move_armhole_forward(Edit& edit, DistanceMm amount) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const double f = amount.mm();
  const BodiceHalf halves[] = {{found->front, found->front_at}, {found->back, found->back_at}};
  double was[2] = {0.0, 0.0};
  double drawn[2] = {0.0, 0.0};
  for (std::size_t i = 0; i < 2; ++i) {
    const BodiceHalf& half = halves[i];
    was[i] = length(edit.block.pieces[half.at].edges[half.body.armhole].curve);
    const Result<Done> moved = move_armhole_middle(edit, half, i == 0 ? -f : f);
    if (!moved) return moved;
    const std::optional<Curve> hollow = armhole_with_middle(edit, half, i == 0 ? -f : f, {});
    Edge& armhole = edit.block.pieces[half.at].edges[half.body.armhole];
    if (hollow) armhole.curve = *hollow;
    drawn[i] = length(armhole.curve);
    edit.note.pieces.push_back(edit.block.pieces[half.at].id);
  }
  const double goes_over = 0.5 * ((drawn[0] - was[0]) - (drawn[1] - was[1]));
  for (std::size_t i = 0; i < 2; ++i) {
    const BodiceHalf& half = halves[i];
    const double wanted = was[i] + (i == 0 ? goes_over : -goes_over);
    edit.wanted_length[{half.at, half.body.armhole}] = wanted;
    if (const auto hollow = armhole_with_middle(edit, half, i == 0 ? -f : f, wanted))
      edit.block.pieces[half.at].edges[half.body.armhole].curve = *hollow;
  }
  edit.note.text = std::string("front and back: armhole moved ") + mm_text(f) +
                   (f > 0 ? " forward" : " backward") + " half way up, its length kept";
  return Done{};
}

}  // namespace pinwright
