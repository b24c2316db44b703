// The knit top. Heights count from the hem at the centre; front and back share hem and waist.

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/draft/arm_room.h"
#include "engine/draft/binding.h"
#include "engine/draft/draft.h"
#include "engine/draft/drawn.h"
#include "engine/draft/ease.h"
#include "engine/draft/knit_body.h"
#include "engine/draft/knit_half.h"
#include "engine/draft/parts.h"
#include "engine/draft/sewing.h"
#include "engine/draft/sleeve.h"
#include "engine/draft/upper.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace drafting {
namespace {

constexpr double kUnderarmBelowArmpitMm = 10.0;  // 0 to 1/2 in on a knit: common practice
constexpr double kLeastBelowWaistMm = 130.0;     // of the hem; a flare needs some height
constexpr double kLongestNecklineMm = 220.0;     // more than the neck base

/// Extra length of the front over the bust, eased in: more for a fuller bust, 6 to 12 mm.
double extra_front_length(const Body& body, const ShoulderPlan& plan) {
  double extra = 9.0;
  if (body.has("under-bust-girth")) {
    extra = 6.0 + 0.06 * (body["bust-girth"] - body["under-bust-girth"] - 100.0);
  } else if (body.has("front-waist-length")) {
    extra = 0.4 * (body["front-waist-length"] - body["back-waist-length"] - plan.base_rise);
  }
  return std::clamp(extra, 6.0, 12.0);
}

void add_seams(Block& block, double extra) {
  block.seams.push_back(plain_seam("shoulder", "Shoulder seam", {part("back", "shoulder")},
                                   {part("front", "shoulder")}));
  block.seams.push_back({"side",
                         "Side seam",
                         {part("front", "side")},
                         {part("back", "side")},
                         {{"waist-notch", "waist-notch", 0.0},
                          {"bust-notch-lower", "bust-notch-lower", 0.0},
                          {"bust-notch-upper", "bust-notch-upper", extra},
                          {"", "", 0.0}}});
}

Result<double> wanted_neckline(const Body& body, const EaseMap& ease, const Fabric& fabric) {
  const double base = body["neck-base-girth"];
  const double wanted = base + ease.at("neck-base-girth");
  const double least = neckline_for_head(body["head-girth"], fabric.stretch_across);
  if (fabric.kind != FabricKind::knit) {
    return Problem{"draft-impossible", "/fabric", "A knit top is drafted for a woven fabric.",
                   "Take a knitted fabric and give its stretch, or draft a woven bodice."};
  }
  if (wanted < least - 1e-9) {
    return impossible("head-girth",
                      "A neckline of " + mm_text(wanted) +
                          " with its binding does not pass the "
                          "head; it takes " +
                          mm_text(least) + ".",
                      "Give more ease at neck-base-girth or take a fabric that stretches more.");
  }
  if (wanted > base + kLongestNecklineMm) {
    return impossible("head-girth",
                      "To pass the head the neckline would be " + mm_text(wanted) +
                          ", too wide for a neck base of " + mm_text(base) + ".",
                      "Take a fabric that stretches more, or check head-girth against "
                      "neck-base-girth.");
  }
  return wanted;
}

KnitPlan knit_plan(const Body& body, const EaseMap& ease, const ShoulderPlan& shoulder,
                   double extra, double lowered) {
  KnitPlan plan;
  plan.shoulder = shoulder;
  plan.waist_y = std::max(kLeastBelowWaistMm, body["waist-to-hip-height"]);
  plan.nape_y = plan.waist_y + body["back-waist-length"];
  plan.base = {shoulder.base_width, plan.nape_y + shoulder.base_rise};
  plan.bust_half = (body["bust-girth"] + ease.at("bust-girth")) / 2.0;
  plan.hem_half = (body["hip-girth"] + ease.at("hip-girth")) / 2.0;
  plan.waist_half = (body["waist-girth"] + ease.at("waist-girth")) / 2.0;
  plan.scye_depth = body["scye-depth"];
  plan.underarm_y = plan.nape_y - plan.scye_depth - kUnderarmBelowArmpitMm - lowered;
  plan.extra_mm = extra;
  plan.bust_x = body["bust-point-width"] / 2.0;
  plan.bust_below_neck =
      plumb_part(body["neck-shoulder-point-to-bust-point"], plan.bust_x - shoulder.base_width);
  plan.across_front = (body["across-front-width"] + ease.at("across-front-width")) / 2.0;
  plan.across_back = (body["across-back-width"] + ease.at("across-back-width")) / 2.0;
  return plan;
}

Result<Block> draw_knit_top(const DraftInput& input, const EaseMap& ease, const ShoulderPlan& plan,
                            double lowered) {
  const Body body(input.wearer.body);
  const double extra = extra_front_length(body, plan);
  Result<KnitBody> drawn = draw_knit_body(knit_plan(body, ease, plan, extra, lowered));
  if (!drawn) return drawn.problems();
  Piece& front = drawn->front;
  Piece& back = drawn->back;

  SleeveAsk arm;
  arm.girth_mm = body["upper-arm-girth"] + ease.at("upper-arm-girth");
  arm.hem_girth_mm = 0.95 * arm.girth_mm;
  arm.length_mm = 0.62 * body["upper-arm-length"];
  arm.least_below_mm = 60.0;
  arm.allowance_mm = kKnitAllowanceMm;
  arm.hem_allowance_mm = kKnitHemMm;
  Result<Piece> arm_piece = sleeve_for(arm, front, back);
  if (!arm_piece) return arm_piece.problems();
  const double front_neckline = length(find_edge(front, "neckline")->curve);
  const double back_neckline = length(find_edge(back, "neckline")->curve);

  Block block = begin_block(input, kKnitTop, "Knit top", ease);
  block.pieces = {
      std::move(front), std::move(back), *arm_piece,
      strip({front_neckline, back_neckline, kBindingRatio, kBindingWidthMm, kKnitAllowanceMm})};
  add_seams(block, extra);
  block.joins = knit_body_joins();
  add_sleeve_seams(block, 0.0, 0.0);
  block.bindings = {{"neck-binding",
                     "neck-binding",
                     {part("front", "neckline"), part("back", "neckline")},
                     2,
                     kBindingRatio,
                     kBindingWidthMm}};
  note_ease_as_drawn(block);
  return block;
}

}  // namespace
}  // namespace drafting

Result<Block> draft_knit_top(const DraftInput& input) {
  using namespace drafting;
  const Problems problems = check_input(kKnitTop, input);
  if (!problems.empty()) return problems;
  const Body body(input.wearer.body);
  const EaseMap ease = knit_ease(body, input);
  if (ease.at("waist-girth") > kMostEaseMm) {
    return impossible("waist-girth",
                      "With a bust of " + mm_text(body["bust-girth"]) + " the waist would be " +
                          mm_text(ease.at("waist-girth")) + " wider than the body.",
                      "Check waist-girth against bust-girth, or give the ease at waist-girth.");
  }
  const Result<double> neckline_mm = wanted_neckline(body, ease, input.fabric);
  if (!neckline_mm) return neckline_mm.problems();
  const Result<ShoulderPlan> plan = plan_shoulder(body, *neckline_mm);
  if (!plan) return plan.problems();
  return looked_over(with_room_for_arm(
      [&](double lowered) { return draw_knit_top(input, ease, *plan, lowered); }));
}

}  // namespace pinwright
