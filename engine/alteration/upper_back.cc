// Lengthen the upper back.
//
//      C  N  ,-.             the back is cut across the blades from the centre to the hinge a on
//      the
//      |`-' \|  P            armhole (at its notch) and spread by d at the centre; what lies above
//      |     v   )           turns about a. So that the centre back stays on the fold, the cloth
//    d |=====B--- a          thrown out at neck and shoulder is taken up:
//      |         (             taken-up, with a shoulder dart: the part nearer to the neck turns
//      |          U            back about the blade point B and the dart opens by that angle;
//      H----------S            taken-up, without: neckline and shoulder come in together, so that
//                              the shoulder turns about its tip;
//                              eased: only the neck comes in; the back shoulder gets longer and is
//                              eased onto the front's.
//
// The neckline keeps its length, C goes up the fold by d, N by about half of it; the armhole keeps
// its length; below the cut nothing moves. Where a dart has less than is to be taken out of it, the
// rest is taken up as without one. Steps: common practice (Montana station bulletin 265, p. 15, has
// the topic). Inverse: the negative amount folds out (erect, flat upper back).
#include <algorithm>
#include <cmath>

#include "engine/alteration/hollow.h"
#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kLeastDartShare = 0.45;  // of its intake is left to a dart that gives

// The angle by which the part nearer to the neck turns back, the dart opening by as much.
double dart_takes(const Piece& piece, const Dart& dart, Vec2 blade, double turned) {
  const Vec2 mouth = find_edge(piece, dart.leg_in)->curve.start();
  const double gives = (1.0 - kLeastDartShare) * dart_intake(piece, dart) / distance(blade, mouth);
  return std::max(turned, -gives);
}

// How far in the neck point must go for the neckline, drawn on from C on the fold to N with its
// angle to the shoulder, to keep its length; as far as C stands off the fold where no hollow does.
double neck_goes_in(const Piece& piece, const BodiceAnatomy& body, const Affine& inner, double d) {
  const Curve& neckline = piece.edges[body.neckline].curve;
  const double wanted = length(neckline);
  const Vec2 neck = apply(inner, neckline.start());
  const Vec2 along = apply(inner, neckline.start() + start_tangent(neckline)) - neck;
  const Vec2 centre = neckline.end() + Vec2{0.0, d};
  const double stands_off = apply(inner, neckline.end()).x - neckline.end().x;
  const auto too_long = [&](double in) -> std::optional<double> {
    const auto drawn = redraw_hollow(
        neckline, {neck - Vec2{in, 0.0}, centre, along, end_tangent(neckline), {}, {}, 0.0});
    if (!drawn) return {};
    return length(*drawn) - wanted;
  };
  double in = stands_off;
  for (int i = 0; i < 20; ++i) {
    const std::optional<double> off = too_long(in);
    if (!off) return stands_off;
    if (std::abs(*off) < 1e-9) break;
    in += *off;  // a neckline that runs across gains about as much as its end goes out
  }
  return in;
}

// How far in the shoulder tip goes with the neck: not at all, or as much as keeps within its limits
// what the shoulder gains or loses by the neck going in by `off` alone.
double tip_goes_in(const Edit& edit, const BodiceHalf& back, const Affine& outer, double off) {
  const Piece& piece = edit.block.pieces[back.at];
  const Vec2 joint = piece.edges[before_in(piece, back.body.neck_corner)].curve.end();
  const Vec2 neck = piece.edges[back.body.neck_corner].curve.end();
  const Vec2 neck_goes = apply(outer, neck) - Vec2{off, 0.0};
  const double ease = shoulder_ease(edit.block).value_or(0.0);
  const auto within = [&](double in) {
    const double after =
        ease + distance(apply(outer, joint) - Vec2{in, 0.0}, neck_goes) - distance(joint, neck);
    return after >= 0.0 && after <= kMostShoulderEaseMm;
  };
  if (within(0.0)) return 0.0;
  double too_little = 0.0;
  double enough = off;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (too_little + enough);
    (within(middle) ? enough : too_little) = middle;
  }
  return enough;
}

}  // namespace

Result<Done> lengthen_upper_back(Edit& edit, DistanceMm amount, bool eased) {
  const Result<BodiceHalf> found = bodice_half(edit, "back");
  if (!found) return found.problems();
  const BodiceAnatomy& body = found->body;
  const Piece& piece = edit.block.pieces[found->at];
  const double d = amount.mm();
  const Dart* dart = shoulder_dart(piece, body);
  const Vec2 hinge = armhole_hinge(piece, body);
  const Vec2 centre = piece.edges[body.centre_corner].curve.end();
  const double room = centre.y - hinge.y;
  if (room < 10.0 || -d > 0.6 * room || std::abs(d) > 0.4 * hinge.x) {
    return too_large("between back neck and blades there are only " + mm_text(std::max(room, 0.0)),
                     "take a smaller amount");
  }
  const Landmark* mark = find_landmark(piece, "shoulder-blade-point");
  const Vec2 blade = mark != nullptr ? mark->at : Vec2{0.5 * hinge.x, hinge.y};

  const double turned = std::asin(d / hinge.x);
  const Affine outer = rotation_about(hinge, -turned);
  const Vec2 blade_goes = apply(outer, blade) - blade;
  const double back_again =
      dart != nullptr && !eased ? dart_takes(piece, *dart, blade, turned) : 0.0;
  const Affine inner = then(outer, rotation_about(blade + blade_goes, back_again));
  // The centre comes back onto the fold, and the neckline keeps its length.
  const double off = neck_goes_in(piece, body, inner, d);
  const Affine in = translation({-off, 0.0});
  double tip_in = dart != nullptr ? 0.0 : off;
  if (eased) tip_in = tip_goes_in(edit, *found, outer, off);
  const Affine tip = then(outer, translation({-tip_in, 0.0}));
  CornerMotions motions = still(piece);
  move_shoulder(piece, body, motions, tip);
  motions[body.neck_corner] = then(inner, in);
  if (dart != nullptr) {
    motions[edge_index(piece, dart->leg_in)] = eased ? tip : translation(blade_goes);
    if (!eased) motions[edge_index(piece, dart->leg_out)] = then(inner, in);
  }
  motions[body.centre_corner] = translation({0.0, d});
  edit.wanted_length[{found->at, body.armhole}] = length(piece.edges[body.armhole].curve);
  edit.wanted_length[{found->at, body.neckline}] = length(piece.edges[body.neckline].curve);
  edit.length_if_possible.insert({found->at, body.neckline});
  edit.note.text = piece.name + ": upper back " + (d > 0 ? "lengthened " : "shortened ") +
                   mm_text(d) + " at the centre, running out to nothing at the armhole";
  edit.note.pieces.push_back(piece.id);
  const double was = shoulder_length(piece, body);
  move_corners(edit, found->at, motions);
  hold_across(edit, *found);
  if (dart != nullptr && !eased) {
    edit.note.text += std::string(", shoulder dart ") + (d > 0 ? "opened" : "closed") + " with it";
  } else if (eased) {
    const double more = shoulder_length(edit.block.pieces[found->at], body) - was;
    if (std::abs(more) < 1e-6) return Done{};
    edit.note.text +=
        ", back shoulder " + mm_text(more) + (more > 0 ? " longer" : " shorter") + ", eased in";
    return set_shoulder_ease(edit, shoulder_ease(edit.block).value_or(0.0) + more);
  }
  return Done{};
}

}  // namespace pinwright
