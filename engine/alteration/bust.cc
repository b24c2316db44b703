// More (or less) room over the bust.
//
//   full bust, darted             the half front is cut from the armhole to the bust point B, from
//   B
//      P                          down through the waist dart, and along the bust dart:
//       )--a                      1 the part between armhole and dart turns about a on the armhole
//      /    \  1                    until B has gone out by w;
//     B------M  bust dart         2 the part below the dart goes out by w and down with B's new
//     |\  2  |                      corner; the bust dart opens by the angle of the turn, the waist
//   3 | \    |                      dart by w, so that the waist keeps its girth;
//     H--N---S                    3 the strip at the centre goes down by the same: level waist.
//
//   full bust, dartless knit: 1 turns likewise; the side goes out by w at the bust level, running
//   out to nothing at the hem; what opens at the side is eased in between the bust notches.
//
//   full bust, a new dart: the side of a dartless front is parted below the bust level and the
//   swing opens the new dart there; it is let go again with ease-dart.
//
//   lengthen: all below the bust level goes down by d; the bust dart, or the eased side, takes it
//   up.
//
// Steps: common practice (the three-cut method). Inverse: the negative amount (small bust).
#include <algorithm>
#include <cmath>

#include "engine/alteration/dart_turn.h"
#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

struct BustFront {
  std::size_t at = 0;
  BodiceAnatomy body;
  Vec2 bust_point;
  std::size_t bust_dart_in = kNowhere;  ///< corner = its point
  std::size_t waist_dart_in = kNowhere;
};

Result<BustFront> bust_front(const Edit& edit) {
  BustFront f;
  f.at = piece_index(edit.block, "front");
  if (f.at == kNowhere) return not_here("this block has no front", "choose a block with a front");
  const Piece& piece = edit.block.pieces[f.at];
  const auto body = bodice_anatomy(piece);
  const Landmark* mark = find_landmark(piece, "bust-point");
  if (!body || mark == nullptr) {
    return not_here("the front lacks a bust point or one of its edges",
                    "mark the bust point on the front");
  }
  f.body = *body;
  f.bust_point = mark->at;
  for (const Dart& d : piece.darts) {
    if (d.toward != "bust-point") continue;
    const std::size_t in = edge_index(piece, d.leg_in);
    const EdgeRole beside = piece.edges[before_in(piece, in)].role;
    // Of several darts in the side the upper one opens.
    if (beside == EdgeRole::side &&
        (f.bust_dart_in == kNowhere || ring_order(piece, in) > ring_order(piece, f.bust_dart_in)))
      f.bust_dart_in = in;
    if (beside == EdgeRole::waist) f.waist_dart_in = in;
  }
  return f;
}

// The angle about a that takes b out by w to the right (Newton; w is small against the radius).
std::optional<double> swing_angle(Vec2 a, Vec2 b, double w) {
  const Vec2 v = b - a;
  double angle = 0.0;
  for (int i = 0; i < 30; ++i) {
    const double out = (std::cos(angle) - 1.0) * v.x - std::sin(angle) * v.y - w;
    const double slope = -std::sin(angle) * v.x - std::cos(angle) * v.y;
    if (std::abs(slope) < 1e-6) return {};
    angle -= out / slope;
  }
  if (!std::isfinite(angle) || std::abs(angle) > 0.6) return {};
  return angle;
}

// Motion of the dart's point: it keeps its distance from `mark` on the new middle line.
Affine keep_short_of(const Piece& piece, std::size_t in, Vec2 mark_before, Vec2 mark_after,
                     const CornerMotions& motions) {
  const std::size_t mouth = before_in(piece, in);
  const std::size_t out = next_in(piece, in);
  const Vec2 point = piece.edges[in].curve.end();
  const Vec2 a = piece.edges[in].curve.start();
  const Vec2 b = piece.edges[out].curve.end();
  const Vec2 a2 = motions[mouth] ? apply(*motions[mouth], a) : a;
  const Vec2 b2 = motions[out] ? apply(*motions[out], b) : b;
  const Vec2 wish =
      mark_after + distance(point, mark_before) * unit(lerp(a2, b2, 0.5) - mark_after);
  return translation(wish - point);
}

