// Deepen the dart at the shoulder blade.
//
//      N ,--.                the back is cut from the shoulder dart through the blade point B to
//      the
//      |/ \ /`-P             hinge, and the outer part turns about it until the dart is wider by w
//      at |   V    )            the shoulder; the cloth that opens at the blade is the room it
//      needs. |   B - - a           armhole: hinge on the armhole at its notch; only the shoulder
//      and the |   :    (                     upper armhole turn; |  :      U           waist:
//      hinge at the centre back waist; the whole outer part turns, and H---------S the side comes
//      out and down a little (not on a back that is
//                                     longer than to the waist).
//      A back without a dart: the shoulder turns likewise and gets longer by w, eased in to the
//      front's.
//
// Shoulder seam and armhole keep their sewn lengths. Steps: common practice (the topic stands in
// Montana station bulletin 265, p. 15). Inverse: the negative amount.
#include <algorithm>
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

// The turn about the hinge after which `moves` has gone away from `stays` by w, seen along the line
// between them.
std::optional<Affine> opening_turn(Vec2 hinge, Vec2 stays, Vec2 moves, double w) {
  const Vec2 along = unit(moves - stays);
  double angle = 0.0;
  for (int i = 0; i < 40; ++i) {
    const Vec2 now = apply(rotation_about(hinge, angle), moves);
    const double slope = dot(along, left_normal(now - hinge));
    if (std::abs(slope) < 1.0) return {};
    angle -= (dot(now - moves, along) - w) / slope;
  }
  if (!std::isfinite(angle) || std::abs(angle) > 0.5) return {};
  return rotation_about(hinge, angle);
}

Result<Done> lengthen_shoulder(Edit& edit, const BodiceHalf& half, double w) {
  const Piece& piece = edit.block.pieces[half.at];
  const Vec2 tip = piece.edges[half.body.shoulder_corner].curve.end();
  const Vec2 neck = piece.edges[half.body.neck_corner].curve.end();
  const auto turn_by = opening_turn(armhole_hinge(piece, half.body), neck, tip, w);
  if (!turn_by) return too_large("the shoulder cannot turn so far", "take a smaller amount");
  if (w + shoulder_ease(edit.block).value_or(0.0) < 0.0) {
    return not_here("the back has no shoulder dart, and its shoulder not so much eased in",
                    "leave the step out");
  }
  const Result<Done> eased = set_shoulder_ease(edit, shoulder_ease(edit.block).value_or(0.0) + w);
  if (!eased) return eased;
  CornerMotions motions = still(piece);
  // Straight on from where the turn has taken it, until the shoulder is longer by w exactly.
  const Vec2 turned = apply(*turn_by, tip);
  const Vec2 wanted = neck + (distance(neck, tip) + w) * unit(turned - neck);
  motions[half.body.shoulder_corner] = then(*turn_by, translation(wanted - turned));
  edit.wanted_length[{half.at, half.body.armhole}] = length(piece.edges[half.body.armhole].curve);
  move_corners(edit, half.at, motions);
  hold_across(edit, half);
  edit.note.text = piece.name + ": back shoulder " + mm_text(w) + (w > 0 ? " longer" : " shorter") +
                   ", eased in over the blade";
  return Done{};
}

}  // namespace

Result<Done> deepen_blade_dart(Edit& edit, HalfMm amount, bool at_waist) {
  const Result<BodiceHalf> found = bodice_half(edit, "back");
  if (!found) return found.problems();
  const BodiceAnatomy& body = found->body;
  const Piece& piece = edit.block.pieces[found->at];
  const double w = amount.mm();
  edit.note.pieces.push_back(piece.id);
  const Dart* dart = shoulder_dart(piece, body);
  const bool to_waist = piece.edges[next_in(piece, body.centre)].role == EdgeRole::waist;
  if (dart == nullptr) return lengthen_shoulder(edit, *found, w);
  if (at_waist && !to_waist) {
    return not_here("the back is longer than to the waist, the cut cannot end there",
                    "hinge it at the armhole");
  }
  const double intake = dart_intake(piece, *dart);
  if (-w > 0.9 * intake) {
    return too_large("the shoulder dart takes up only " + mm_text(intake), "take a smaller amount");
  }
  const std::size_t mouth = before_in(piece, edge_index(piece, dart->leg_in));
  const Vec2 stays = piece.edges[edge_index(piece, dart->leg_out)].curve.end();
  const Vec2 hinge =
      at_waist ? piece.edges[body.hem_corner].curve.end() : armhole_hinge(piece, body);
  const auto turn_by = opening_turn(hinge, stays, piece.edges[mouth].curve.end(), w);
  if (!turn_by) return too_large("the shoulder cannot turn so far", "take a smaller amount");
  CornerMotions motions = still(piece);
  set_from_to(piece, motions, at_waist ? next_in(piece, body.hem_corner) : body.shoulder_corner,
              mouth, *turn_by);
  edit.wanted_length[{found->at, body.armhole}] = length(piece.edges[body.armhole].curve);
  edit.note.text = piece.name + ": shoulder dart " + (w > 0 ? "deepened " : "made shallower by ") +
                   mm_text(w) + " at the shoulder, cut through the blade, hinge at the " +
                   (at_waist ? "centre back waist" : "armhole");
  move_corners(edit, found->at, motions);
  if (!at_waist) hold_across(edit, *found);
  return Done{};
}

}  // namespace pinwright
