#include <algorithm>
#include <array>
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

// A sleeve whose underarm seam is shorter is spread through its hem: tapering over so little would
// throw the hem out of level. Common practice for short sleeves.
constexpr double kShortSleeveMm = 250.0;

// The first part of a segment up to t, or, for t > 1, the segment run on as the polynomial it is
// (de Casteljau's construction holds there too).
Cubic up_to(const Cubic& segment, double t) {
  const std::array<Vec2, 4>& p = segment.p;
  const Vec2 a = lerp(p[0], p[1], t);
  const Vec2 b = lerp(p[1], p[2], t);
  const Vec2 c = lerp(p[2], p[3], t);
  const Vec2 d = lerp(a, b, t);
  return {{p[0], a, d, lerp(d, lerp(b, c, t), t)}};
}

// The curve cut off or run on along its own line to the length s; its last segment takes the
// change.
Curve ended(const Curve& curve, double s) {
  const std::size_t n = curve.segments();
  const Cubic last = curve.segment(n - 1);
  const double own = length(last);
  const double wanted = std::max(s - (length(curve) - own), 0.05 * own);
  double t = wanted / own;
  for (int i = 0; i < 50; ++i) {
    const double off = length(up_to(last, t)) - wanted;
    if (std::abs(off) < 1e-9) break;
    t -= off / std::max(norm(derivative(last, t)), 1e-6);
    t = std::clamp(t, 0.01, 2.0);
  }
  Curve result = curve;
  const Cubic cut = up_to(last, t);
  for (std::size_t i = 1; i < 4; ++i) result.points[3 * (n - 1) + i] = cut.p[i];
  return result;
}

}  // namespace

Result<Bodice> bodice(const Edit& edit) {
  Bodice b;
  b.front = piece_index(edit.block, "front");
  b.back = piece_index(edit.block, "back");
  if (b.front == kNowhere || b.back == kNowhere)
    return not_here("this block has no front and back", "choose a block with a front and a back");
  const auto front = bodice_anatomy(edit.block.pieces[b.front]);
  const auto back = bodice_anatomy(edit.block.pieces[b.back]);
  if (!front || !back) {
    return not_here(
        "the front or the back lacks a neckline, shoulder, armhole, side or centre edge",
        "check the roles of the edges");
  }
  b.front_at = *front;
  b.back_at = *back;
  return b;
}

Affine lower_along_side(Edit& edit, std::size_t piece, const BodiceAnatomy& at, double down) {
  const std::size_t side = at.side.back();
  Edge& edge = edit.block.pieces[piece].edges[side];
  const Vec2 corner = edge.curve.end();
  edit.wanted_length[{piece, side}] = length(edge.curve) - down;
  if (!edge.straight) {
    edge.curve = ended(edge.curve, length(edge.curve) - down);
    edit.drawn.insert({piece, side});
    return translation(edge.curve.end() - corner);
  }
  return translation(-down * end_tangent(edge.curve));
}

void lower_sleeve_underarm(Edit& edit, std::size_t sleeve, double down) {
  const Piece& piece = edit.block.pieces[sleeve];
  const SleeveAnatomy at = *sleeve_anatomy(piece);
  const Curve& front = piece.edges[at.underarm_front].curve;
  const Curve& back = piece.edges[at.underarm_back].curve;
  CornerMotions motions = still(piece);
  motions[at.underarm_front] = translation(-down * end_tangent(front));
  motions[at.cap_back] = translation(down * start_tangent(back));
  edit.wanted_length[{sleeve, at.underarm_front}] = length(front) - down;
  edit.wanted_length[{sleeve, at.underarm_back}] = length(back) - down;
  move_corners(edit, sleeve, motions);
}

void widen_sleeve_underarm(Edit& edit, std::size_t sleeve, double front_out, double back_out) {
  const Piece& piece = edit.block.pieces[sleeve];
  const SleeveAnatomy at = *sleeve_anatomy(piece);
  CornerMotions motions = still(piece);
  const Affine front = translation({front_out, 0.0});
  const Affine back = translation({-back_out, 0.0});
  motions[at.underarm_front] = front;
  motions[at.cap_back] = back;
  if (length(piece.edges[at.underarm_front].curve) < kShortSleeveMm) {
    motions[before_in(piece, at.underarm_front)] = front;
    motions[at.underarm_back] = back;
    move_corners(edit, sleeve, motions);
    return;
  }
  edit.any_length.insert({sleeve, next_in(piece, at.underarm_back)});  // the hem is squared again
  // The underarm edges keep their length, the corners' height gives.
  edit.wanted_length[{sleeve, at.underarm_front}] = length(piece.edges[at.underarm_front].curve);
  edit.wanted_length[{sleeve, at.underarm_back}] = length(piece.edges[at.underarm_back].curve);
  edit.free_corners.push_back({{sleeve, at.underarm_front}, {false, true}});
  edit.free_corners.push_back({{sleeve, at.cap_back}, {false, true}});
  move_corners(edit, sleeve, motions);
}

SeamSection* eased_section(Block& block, std::string_view seam_id) {
  Seam* seam = find_seam(block, seam_id);
  if (seam == nullptr) return nullptr;
  for (SeamSection& s : seam->sections)
    if (s.notch_a == "bust-notch-upper") return &s;
  return nullptr;
}

}  // namespace pinwright