double armhole_share(const Piece& piece, const Edge& armhole) {
  for (const Notch& n : piece.notches)
    if (n.edge == armhole.id) return std::clamp(n.at_mm / length(armhole.curve), 0.25, 0.6);
  return 0.4;
}

Result<Done> ease_side(Edit& edit, const BustFront& f, double more) {
  SeamSection* eased = eased_section(edit.block, "side");
  if (eased == nullptr || f.body.side.size() != 1) {
    return not_here("the front has neither a bust dart nor a side seam that is eased over the bust",
                    "use a block with a bust dart, or add bust notches to the side seam");
  }
  eased->ease_mm += more;
  if (eased->ease_mm > kMostSideEaseMm) {
    return too_large("the side seam would have " + mm_text(eased->ease_mm) +
                         " to ease in over the bust, more than 25 mm",
                     "take a smaller amount, or draft the front with a bust dart");
  }
  if (eased->ease_mm < -1e-9) {
    return too_large("the front side would become shorter than the back's",
                     "take at most the length that is eased in over the bust");
  }
  const EdgeAt side{f.at, f.body.side.front()};
  edit.wanted_length[side] = length(edit.block.pieces[f.at].edges[side.edge].curve) + more;
  return Done{};
}

void move_mark(Piece& piece, Vec2 by) {
  for (Landmark& mark : piece.landmarks)
    if (mark.id == "bust-point") mark.at += by;
}

// w out at the bust level, running out to nothing at the hem; above the level as the corner goes.
void bulge_side(Edit& edit, const BustFront& f, double w) {
  const Piece& old = edit.before.pieces[f.at];
  Piece& piece = edit.piece(f.at);
  const std::size_t s = f.body.side.front();
  const double low = old.edges[s].curve.start().y;
  const Vec2 top_old = old.edges[s].curve.end();
  const Vec2 top = piece.edges[s].curve.end();
  std::vector<Vec2>& points = piece.edges[s].curve.points;
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    const Vec2 p = old.edges[s].curve.points[i];
    const double bust = f.bust_point.y;
    if (p.y <= bust) {
      points[i] = {p.x + w * (p.y - low) / (bust - low), p.y};
    } else {
      const double u = (p.y - bust) / (top_old.y - bust);
      points[i] = {p.x + lerp({w, 0}, top - top_old, u).x, p.y + u * (top.y - top_old.y)};
    }
  }
}

// The armhole keeps its place half way up: nobody asked for another width across the front.
void hold_across_front(Edit& edit, const BustFront& f) {
  const Curve& armhole = edit.before.pieces[f.at].edges[f.body.armhole].curve;
  const double level = 0.5 * (armhole.start().y + armhole.end().y);
  const std::vector<CurvePlace> places = at_height(armhole, level);
  if (places.size() != 1) return;
  edit.widths.push_back({"the front keeps its width across",
                         {f.at, f.body.armhole},
                         level,
                         point(armhole, places.front()).x});
}

}  // namespace

Result<Block> with_bust_dart(const Block& before, bool new_dart) {
  const std::size_t at = piece_index(before, "front");
  if (at == kNowhere) return before;
  Block block = before;
  const Landmark* mark = find_landmark(block.pieces[at], "bust-point");
  const bool dart_there = find_dart(block, "front", "side").ok();
  const bool eased = eased_section(block, "side") != nullptr;
  if (mark == nullptr || dart_there || (eased && !new_dart)) return block;
  const Vec2 bust = mark->at;
  const Result<DartPlace> made = open_place(block, at, "side", bust, "bust-point");
  if (!made) return made.problems();
  end_short_of(block.pieces[at], *made, bust, kNewDartShortMm);
  return block;
}

