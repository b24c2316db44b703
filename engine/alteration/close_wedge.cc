// Close a wedge at an edge.
//
//      C  q|q' N            The cloth between q and q' (width w on the edge) is folded out: the
//      |    \|   \          moving part turns about the hinge by the angle whose chord at the
//      |     X    P         radius of q is w: w = 2 r sin(angle / 2).
//      |   hinge   )
//      |     ---<dart       hinge at the bust point: the part from q over the shoulder to the bust
//      |           |        dart turns, and the dart opens by the same angle (its value is its
//      H-----------S        angle); in a dartless front the side gets longer and is eased in.
//                           hinge at the armhole: neck point and shoulder turn.
//                           hinge at the hem: all from the side's foot upward turns.
//
// A negative amount opens a wedge in the same way; the two undo each other.
#include <algorithm>
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

struct Cut {
  Vec2 at;       // q
  Vec2 closing;  // direction in which the moving part's q goes, unit
};

// Turn about the hinge that closes w at the cut; nothing when the hinge is too near.
std::optional<Affine> closing_turn(const Cut& cut, Vec2 hinge, double w, double* angle) {
  const double r = distance(cut.at, hinge);
  if (r < 2.0 * std::abs(w)) return {};
  const double size = 2.0 * std::asin(w / (2.0 * r));
  const Vec2 forward = left_normal(unit(cut.at - hinge));
  *angle = dot(forward, cut.closing) >= 0.0 ? size : -size;
  return rotation_about(hinge, *angle);
}

Cut cut_in(const Edge& edge, double share, bool start_moves) {
  const double s = share * length(edge.curve);
  const Vec2 t = tangent_at(edge.curve, s);
  return {point_at(edge.curve, s), start_moves ? t : -t};
}

// Where along the edge the wedge lies: the notch when there is one, else the middle.
double cut_share(const Piece& piece, const Edge& edge) {
  for (const Notch& n : piece.notches)
    if (n.edge == edge.id && edge.role == EdgeRole::armhole)
      return std::clamp(n.at_mm / length(edge.curve), 0.25, 0.75);
  return 0.5;
}

Problem hinge_too_near(double w) {
  return too_large("a wedge of " + mm_text(w) + " is too wide for so near a hinge",
                   "take a smaller amount or another hinge");
}

// The hinge at a mark that a dart points at: the dart takes up what the wedge gives.
Result<Done> into_dart(Edit& edit, std::size_t at, const BodiceAnatomy& body, const Dart& dart,
                       Vec2 hinge, bool neckline, double w) {
  Piece& piece = edit.piece(at);
  const std::size_t out = edge_index(piece, dart.leg_out);
  const std::size_t in = edge_index(piece, dart.leg_in);
  const std::size_t mouth_in = before_in(piece, in);  // corner where leg_in starts
  const bool shoulder_dart = std::find(body.shoulder.begin(), body.shoulder.end(),
                                       before_in(piece, in)) != body.shoulder.end();
  const std::size_t edge = neckline ? body.neckline : body.armhole;
  // The part between the wedge and the dart turns; with the dart on the side (or the waist) that
  // is the part before the neckline / armhole, with a dart in the shoulder, seen from the armhole,
  // the part after it.
  const bool start_moves = neckline || !shoulder_dart;
  const Cut cut = cut_in(piece.edges[edge], cut_share(piece, piece.edges[edge]), start_moves);
  double angle = 0.0;
  const auto turn_by = closing_turn(cut, hinge, w, &angle);
  if (!turn_by) return hinge_too_near(w);
  CornerMotions motions = still(piece);
  if (start_moves) {
    set_from_to(piece, motions, out, before_in(piece, edge), *turn_by);
  } else {
    set_from_to(piece, motions, edge, mouth_in, *turn_by);
  }
  edit.wanted_length[{at, edge}] = length(piece.edges[edge].curve) - w;
  if (neckline && !shoulder_dart)
    edit.wanted_length[{at, body.armhole}] = length(piece.edges[body.armhole].curve);
  // The dart's point keeps its distance from the mark, on the new middle line.
  const Vec2 point = piece.edges[in].curve.end();
  const double short_of = distance(point, hinge);
  const Vec2 a = piece.edges[in].curve.start();
  const Vec2 b = piece.edges[out].curve.end();
  const Vec2 a2 = motions[mouth_in] ? apply(*motions[mouth_in], a) : a;
  const Vec2 b2 = motions[out] ? apply(*motions[out], b) : b;
  const Vec2 wish = hinge + short_of * unit(lerp(a2, b2, 0.5) - hinge);
  motions[in] = translation(wish - point);
  move_corners(edit, at, motions);
  return Done{};
}

