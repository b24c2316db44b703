// The knit top. Heights count from the hem at the centre; front and back share hem and waist.

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/draft/arm_room.h"
#include "engine/draft/armhole.h"
#include "engine/draft/binding.h"
#include "engine/draft/draft.h"
#include "engine/draft/drawn.h"
#include "engine/draft/ease.h"
#include "engine/draft/knit_half.h"
#include "engine/draft/knit_side.h"
#include "engine/draft/neckline.h"
#include "engine/draft/parts.h"
#include "engine/draft/sewing.h"
#include "engine/draft/sleeve.h"
#include "engine/draft/upper.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace drafting {
namespace {

constexpr double kUnderarmBelowArmpitMm = 10.0;  // 0 to 1/2 in on a knit: common practice
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

void add_notches(Piece& front, Piece& back, const KnitSide& side) {
  const double at_waist = length(side.front.segment(0));
  const double front_end = length(side.front);
  const double back_end = front_end - side.extra;
  const double lower = side.upper_notch + side.span;
  front.notches = {{"waist-notch", "side", at_waist},
                   {"bust-notch-lower", "side", front_end - lower},
                   {"bust-notch-upper", "side", front_end - side.upper_notch}};
  back.notches = {{"waist-notch", "side", at_waist},
                  {"bust-notch-lower", "side", back_end - lower + side.extra},
                  {"bust-notch-upper", "side", back_end - side.upper_notch}};
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
  block.joins = {running_on("neckline-over-shoulder", "Neckline over the shoulder seam",
                            {{"front", "shoulder", "neckline"}, {"back", "shoulder", "neckline"}}),
                 running_on("armhole-over-shoulder", "Armhole over the shoulder seam",
                            {{"front", "armhole", "shoulder"}, {"back", "armhole", "shoulder"}}),
                 running_on("armhole-over-side", "Armhole over the side seam",
                            {{"front", "side", "armhole"}, {"back", "side", "armhole"}}),
                 running_on("hem-over-side", "Hem over the side seam",
                            {{"front", "hem", "side"}, {"back", "hem", "side"}}),
                 square_at_fold("neckline-at-centre-front", "Neckline at the centre front",
                                {"front", "neckline", "centre-front"}),
                 square_at_fold("neckline-at-centre-back", "Neckline at the centre back",
                                {"back", "neckline", "centre-back"}),
                 square_at_fold("hem-at-centre-front", "Hem at the centre front",
                                {"front", "centre-front", "hem"}),
                 square_at_fold("hem-at-centre-back", "Hem at the centre back",
                                {"back", "centre-back", "hem"})};
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

Problem side_impossible() {
  return impossible("bust-girth",
                    "No side seam can be drawn between this hip, waist and bust with the front "
                    "eased over the bust.",
                    "Check bust-girth, waist-girth and hip-girth, and back-waist-length against "
                    "scye-depth.");
}

Result<Block> draw_knit_top(const DraftInput& input, const EaseMap& ease, const ShoulderPlan& plan,
                            double lowered) {
  const Body body(input.wearer.body);
  const double waist_y = body["waist-to-hip-height"];
  const double nape_y = waist_y + body["back-waist-length"];
  const Vec2 base{plan.base_width, nape_y + plan.base_rise};
  const double bust_x = body["bust-point-width"] / 2.0;

  KnitSideAsk ask;
  ask.bust_half = (body["bust-girth"] + ease.at("bust-girth")) / 2.0;
  ask.hem_half = (body["hip-girth"] + ease.at("hip-girth")) / 2.0;
  ask.waist_quarter = (body["waist-girth"] + ease.at("waist-girth")) / 4.0;
  ask.waist_y = waist_y;
  ask.back_underarm_y = nape_y - body["scye-depth"] - kUnderarmBelowArmpitMm - lowered;
  ask.extra_mm = extra_front_length(body, plan);
  ask.neck_y = base.y;
  ask.bust_below_neck =
      plumb_part(body["neck-shoulder-point-to-bust-point"], bust_x - plan.base_width);
  KnitSide side;
  if (ask.back_underarm_y - waist_y < 40.0 + 4.0 * ask.extra_mm) {
    return impossible("scye-depth",
                      "The underarm point lies only " + mm_text(ask.back_underarm_y - waist_y) +
                          " above the waist.",
                      "Check scye-depth against back-waist-length.");
  }
  if (!draw_knit_side(ask, side)) return side_impossible();

  KnitHalfAsk back_ask;
  back_ask.side = side.back;
  back_ask.hem_slope = hem_slope(side.hem, side.waist);
  back_ask.slope = plan.back_slope;
  back_ask.shoulder_mm = plan.length;
  back_ask.neckline = {neck_point(plan, base, plan.back_slope),
                       back_neckline_start(plan.back_slope, plan.neck_turn), 0.60, 1};
  // The back neckline is lowered by a third of what the neckline is widened.
  const double lowered_nape = nape_y - 0.35 * (plan.neck_width - plan.base_width);
  back_ask.neck_depth =
      std::max(back_ask.neckline.neck_point.y - lowered_nape, 0.18 * plan.neck_width);
  back_ask.across_x = (body["across-back-width"] + ease.at("across-back-width")) / 2.0;
  back_ask.waist_y = waist_y;

  KnitHalfAsk front_ask = back_ask;
  front_ask.front = true;
  front_ask.side = side.front;
  front_ask.slope = plan.front_slope;
  front_ask.neckline = {neck_point(plan, base + Vec2{0.0, side.raise}, plan.front_slope),
                        front_neckline_start(plan.front_slope, plan.neck_turn), 0.56, 2};
  front_ask.across_x = (body["across-front-width"] + ease.at("across-front-width")) / 2.0;
  const double front_neckline =
      plan.neckline_mm / 2.0 - length(neckline(back_ask.neckline, back_ask.neck_depth));
  const auto depth = neckline_depth(front_ask.neckline, front_neckline);
  if (!depth || front_ask.neckline.neck_point.y - *depth < side.bust_front) {
    return impossible("neck-base-girth",
                      "No front neckline of " + mm_text(front_neckline) + " can be drawn.",
                      "Check neck-base-girth and head-girth.");
  }
  front_ask.neck_depth = *depth;

  Piece front = knit_half(front_ask);
  Piece back = knit_half(back_ask);
  Problems problems = check_armhole(front);
  for (Problem& problem : check_armhole(back)) problems.push_back(std::move(problem));
  if (!problems.empty()) return problems;

  front.landmarks.insert(front.landmarks.begin(), {"bust-point", {bust_x, side.bust_front}});
  back.landmarks.push_back({"bust-level", {0.0, side.bust_back}});
  back.landmarks.push_back(
      {"shoulder-blade-point", {0.5 * back_ask.across_x, nape_y - 0.6 * body["scye-depth"]}});
  add_notches(front, back, side);
  const double line_y =
      (waist_y + side.back.end().y - side.upper_notch - side.span + side.extra) / 2.0;
  for (Piece* piece : {&front, &back}) {
    piece->lengthen_lines = {
        {"body", {0.0, line_y}, {side_x(find_edge(*piece, "side")->curve, line_y), line_y}}};
  }

  SleeveAsk arm;
  arm.girth_mm = body["upper-arm-girth"] + ease.at("upper-arm-girth");
  arm.hem_girth_mm = 0.95 * arm.girth_mm;
  arm.length_mm = 0.62 * body["upper-arm-length"];
  arm.least_below_mm = 60.0;
  arm.allowance_mm = kKnitAllowanceMm;
  arm.hem_allowance_mm = kKnitHemMm;
  Result<Piece> arm_piece = sleeve_for(arm, front, back);
  if (!arm_piece) return arm_piece.problems();
  const double back_neckline = length(find_edge(back, "neckline")->curve);

  Block block = begin_block(input, kKnitTop, "Knit top", ease);
  block.pieces = {
      std::move(front), std::move(back), *arm_piece,
      strip({front_neckline, back_neckline, kBindingRatio, kBindingWidthMm, kKnitAllowanceMm})};
  add_seams(block, side.extra);
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
  const Result<double> neckline_mm = wanted_neckline(body, ease, input.fabric);
  if (!neckline_mm) return neckline_mm.problems();
  const Result<ShoulderPlan> plan = plan_shoulder(body, *neckline_mm);
  if (!plan) return plan.problems();
  return looked_over(with_room_for_arm(
      [&](double lowered) { return draw_knit_top(input, ease, *plan, lowered); }));
}

}  // namespace pinwright
