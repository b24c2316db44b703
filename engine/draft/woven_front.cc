#include <algorithm>
#include <cmath>

#include "engine/draft/armhole.h"
#include "engine/draft/lines.h"
#include "engine/draft/neckline.h"
#include "engine/draft/parts.h"
#include "engine/draft/waist.h"
#include "engine/draft/woven.h"

namespace pinwright::drafting {
namespace {

constexpr double kDartShortOfBustMm = 25.0;  // 1/2 to 2 in: common practice
constexpr double kSideLean = radians(1.5);   // first, of the side as sewn
constexpr double kDartBelowBustMm = 15.0;    // upper leg's mouth below the bust level
constexpr double kFirstDepthShare = 1.2;     // of the neckline, of its half width

Vec2 body_neck(const WovenPlan& plan) {
  return neck_point(plan.shoulder, {plan.shoulder.base_width, plan.neck_y},
                    plan.shoulder.front_slope);
}

}  // namespace

double longer(const WovenPlan& plan) { return plan.neck_y - plan.nape_y - plan.shoulder.base_rise; }

Result<WovenFrontLines> first_front(const WovenPlan& plan) {
  if (plan.bust_point.y < kDartShortOfBustMm + 40.0) {
    return impossible(
        "front-waist-length",
        "The waist lies only " + mm_text(plan.bust_point.y) + " below the bust point.",
        "Check front-waist-length against neck-shoulder-point-to-bust-point.");
  }
  if (plan.front_bust - plan.bust_point.x < kDartShortOfBustMm + 35.0) {
    return impossible("bust-point-width",
                      "The bust point lies only " + mm_text(plan.front_bust - plan.bust_point.x) +
                          " from the side seam.",
                      "Check bust-point-width against bust-girth.");
  }
  return front_with_dart(
      plan, std::clamp(plan.front_bust - plan.front_waist, kLeastWaistDartMm, kMostWaistDartMm),
      false);
}

WovenFrontLines front_with_dart(const WovenPlan& plan, double intake, bool side_gives) {
  const double below = bust_below_underarm(plan);
  const double side = plan.nape_y + plan.shoulder.base_rise - plan.underarm_below_neck;
  const double swing = std::max(0.05, longer(plan) / plan.front_bust);
  const double upper = std::clamp(below + kDartBelowBustMm, 40.0, std::max(40.0, side - 40.0));
  double lean = kSideLean;
  if (side_gives) {
    // The swing brings the waist in by about its angle times the height of the dart's point.
    const double waist_x = plan.front_waist + intake + swing * plan.bust_point.y;
    lean = std::atan((plan.front_bust - waist_x) / std::max(40.0, side - below));
  }
  const Vec2 up{std::sin(lean), std::cos(lean)};

  WovenFrontLines lines;
  lines.underarm = {plan.front_bust + below * std::tan(lean),
                    plan.neck_y - plan.underarm_below_neck};
  lines.mouth_upper = lines.underarm - upper * up;
  const Vec2 dart_point =
      plan.bust_point + kDartShortOfBustMm * unit(lines.mouth_upper - plan.bust_point);
  const auto swung = [&](Vec2 p) { return dart_point + turned(p - dart_point, -swing); };
  lines.mouth_lower = swung(lines.mouth_upper);
  const Vec2 corner = swung(lines.underarm - side * up);
  lines.waist = {{0.0, 0.0},
                 {plan.bust_point.x - intake / 2.0, 0.0},
                 {plan.bust_point.x + intake / 2.0, 0.0},
                 corner};
  lines.neck_depth = kFirstDepthShare * plan.shoulder.neck_width;
  return lines;
}

Piece sketch_front(const WovenPlan& plan, const WovenFrontLines& lines) {
  const double allowance = kWovenAllowanceMm;
  const Vec2 shoulder = toward_neck(plan.shoulder.front_slope);
  const Vec2 neck = body_neck(plan);
  const Vec2 tip = neck - plan.shoulder.length * shoulder;
  const Vec2 centre{0.0, neck.y - lines.neck_depth};
  const NecklineAsk round{
      neck, front_neckline_start(plan.shoulder.front_slope, plan.shoulder.neck_turn), 0.56, 2};
  // The darts' middle lines aim at the bust point from the point short of it.
  const Vec2 mouth = lerp(lines.mouth_lower, lines.mouth_upper, 0.5);
  const Vec2 dart_point = plan.bust_point + kDartShortOfBustMm * unit(mouth - plan.bust_point);
  const Vec2 waist_point = plan.bust_point - Vec2{0.0, kDartShortOfBustMm};
  const Vec2 up = unit(lines.underarm - lines.mouth_upper);
  const Vec2 side_up = unit(lines.mouth_lower - lines.waist.corner);
  const WaistCorners at = faired(lines.waist, waist_point, waist_point.y, side_up);
  const Waist waist = waist_line(at, waist_point, side_up);

  Piece piece;
  piece.id = "front";
  piece.name = "Front";
  piece.edges = {
      curved("waist-inner", EdgeRole::waist, waist.inner, allowance),
      ruled("waist-dart-in", EdgeRole::dart_leg, at.mouth_in, waist_point, allowance),
      ruled("waist-dart-out", EdgeRole::dart_leg, waist_point, at.mouth_out, allowance),
      curved("waist-outer", EdgeRole::waist, waist.outer, allowance),
      ruled("side-lower", EdgeRole::side, at.corner, lines.mouth_lower, allowance),
      ruled("bust-dart-in", EdgeRole::dart_leg, lines.mouth_lower, dart_point, allowance),
      ruled("bust-dart-out", EdgeRole::dart_leg, dart_point, lines.mouth_upper, allowance),
      ruled("side-upper", EdgeRole::side, lines.mouth_upper, lines.underarm, allowance),
      curved("armhole", EdgeRole::armhole,
             armhole({lines.underarm, up, tip, shoulder, plan.front_across, kFrontHollow}),
             allowance),
      ruled("shoulder", EdgeRole::shoulder, tip, neck, allowance),
      curved("neckline", EdgeRole::neckline, neckline(round, lines.neck_depth),
             kWovenNeckAllowanceMm),
      folded_at("centre-front", EdgeRole::centre_front, centre, at.fold)};
  piece.edges[10].curve.points.back() = centre;
  piece.darts = {{"bust-dart", "bust-dart-in", "bust-dart-out", "bust-point"},
                 {"waist-dart", "waist-dart-in", "waist-dart-out", "bust-point"}};
  piece.landmarks = {{"bust-point", plan.bust_point},
                     {"front-neck-point", centre},
                     {"neck-point", neck},
                     {"shoulder-point", tip},
                     {"underarm-point", lines.underarm},
                     {"waist-level", at.fold}};
  const double grain_x = 0.4 * plan.bust_point.x;
  piece.grainline = {"grainline", {grain_x, 0.2 * centre.y}, {grain_x, 0.8 * centre.y}};
  piece.fold = "centre-front";
  return piece;
}

}  // namespace pinwright::drafting