Result<Done> full_bust(Edit& edit, HalfMm amount) {
  const Result<BustFront> found = bust_front(edit);
  if (!found) return found.problems();
  const BustFront& f = *found;
  Piece& piece = edit.piece(f.at);
  const double w = amount.mm();
  const Edge& armhole = piece.edges[f.body.armhole];
  const Vec2 a = point_at(armhole.curve, armhole_share(piece, armhole) * length(armhole.curve));
  const auto angle = swing_angle(a, f.bust_point, w);
  if (!angle) return too_large("the side part cannot swing out so far", "take a smaller amount");
  const Affine swing = rotation_about(a, *angle);
  const Vec2 gone = apply(swing, f.bust_point) - f.bust_point;
  edit.note.pieces.push_back("front");
  edit.note.text = piece.name + ": " + (w > 0 ? "spread " : "overlapped ") + mm_text(w) +
                   " at the bust point (" + whole_text(edit, amount) + ")";
  edit.wanted_length[{f.at, f.body.armhole}] = length(armhole.curve);
  hold_across_front(edit, f);
  CornerMotions motions = still(piece);
  if (f.bust_dart_in == kNowhere) {
    const Edge& side = piece.edges[f.body.side.front()];
    const std::vector<CurvePlace> level = at_height(side.curve, f.bust_point.y);
    if (level.empty())
      return not_here("the side seam does not reach the bust level", "check the bust point");
    const Vec2 p = point(side.curve, level.front());
    const double opens = (apply(swing, p) - p).y;
    const Result<Done> eased = ease_side(edit, f, opens);
    if (!eased) return eased;
    motions[f.body.underarm_corner] = swing;
    move_corners(edit, f.at, motions);
    bulge_side(edit, f, w);
    edit.widths.push_back({"the front goes out by the amount at the bust level",
                           {f.at, f.body.side.front()},
                           f.bust_point.y,
                           p.x + w});
    edit.note.text += ", " + mm_text(opens) + (w > 0 ? " more" : " less") + " eased in at the side";
    return Done{};
  }
  const std::size_t dart_out = next_in(piece, f.bust_dart_in);
  const Affine out = translation(gone);
  const Affine down = translation({0.0, gone.y});
  const Vec2 mark_moves{0.5 * gone.x, 0.0};  // the bust point stays at its height on the body
  set_from_to(piece, motions, dart_out, f.body.underarm_corner, swing);
  set_from_to(piece, motions, f.body.side_corner, before_in(piece, f.bust_dart_in), out);
  motions[f.body.hem_corner] = down;
  // Without a waist dart to open, the side runs out to nothing at the hem.
  if (f.waist_dart_in == kNowhere) motions[f.body.side_corner] = down;
  if (f.waist_dart_in != kNowhere) {
    motions[before_in(piece, f.waist_dart_in)] = down;
    motions[f.waist_dart_in] = translation(mark_moves);
    motions[next_in(piece, f.waist_dart_in)] = out;
  }
  motions[f.bust_dart_in] =
      keep_short_of(piece, f.bust_dart_in, f.bust_point, f.bust_point + mark_moves, motions);
  move_corners(edit, f.at, motions);
  move_mark(piece, mark_moves);
  edit.note.text += ", bust dart " + std::string(w > 0 ? "opened" : "closed") + " by the swing";
  return Done{};
}

Result<Done> lengthen_over_bust(Edit& edit, DistanceMm amount) {
  const Result<BustFront> found = bust_front(edit);
  if (!found) return found.problems();
  const BustFront& f = *found;
  Piece& piece = edit.piece(f.at);
  const double d = amount.mm();
  const Affine down = translation({0.0, -d});
  edit.note.pieces.push_back("front");
  edit.note.text =
      piece.name + ": " + (d > 0 ? "lengthened " : "shortened ") + mm_text(d) + " over the bust, " +
      (f.bust_dart_in == kNowhere ? "eased in at the side" : "taken up by the bust dart");
  CornerMotions motions = still(piece);
  if (f.bust_dart_in == kNowhere) {
    const Result<Done> eased = ease_side(edit, f, d);
    if (!eased) return eased;
    motions[f.body.hem_corner] = down;
    motions[f.body.side_corner] = down;
    move_corners(edit, f.at, motions);
    return Done{};
  }
  set_from_to(piece, motions, f.body.hem_corner, before_in(piece, f.bust_dart_in), down);
  motions[f.bust_dart_in] =
      keep_short_of(piece, f.bust_dart_in, f.bust_point, f.bust_point, motions);
  if (f.waist_dart_in != kNowhere) motions[f.waist_dart_in] = std::nullopt;
  move_corners(edit, f.at, motions);
  return Done{};
}

}  // namespace pinwright
