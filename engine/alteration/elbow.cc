// Room at the elbow.
//
//      U-----------U       the back half is cut across at the elbow, hinged at the front seam, and
//       |   front |        spread at the back seam by e: what lies below goes down at the back. Two
//     e =\        |        notches go on both seams, 50 mm above and below the elbow, and the
//     longer
//       =|        |        back seam is eased in between them.
//        H'-..____H
//
// Steps: common practice; 12 to 25 mm (1/2 to 1 in) of ease. The elbow is taken to lie half way
// down the underarm seam. Inverse: the negative amount, which takes ease out again.
#include <algorithm>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kLeastSeamMm = 250.0;  // a sleeve that ends above the elbow needs no room there
constexpr double kNotchFromElbowMm = 50.0;
constexpr double kMostEaseMm = 38.1;  // 1 1/2 in; more makes a dart
const char* const kUpper = "elbow-notch-upper";
const char* const kLower = "elbow-notch-lower";

Seam* underarm_seam(Block& block, const Piece& sleeve, const SleeveAnatomy& at) {
  const std::string& front = sleeve.edges[at.underarm_front].id;
  for (Seam& seam : block.seams)
    for (const auto* run : {&seam.a, &seam.b})
      if (run->size() == 1 && run->front().piece == sleeve.id && run->front().edge == front)
        return &seam;
  return nullptr;
}

SeamSection* eased_at_elbow(Seam& seam) {
  for (SeamSection& s : seam.sections)
    if (s.notch_a == std::string(kUpper) + "-back") return &s;
  return nullptr;
}

}  // namespace

Result<Block> with_elbow_notches(const Block& before) {
  const std::size_t at = sleeve_index(before);
  if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
  Block block = before;
  Piece& piece = block.pieces[at];
  const SleeveAnatomy sleeve = *sleeve_anatomy(piece);
  const Edge& front = piece.edges[sleeve.underarm_front];
  const Edge& back = piece.edges[sleeve.underarm_back];
  const double seam_length = length(front.curve);
  if (seam_length < kLeastSeamMm)
    return not_here("the sleeve ends above the elbow", "leave the step out");
  Seam* seam = underarm_seam(block, piece, sleeve);
  if (seam == nullptr) return not_here("the sleeve has no underarm seam", "add the seam");
  if (eased_at_elbow(*seam) != nullptr) return block;
  if (seam->sections.size() != 1)
    return not_here("the underarm seam has notches of its own", "take them off the seam first");
  // The longer seam is run a: the back one, walked upward like the front.
  seam->a = {{piece.id, back.id, true}};
  seam->b = {{piece.id, front.id, false}};
  const double elbow = 0.5 * seam_length;
  const auto notches = [&](const char* id, double up) {
    piece.notches.push_back({std::string(id) + "-back", back.id, length(back.curve) - up});
    piece.notches.push_back({std::string(id) + "-front", front.id, up});
    return SeamSection{std::string(id) + "-back", std::string(id) + "-front", 0.0};
  };
  const SeamSection below = notches(kLower, elbow - kNotchFromElbowMm);
  const SeamSection eased = notches(kUpper, elbow + kNotchFromElbowMm);
  seam->sections = {below, eased, {"", "", seam->sections.front().ease_mm}};
  return block;
}

Result<Done> ease_elbow(Edit& edit, DistanceMm amount) {
  const std::size_t at = sleeve_index(edit.block);
  if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
  Piece& piece = edit.piece(at);
  const SleeveAnatomy sleeve = *sleeve_anatomy(piece);
  Seam* seam = underarm_seam(edit.block, piece, sleeve);
  SeamSection* eased = seam == nullptr ? nullptr : eased_at_elbow(*seam);
  if (eased == nullptr) return not_here("the sleeve has no elbow notches", "add them");
  const double e = amount.mm();
  eased->ease_mm += e;
  if (eased->ease_mm < -1e-9)
    return too_large("the back seam has only " + mm_text(eased->ease_mm - e) + " of ease to give",
                     "take a smaller amount");
  eased->ease_mm = std::max(eased->ease_mm, 0.0);
  if (eased->ease_mm > kMostEaseMm)
    return too_large("the back seam would have " + mm_text(eased->ease_mm) + " to ease in",
                     "take a smaller amount");
  const Curve& back = piece.edges[sleeve.underarm_back].curve;
  edit.wanted_length[{at, sleeve.underarm_back}] = length(back) + e;
  CornerMotions motions = still(piece);
  motions[sleeve.underarm_back] = translation(e * end_tangent(back));
  // The hem turns about its front end.
  const std::size_t hem = next_in(piece, sleeve.underarm_back);
  const Vec2 hinge = piece.edges[hem].curve.end();
  const Vec2 was = back.end() - hinge;
  const Vec2 is = was + e * end_tangent(back);
  const double longer = norm(is) / norm(was);
  const Affine turned = rotation_about(hinge, turn(was, is));
  for (Vec2& p : piece.edges[hem].curve.points)
    if (p != hinge) p = hinge + longer * (apply(turned, p) - hinge);
  edit.drawn.insert({at, hem});
  edit.note.pieces.push_back(piece.id);
  edit.note.text = piece.name + ": " + mm_text(e) + (e > 0 ? " more" : " less") +
                   " eased in at the elbow, back seam";
  move_corners(edit, at, motions);
  return Done{};
}

}  // namespace pinwright
