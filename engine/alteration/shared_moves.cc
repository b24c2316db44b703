#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

// A sleeve whose underarm seam is shorter is spread through its hem: tapering over so little would
// throw the hem out of level. Common practice for short sleeves.
constexpr double kShortSleeveMm = 250.0;

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
  const Curve& curve = edit.block.pieces[piece].edges[side].curve;
  edit.wanted_length[{piece, side}] = length(curve) - down;
  return translation(-down * end_tangent(curve));
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
  // The two underarm edges are sewn together: where they slant unlike, the corners' height gives.
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