// Dartless front, hinge at the bust point: the side seam gains what opens and is eased in.
Result<Done> into_side_ease(Edit& edit, std::size_t at, const BodiceAnatomy& body, Vec2 hinge,
                            bool neckline, double w) {
  Piece& piece = edit.piece(at);
  SeamSection* eased = eased_section(edit.block, "side");
  if (body.side.size() != 1 || eased == nullptr) {
    return not_here("the " + piece.id +
                        " has neither a dart at the bust point nor a side seam that "
                        "is eased over the bust",
                    "choose another hinge: armhole or hem");
  }
  const std::size_t edge = neckline ? body.neckline : body.armhole;
  const Cut cut = cut_in(piece.edges[edge], cut_share(piece, piece.edges[edge]), true);
  double angle = 0.0;
  const auto turn_by = closing_turn(cut, hinge, w, &angle);
  if (!turn_by) return hinge_too_near(w);
  const std::size_t side = body.side.front();
  const std::vector<CurvePlace> level = at_height(piece.edges[side].curve, hinge.y);
  if (level.empty())
    return not_here("the side seam does not reach the bust level", "check the bust point");
  const double reach = distance(hinge, point(piece.edges[side].curve, level.front()));
  const double opens = std::copysign(2.0 * reach * std::sin(std::abs(angle) / 2.0), w);
  eased->ease_mm += opens;
  if (eased->ease_mm > kMostSideEaseMm || eased->ease_mm < 0.0) {
    return too_large("the side seam would have " + mm_text(eased->ease_mm) +
                         (eased->ease_mm < 0.0 ? " too little" : " to ease in") + " over the bust",
                     "take a smaller amount, or draft the front with a bust dart");
  }
  edit.wanted_length[{at, body.armhole}] = length(piece.edges[body.armhole].curve);
  edit.wanted_length[{at, edge}] = length(piece.edges[edge].curve) - w;
  edit.wanted_length[{at, side}] = length(piece.edges[side].curve) + opens;
  CornerMotions motions = still(piece);
  set_from_to(piece, motions, body.underarm_corner, before_in(piece, edge), *turn_by);
  move_corners(edit, at, motions);
  return Done{};
}

}  // namespace

Result<Done> close_wedge(Edit& edit, HalfMm amount, const std::string& piece_id,
                         const std::string& edge_name, const std::string& hinge_name) {
  const std::size_t at = piece_index(edit.block, piece_id);
  const auto body = at == kNowhere ? std::nullopt : bodice_anatomy(edit.block.pieces[at]);
  if (!body)
    return not_here("this block has no " + piece_id + " with a neckline and an armhole",
                    "name a piece of the block");
  Piece& piece = edit.piece(at);
  const bool neckline = edge_name == "neckline";
  const double w = amount.mm();
  edit.note.text = piece.name + ": " + (w > 0 ? "closed " : "opened ") + mm_text(w) + " at the " +
                   edge_name + ", hinge at the " + hinge_name;
  edit.note.pieces.push_back(piece_id);
  const std::size_t edge = neckline ? body->neckline : body->armhole;
  const double edge_length = length(piece.edges[edge].curve);
  if (w > 0.5 * edge_length)
    return too_large("the " + edge_name + " is only " + mm_text(edge_length) + " long",
                     "take a smaller amount");

  if (hinge_name == "bust-point" || hinge_name == "shoulder-blade-point") {
    const Landmark* mark = find_landmark(piece, hinge_name);
    if (mark == nullptr)
      return not_here("the " + piece_id + " has no " + hinge_name, "choose another hinge");
    // Of several darts at the mark the one nearest to the wedge in the ring's order, going back
    // from it, is not the waist's: a bust or shoulder dart.
    for (const Dart& dart : piece.darts) {
      if (dart.toward != hinge_name) continue;
      const std::size_t mouth = before_in(piece, edge_index(piece, dart.leg_in));
      const EdgeRole beside = piece.edges[mouth].role;
      if (beside == EdgeRole::side || beside == EdgeRole::shoulder) {
        const Dart chosen = dart;
        return into_dart(edit, at, *body, chosen, mark->at, neckline, w);
      }
    }
    if (piece_id == "front" && hinge_name == "bust-point")
      return into_side_ease(edit, at, *body, mark->at, neckline, w);
    return not_here("the " + piece_id + " has no dart at the " + hinge_name,
                    "choose another hinge: armhole or hem");
  }
  if (!neckline)
    return not_here("a wedge at the armhole cannot hinge at the " + hinge_name,
                    "hinge it at the bust point or the shoulder blade point");
  const Cut cut = cut_in(piece.edges[edge], 0.5, true);
  const bool at_armhole = hinge_name == "armhole";
  const Vec2 hinge = at_armhole ? point_at(piece.edges[body->armhole].curve,
                                           cut_share(piece, piece.edges[body->armhole]) *
                                               length(piece.edges[body->armhole].curve))
                                : piece.edges[body->side_corner].curve.end();
  double angle = 0.0;
  const auto turn_by = closing_turn(cut, hinge, w, &angle);
  if (!turn_by) return hinge_too_near(w);
  CornerMotions motions = still(piece);
  set_from_to(piece, motions, at_armhole ? body->shoulder_corner : body->side_corner,
              body->neck_corner, *turn_by);
  edit.wanted_length[{at, edge}] = edge_length - w;
  if (at_armhole)
    edit.wanted_length[{at, body->armhole}] = length(piece.edges[body->armhole].curve);
  move_corners(edit, at, motions);
  return Done{};
}

}  // namespace pinwright
