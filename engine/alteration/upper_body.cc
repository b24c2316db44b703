#include "engine/alteration/upper_body.h"

#include <algorithm>
#include <cmath>

#include "engine/alteration/hollow.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {

Result<BodiceHalf> bodice_half(const Edit& edit, const std::string& piece) {
  const std::size_t at = piece_index(edit.block, piece);
  const auto body = at == kNowhere ? std::nullopt : bodice_anatomy(edit.block.pieces[at]);
  if (!body) {
    return not_here("this block has no " + piece + " with neckline, shoulder and armhole",
                    "choose a block with a " + piece);
  }
  return BodiceHalf{at, *body};
}

Vec2 armhole_hinge(const Piece& piece, const BodiceAnatomy& body) {
  const Edge& armhole = piece.edges[body.armhole];
  const double whole = length(armhole.curve);
  double share = 0.5;
  for (const Notch& n : piece.notches) {
    if (n.edge != armhole.id) continue;
    share = std::clamp(n.at_mm / whole, 0.25, 0.75);
    break;
  }
  return point_at(armhole.curve, share * whole);
}

const Dart* shoulder_dart(const Piece& piece, const BodiceAnatomy& body) {
  for (const Dart& dart : piece.darts) {
    const std::size_t mouth = before_in(piece, edge_index(piece, dart.leg_in));
    if (std::find(body.shoulder.begin(), body.shoulder.end(), mouth) != body.shoulder.end())
      return &dart;
  }
  return nullptr;
}

double shoulder_length(const Piece& piece, const BodiceAnatomy& body) {
  double sum = 0.0;
  for (const std::size_t i : body.shoulder) sum += length(piece.edges[i].curve);
  return sum;
}

std::optional<double> shoulder_ease(const Block& block) {
  const Seam* seam = find_seam(block, "shoulder");
  if (seam == nullptr || seam->a.empty() || seam->a.front().piece != "back") return {};
  return stated_ease(*seam);
}

Result<Done> set_shoulder_ease(Edit& edit, double ease_mm) {
  const std::optional<double> now = shoulder_ease(edit.block);
  if (!now)
    return not_here("this block has no shoulder seam", "choose a block with a shoulder seam");
  if (ease_mm > kMostShoulderEaseMm + 1e-6) {
    return too_large("the back shoulder would have " + mm_text(ease_mm) +
                         " to ease in, more than " + mm_text(kMostShoulderEaseMm),
                     "take a smaller amount, or use a back with a shoulder dart");
  }
  if (ease_mm < -1e-6) {
    return too_large("the back shoulder would become shorter than the front's",
                     "take at most what the shoulder has eased in");
  }
  find_seam(edit.block, "shoulder")->sections.back().ease_mm += ease_mm - *now;
  return Done{};
}

std::optional<Affine> turn_shoulder_tip(const Piece& piece, const BodiceAnatomy& body, double up) {
  const Vec2 neck = piece.edges[body.neck_corner].curve.end();
  const Vec2 tip = piece.edges[body.shoulder_corner].curve.end();
  const double r = distance(neck, tip);
  if (r < 2.0 * std::abs(up)) return {};
  return rotation_about(neck, 2.0 * std::asin(up / (2.0 * r)));  // the tip lies to the right
}

void move_shoulder(const Piece& piece, const BodiceAnatomy& body, CornerMotions& motions,
                   const Affine& motion) {
  set_from_to(piece, motions, body.shoulder_corner, body.neck_corner, motion);
  if (const Dart* dart = shoulder_dart(piece, body))
    motions[edge_index(piece, dart->leg_in)] = std::nullopt;
}

void keep_neckline(Edit& edit, const Bodice& bodice) {
  const EdgeAt front{bodice.front, bodice.front_at.neckline};
  const EdgeAt back{bodice.back, bodice.back_at.neckline};
  const auto length_in = [](const Block& block, EdgeAt at) {
    return length(block.pieces[at.piece].edges[at.edge].curve);
  };
  const double is = length_in(edit.block, back);
  edit.wanted_length[back] = is;
  edit.wanted_length[front] = length_in(edit.before, front) + length_in(edit.before, back) - is;
  edit.length_if_possible.insert({front, back});
}

std::optional<Vec2> armhole_middle(const Piece& piece, const BodiceAnatomy& body) {
  const Curve& armhole = piece.edges[body.armhole].curve;
  const double level = 0.5 * (armhole.start().y + armhole.end().y);
  const std::vector<CurvePlace> places = at_height(armhole, level);
  if (places.size() != 1) return {};
  return Vec2{point(armhole, places.front()).x, level};
}

std::optional<Curve> armhole_with_middle(const Edit& edit, const BodiceHalf& half, double out,
                                         std::optional<double> length_mm) {
  const std::optional<Vec2> was = armhole_middle(edit.before.pieces[half.at], half.body);
  if (!was) return {};
  const Curve& now = edit.block.pieces[half.at].edges[half.body.armhole].curve;
  return redraw_hollow(edit.before.pieces[half.at].edges[half.body.armhole].curve,
                       {now.start(), now.end(), start_tangent(now), end_tangent(now), length_mm,
                        0.5 * (now.start().y + now.end().y), was->x + out});
}

namespace {

void put_middle(Edit& edit, const BodiceHalf& half, Vec2 was, double out) {
  Curve& armhole = edit.block.pieces[half.at].edges[half.body.armhole].curve;
  if (const auto hollow = armhole_with_middle(edit, half, out, {})) armhole = *hollow;
  edit.widths.push_back(
      {out == 0.0 ? "the " + edit.block.pieces[half.at].id + " keeps its width across"
                  : "the " + edit.block.pieces[half.at].id + " changes across by the amount",
       {half.at, half.body.armhole},
       0.5 * (armhole.start().y + armhole.end().y),
       was.x + out});
}

}  // namespace

Result<Done> move_armhole_middle(Edit& edit, const BodiceHalf& half, double out) {
  const Piece& old = edit.before.pieces[half.at];
  const std::optional<Vec2> was = armhole_middle(old, half.body);
  if (!was) {
    return not_here("the armhole of the " + old.id + " is no single hollow",
                    "redraw the armhole first");
  }
  put_middle(edit, half, *was, out);
  return Done{};
}

void hold_across(Edit& edit, const BodiceHalf& half) {
  if (const auto was = armhole_middle(edit.before.pieces[half.at], half.body))
    put_middle(edit, half, *was, 0.0);
}

}  // namespace pinwright
