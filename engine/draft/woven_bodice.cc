#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/draft/arm_room.h"
#include "engine/draft/draft.h"
#include "engine/draft/drawn.h"
#include "engine/draft/neckline.h"
#include "engine/draft/parts.h"
#include "engine/draft/sewing.h"
#include "engine/draft/sleeve.h"
#include "engine/draft/woven.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"
#include "engine/pattern/level.h"

namespace pinwright {
namespace drafting {
namespace {

// 3/4 to 1 1/4 in in all on a light blouse, the back a little more: common practice.
constexpr double kFrontCapEaseMm = 11.0;
constexpr double kBackCapEaseMm = 14.0;
constexpr double kSleeveHemMm = 25.0;
constexpr double kOverHandMm = 25.0;  // the hem passes the hand without an opening

WovenPlan make_plan(const Body& body, const EaseMap& ease, const ShoulderPlan& shoulder,
                    double lowered) {
  WovenPlan plan;
  plan.shoulder = shoulder;
  const double bust = (body["bust-girth"] + ease.at("bust-girth")) / 4.0;
  const double waist = (body["waist-girth"] + ease.at("waist-girth")) / 4.0;
  plan.front_bust = bust;
  plan.back_bust = bust;
  plan.front_waist = waist;
  plan.back_waist = waist;
  plan.front_across = (body["across-front-width"] + ease.at("across-front-width")) / 2.0;
  plan.back_across = (body["across-back-width"] + ease.at("across-back-width")) / 2.0;
  plan.nape_y = body["back-waist-length"];
  plan.underarm_below_neck =
      shoulder.base_rise + body["scye-depth"] + kWovenUnderarmBelowMm + lowered;
  const double to_bust = body["neck-shoulder-point-to-bust-point"];
  plan.bust_point = {body["bust-point-width"] / 2.0, body["front-waist-length"] - to_bust};
  plan.neck_y = plan.bust_point.y + plumb_part(to_bust, plan.bust_point.x - shoulder.base_width);
  return plan;
}

void add_lengthen_line(Piece& piece, const Edge& side, double y) {
  const auto crossing = at_height(side.curve, y);
  if (crossing.empty()) return;
  piece.lengthen_lines = {{"body", {0.0, y}, {point(side.curve, crossing.front()).x, y}}};
}

void add_seams(Block& block) {
  block.seams.push_back(plain_seam("shoulder", "Shoulder seam",
                                   {part("back", "shoulder-outer"), part("back", "shoulder-inner")},
                                   {part("front", "shoulder")}, kWovenShoulderEaseMm));
  block.seams.push_back(plain_seam("side", "Side seam",
                                   {part("front", "side-lower"), part("front", "side-upper")},
                                   {part("back", "side")}));
}

Result<Block> draw_woven_bodice(const DraftInput& input, const EaseMap& ease,
                                const ShoulderPlan& shoulder, double lowered) {
  const Body body(input.wearer.body);
  Result<WovenBody> drawn = draw_woven_body(make_plan(body, ease, shoulder, lowered));
  if (!drawn) return drawn.problems();
  Piece& front = drawn->front;
  Piece& back = drawn->back;
  const Edge& lower = *find_edge(front, "side-lower");
  const double line_y = (std::max(lower.curve.start().y, 0.0) + lower.curve.end().y) / 2.0;
  add_lengthen_line(front, lower, line_y);
  add_lengthen_line(back, *find_edge(back, "side"), line_y);

  SleeveAsk arm;
  arm.front_ease_mm = kFrontCapEaseMm;
  arm.back_ease_mm = kBackCapEaseMm;
  arm.girth_mm = body["upper-arm-girth"] + ease.at("upper-arm-girth");
  arm.hem_girth_mm = body["hand-girth"] + kOverHandMm;
  arm.length_mm = body["arm-length"];
  arm.least_below_mm = 200.0;
  arm.allowance_mm = kWovenAllowanceMm;
  arm.hem_allowance_mm = kSleeveHemMm;
  const Result<Piece> arm_piece = sleeve_for(arm, front, back);
  if (!arm_piece) return arm_piece.problems();

  Block block = begin_block(input, kWovenBodice, "Woven bodice", ease);
  block.pieces = {std::move(front), std::move(back), *arm_piece};
  add_seams(block);
  block.joins = woven_body_joins();
  add_sleeve_seams(block, kFrontCapEaseMm, kBackCapEaseMm);
  note_ease_as_drawn(block);
  return block;
}

}  // namespace
}  // namespace drafting

Result<Block> draft_woven_bodice(const DraftInput& input) {
  using namespace drafting;
  const Problems problems = check_input(kWovenBodice, input);
  if (!problems.empty()) return problems;
  const Body body(input.wearer.body);
  const EaseMap ease = woven_ease(input);
  const Result<ShoulderPlan> plan =
      plan_shoulder(body, body["neck-base-girth"] + ease.at("neck-base-girth"));
  if (!plan) return plan.problems();
  return looked_over(with_room_for_arm(
      [&](double lowered) { return draw_woven_bodice(input, ease, *plan, lowered); }));
}

}  // namespace pinwright
