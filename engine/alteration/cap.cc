// Raise or lower the sleeve cap; more or less ease in it.
//
//            C'                 raise: the crown goes up by d above the underarm. The cap keeps its
//          .-|-.                length and the sleeve gets narrower at the upper arm (a high cap
//        /   C   \              goes with a narrow sleeve), or the upper arm keeps its width and
//      U-'       '-U            the cap's ease grows by what the cap gets longer.
//      ->         <-
//                               ease: the cap gets longer by e, 45 % of it in the front half and 55
//                               % in the back half, all above the notches; the crown rises with it.
//
// Steps and share: common practice. Inverse: the negative amount.
#include <algorithm>
#include <cmath>

#include "engine/alteration/follow.h"
#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

// Most ease that a cap takes: 1 1/2 in on a woven sleeve, 1/2 in on a knit one. Common practice.
constexpr double kMostWovenEaseMm = 38.1;
constexpr double kMostKnitEaseMm = 12.7;
constexpr double kNothingMm = 1.5;  // so much too little in a half cap is taken for none
constexpr double kFrontShare = 0.45;
constexpr double kLeastHeightShare = 0.15;  // of the upper arm's width: a drop sleeve's cap
constexpr double kMostHeightShare = 0.95;

// Both halves of the cap: its seam, and how much the half has to give.
struct Half {
  Seam* seam = nullptr;
  double ease = 0.0;
};

struct Halves {
  Half front;
  Half back;
  double sum() const { return front.ease + back.ease; }
};

std::optional<Halves> halves_of(Edit& edit, std::size_t sleeve, const SleeveAnatomy& at) {
  Halves halves;
  for (const SeamAt& found : edit.standing.seams()) {
    if (!found.cap) continue;
    Seam& seam = edit.block.seams[found.seam];
    (found.a.front() == EdgeAt{sleeve, at.cap_front} ? halves.front : halves.back) = {
        &seam, stated_ease(seam)};
  }
  if (halves.front.seam == nullptr || halves.back.seam == nullptr) return {};
  return halves;
}

// Adds to the last section, which runs from the last notch to the crown; a half that would lack up
// to `lacking` has none.
Result<Done> add_ease(Edit& edit, const SleeveAnatomy& at, std::size_t sleeve, double front,
                      double back, double lacking = 1e-9) {
  const auto halves = halves_of(edit, sleeve, at);
  if (!halves) return not_here("the cap is sewn to no armhole", "add the seams of the sleeve");
  const double most =
      edit.block.fabric.kind == FabricKind::knit ? kMostKnitEaseMm : kMostWovenEaseMm;
  const double sum = halves->sum() + front + back;
  if (sum > most + 1e-9 && sum > halves->sum()) {
    return too_large("the cap would have " + mm_text(sum) + " of ease, more than the " +
                         mm_text(most) + " that this cloth eases in",
                     "take a smaller amount, or lower the cap");
  }
  if (halves->front.ease + front < -lacking || halves->back.ease + back < -lacking) {
    return too_large("the cap has only " + mm_text(halves->sum()) + " of ease to give",
                     "take a smaller amount, or lower the cap with the upper arm widened");
  }
  halves->front.seam->sections.back().ease_mm += std::max(front, -halves->front.ease);
  halves->back.seam->sections.back().ease_mm += std::max(back, -halves->back.ease);
  return Done{};
}

// A half cap with its height times `up` and its width times `across`, from its underarm corner.
Curve drawn(const Curve& cap, Vec2 foot, double across, double up) {
  Curve curve = cap;
  for (Vec2& p : curve.points) p = {foot.x + across * (p.x - foot.x), foot.y + up * (p.y - foot.y)};
  return curve;
}

// The width, as a factor, at which the heightened half is as long as before; nothing when none is.
std::optional<double> width_for(const Curve& cap, Vec2 foot, double up) {
  const double wanted = length(cap);
  double low = 0.3;
  double high = 2.0;
  if (length(drawn(cap, foot, low, up)) > wanted || length(drawn(cap, foot, high, up)) < wanted)
    return {};
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (length(drawn(cap, foot, middle, up)) < wanted ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

Result<Done> raise_cap(Edit& edit, DistanceMm amount, bool width_gives) {
  const std::size_t at = sleeve_index(edit.block);
  if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
  Piece& piece = edit.piece(at);
  const SleeveAnatomy sleeve = *sleeve_anatomy(piece);
  const Curve front = piece.edges[sleeve.cap_front].curve;
  const Curve back = piece.edges[sleeve.cap_back].curve;
  const double base = 0.5 * (front.start().y + back.end().y);
  const double height = front.end().y - base;
  const double width = front.start().x - back.end().x;
  const double wanted = height + amount.mm();
  if (wanted < kLeastHeightShare * width || wanted > kMostHeightShare * width) {
    return too_large("a cap " + mm_text(std::max(wanted, 0.0)) + " high does not go with " +
                         mm_text(width) + " at the upper arm",
                     "take a smaller amount");
  }
  const double up = wanted / height;
  edit.crown.height = wanted;
  edit.crown.x = front.end().x;
  edit.note.pieces.push_back(piece.id);
  edit.note.text =
      piece.name + ": cap " + (amount.mm() > 0 ? "raised " : "lowered ") + mm_text(amount.mm());
  if (!width_gives) {
    const double front_more = length(drawn(front, front.start(), 1.0, up)) - length(front);
    const double back_more = length(drawn(back, back.end(), 1.0, up)) - length(back);
    edit.note.text += ", " + mm_text(front_more + back_more) +
                      (amount.mm() > 0 ? " more" : " less") + " ease in it";
    return add_ease(edit, sleeve, at, front_more, back_more, kNothingMm);
  }
  const auto front_width = width_for(front, front.start(), up);
  const auto back_width = width_for(back, back.end(), up);
  if (!front_width || !back_width)
    return too_large("no cap of this height is as long as its armhole", "take a smaller amount");
  const double front_out = (*front_width - 1.0) * (front.start().x - front.end().x);
  const double back_out = (*back_width - 1.0) * (front.end().x - back.end().x);
  for (const std::size_t cap : {sleeve.cap_front, sleeve.cap_back}) {
    const double across = cap == sleeve.cap_front ? *front_width : *back_width;
    for (Vec2& p : piece.edges[cap].curve.points)
      p.x = front.end().x + across * (p.x - front.end().x);
    edit.drawn.insert({at, cap});
  }
  edit.note.text += ", upper arm " + mm_text(front_out + back_out) +
                    (front_out + back_out > 0 ? " wider" : " narrower");
  widen_sleeve_underarm(edit, at, front_out, back_out);
  return Done{};
}

Result<Done> ease_cap(Edit& edit, WholeMm amount) {
  const std::size_t at = sleeve_index(edit.block);
  if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
  const Piece& piece = edit.block.pieces[at];
  edit.note.pieces.push_back(piece.id);
  edit.note.text = piece.name + ": " + mm_text(amount.mm()) +
                   (amount.mm() > 0 ? " more" : " less") + " ease in the cap, above the notches";
  return add_ease(edit, *sleeve_anatomy(piece), at, kFrontShare * amount.mm(),
                  (1.0 - kFrontShare) * amount.mm());
}

}  // namespace pinwright
