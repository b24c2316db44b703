// Widen or narrow across the back or the chest.
//
//        N----P- P'           armhole: the armhole goes out by w half way up, running out to the
//        |     ) )                     underarm point and the shoulder tip. On the back the tip
//        goes |     ( (                     out along the shoulder as far as the armhole would else
//        run |      `-U U'                 past it, and the longer shoulder is eased in. |        |
//        :         whole:   a strip of w from shoulder to hem at the armhole side: armhole,
//        H--------S-S'                 side and hem go out by w. A shoulder dart opens by w;
//        without
//                                      one the tip goes out only as far as the shoulder seam's ease
//                                      allows (0 to 1/2 in), the rest runs out in the armhole.
//
// w is the amount on the half pattern: across, the garment changes by 2 w. Vertical extension, the
// longer back shoulder taken as ease or as a dart: fitting bulletins ("broad back"). Inverse: the
// negative amount (narrow back, narrow chest).
#include <algorithm>
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kDartGives = 0.65;  // of its intake: most that a dart gives up

// How far the tip may go out along the shoulder with the seam still eased within its limits.
double tip_within_ease(const Edit& edit, const std::string& piece, double wish) {
  const std::optional<double> ease = shoulder_ease(edit.block);
  if (!ease) return 0.0;
  const double more = std::max(0.0, kMostShoulderEaseMm - *ease);
  const double less = std::max(0.0, *ease);
  // A longer back shoulder is eased more, a longer front shoulder leaves less to ease.
  return piece == "back" ? std::clamp(wish, -less, more) : std::clamp(wish, -more, less);
}

Result<Done> restate_ease(Edit& edit, const std::string& piece, double tip) {
  if (tip == 0.0) return Done{};
  const double ease = shoulder_ease(edit.block).value_or(0.0);
  return set_shoulder_ease(edit, ease + (piece == "back" ? tip : -tip));
}

}  // namespace

Result<Done> widen_across(Edit& edit, HalfMm amount, const std::string& piece_id, bool whole) {
  const Result<BodiceHalf> found = bodice_half(edit, piece_id);
  if (!found) return found.problems();
  const BodiceAnatomy& body = found->body;
  const Piece& piece = edit.block.pieces[found->at];
  const double w = amount.mm();
  const std::optional<Vec2> middle = armhole_middle(piece, body);
  if (!middle) {
    return not_here("the armhole of the " + piece_id + " is no single hollow",
                    "redraw the armhole first");
  }
  if (-w > 0.3 * middle->x)
    return too_large("the " + piece_id + " is only " + mm_text(2.0 * middle->x) + " across",
                     "take a smaller amount");
  const Dart* dart = shoulder_dart(piece, body);
  CornerMotions motions = still(piece);
  double eased = 0.0;  // how far the tip goes along the shoulder
  double into_dart = 0.0;
  if (whole) {
    set_from_to(piece, motions, body.side_corner, body.underarm_corner, translation({w, 0.0}));
    if (dart != nullptr) into_dart = std::max(w, -kDartGives * dart_intake(piece, *dart));
    eased = tip_within_ease(edit, piece_id, w - into_dart);
  }
  if (into_dart != 0.0) {
    motions[before_in(piece, edge_index(piece, dart->leg_in))] = translation({into_dart, 0.0});
    motions[edge_index(piece, dart->leg_in)] = translation({0.5 * into_dart, 0.0});
  }
  if (eased != 0.0 || into_dart != 0.0) {
    const Vec2 out = -start_tangent(piece.edges[body.shoulder.front()].curve);
    motions[body.shoulder_corner] = translation(Vec2{into_dart, 0.0} + eased * out);
  }
  move_corners(edit, found->at, motions);
  const Result<Done> moved = move_armhole_middle(edit, *found, w);
  if (!moved) return moved;
  edit.note.text = piece.name + ": " + (w > 0 ? "widened " : "narrowed ") + mm_text(w) +
                   " on the half pattern (" + mm_text(amount.whole().mm()) + " across in all), " +
                   (whole ? "from shoulder to hem" : "at the armhole");
  if (eased != 0.0) {
    edit.note.text += ", shoulder " + mm_text(eased) + (eased > 0 ? " longer" : " shorter");
  }
  edit.note.pieces.push_back(piece_id);
  return restate_ease(edit, piece_id, eased);
}

}  // namespace pinwright
