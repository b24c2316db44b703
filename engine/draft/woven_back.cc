#include <algorithm>
#include <cmath>

#include "engine/draft/armhole.h"
#include "engine/draft/bisect.h"
#include "engine/draft/lines.h"
#include "engine/draft/neckline.h"
#include "engine/draft/parts.h"
#include "engine/draft/waist.h"
#include "engine/draft/woven.h"

namespace pinwright::drafting {
namespace {

constexpr double kShoulderDartAngle = radians(9.0);  // our own: 12 mm at the shoulder
constexpr double kShoulderDartMm = 75.0;
constexpr double kDartShortOfBladeMm = 15.0;
constexpr double kDartShareOfTakeIn = 0.55;  // of bust less waist; the side takes the rest
constexpr double kLeastDartMm = 8.0;
constexpr double kMostDartMm = 48.0;

/// The shoulder with its dart open. As sewn it is one straight line from the neck point.
struct Shoulder {
  Vec2 dart_point;
  Vec2 mouth_in;  ///< nearer to the neck
  Vec2 mouth_out;
  Vec2 tip;
  Vec2 outer;  ///< unit direction in which the outer part leaves the tip
};

Shoulder open_shoulder(Vec2 neck, double slope, double sewn_mm, Vec2 blade) {
  const Vec2 out = -toward_neck(slope);
  const Vec2 axis = unit(neck + 0.45 * sewn_mm * out - blade);
  const double reach = distance(neck + 0.45 * sewn_mm * out, blade);
  Shoulder made;
  made.dart_point = blade + std::max(kDartShortOfBladeMm, reach - kShoulderDartMm) * axis;
  const Vec2 inner_leg = turned(axis, kShoulderDartAngle / 2.0);
  const Vec2 outer_leg = turned(axis, -kShoulderDartAngle / 2.0);
  // Where the inner leg meets the shoulder line.
  const Vec2 from_neck = made.dart_point - neck;
  const double leg = cross(out, from_neck) / cross(inner_leg, out);
  made.mouth_in = made.dart_point + leg * inner_leg;
  made.mouth_out = made.dart_point + leg * outer_leg;
  const Vec2 outward = turned(out, -kShoulderDartAngle);
  made.tip = made.mouth_out + (sewn_mm - distance(neck, made.mouth_in)) * outward;
  made.outer = -outward;
  return made;
}

/// The slope of the sewn shoulder with which the open one falls by `drawn_slope` from neck to tip:
/// less, since the blade needs the length that the dart gives.
double sewn_slope(Vec2 neck, double drawn_slope, double sewn_mm, Vec2 blade) {
  double slope = drawn_slope;
  const auto excess = [&](double trial) {
    const Vec2 fall = neck - open_shoulder(neck, trial, sewn_mm, blade).tip;
    return std::atan2(fall.y, -fall.x) - drawn_slope;
  };
  bisect(drawn_slope - 2.0 * kShoulderDartAngle, drawn_slope, excess, slope);
  return slope;
}

Vec2 body_neck(const WovenPlan& plan) {
  return neck_point(plan.shoulder,
                    {plan.shoulder.base_width, plan.nape_y + plan.shoulder.base_rise},
                    plan.shoulder.back_slope);
}

double underarm_height(const WovenPlan& plan) {
  return plan.nape_y + plan.shoulder.base_rise - plan.underarm_below_neck;
}

Vec2 blade_point(const WovenPlan& plan) {
  return {0.5 * plan.back_across, plan.nape_y - 0.55 * (plan.nape_y - underarm_height(plan))};
}

Vec2 waist_dart_point(const WovenPlan& plan) {
  const double underarm_y = underarm_height(plan);
  return {blade_point(plan).x,
          std::max(0.45 * underarm_y, underarm_y - bust_below_underarm(plan) - 12.0)};
}

}  // namespace

double bust_below_underarm(const WovenPlan& plan) {
  return std::max(0.0, plan.neck_y - plan.underarm_below_neck - plan.bust_point.y);
}

double back_waist_intake(const WovenPlan& plan) {
  return std::clamp(kDartShareOfTakeIn * (plan.back_bust - plan.back_waist), kLeastDartMm,
                    kMostDartMm);
}

Result<WovenBackLines> first_back(const WovenPlan& plan) {
  const double underarm_y = underarm_height(plan);
  const double below = bust_below_underarm(plan);
  if (underarm_y < 80.0 || below > underarm_y - 30.0) {
    return impossible("scye-depth",
                      "The underarm point lies only " + mm_text(underarm_y) + " above the waist.",
                      "Check scye-depth and neck-shoulder-point-to-bust-point against "
                      "back-waist-length.");
  }
  const Vec2 point = waist_dart_point(plan);
  const double intake = back_waist_intake(plan);
  WovenBackLines lines;
  lines.waist = {{0.0, 0.0},
                 {point.x - intake / 2.0, 0.0},
                 {point.x + intake / 2.0, 0.0},
                 {plan.back_waist + intake, 0.0}};
  const double slant = (plan.back_bust - lines.waist.corner.x) / (underarm_y - below);
  lines.underarm = {plan.back_bust + below * slant, underarm_y};
  return lines;
}

Piece sketch_back(const WovenPlan& plan, const WovenBackLines& lines) {
  const double allowance = kWovenAllowanceMm;
  const Vec2 neck = body_neck(plan);
  const double depth = neck.y - plan.nape_y;
  const Vec2 blade = blade_point(plan);
  const Vec2 dart_point = waist_dart_point(plan);
  const Vec2 centre{0.0, plan.nape_y};
  const Vec2 up = unit(lines.underarm - lines.waist.corner);
  const WaistCorners at = faired(lines.waist, dart_point, 0.0, up);
  const Waist waist = waist_line(at, dart_point, up);

  const double shoulder_mm = plan.shoulder.length + kWovenShoulderEaseMm;
  const double slope = sewn_slope(neck, plan.shoulder.back_slope, shoulder_mm, blade);
  const Shoulder shoulder = open_shoulder(neck, slope, shoulder_mm, blade);

  Piece piece;
  piece.id = "back";
  piece.name = "Back";
  piece.edges = {
      curved("waist-inner", EdgeRole::waist, waist.inner, allowance),
      ruled("waist-dart-in", EdgeRole::dart_leg, at.mouth_in, dart_point, allowance),
      ruled("waist-dart-out", EdgeRole::dart_leg, dart_point, at.mouth_out, allowance),
      curved("waist-outer", EdgeRole::waist, waist.outer, allowance),
      ruled("side", EdgeRole::side, at.corner, lines.underarm, allowance),
      curved("armhole", EdgeRole::armhole,
             armhole(
                 {lines.underarm, up, shoulder.tip, shoulder.outer, plan.back_across, kBackHollow}),
             allowance),
      ruled("shoulder-outer", EdgeRole::shoulder, shoulder.tip, shoulder.mouth_out, allowance),
      ruled("shoulder-dart-in", EdgeRole::dart_leg, shoulder.mouth_out, shoulder.dart_point,
            allowance),
      ruled("shoulder-dart-out", EdgeRole::dart_leg, shoulder.dart_point, shoulder.mouth_in,
            allowance),
      ruled("shoulder-inner", EdgeRole::shoulder, shoulder.mouth_in, neck, allowance),
      curved("neckline", EdgeRole::neckline,
             neckline({neck, back_neckline_start(slope, plan.shoulder.neck_turn), 0.60, 1}, depth),
             kWovenNeckAllowanceMm),
      folded_at("centre-back", EdgeRole::centre_back, centre, at.fold)};
  piece.edges[10].curve.points.back() = centre;
  piece.darts = {{"shoulder-dart", "shoulder-dart-in", "shoulder-dart-out", "shoulder-blade-point"},
                 {"waist-dart", "waist-dart-in", "waist-dart-out", "shoulder-blade-point"}};
  piece.landmarks = {{"shoulder-blade-point", blade},
                     {"back-neck-point", centre},
                     {"neck-point", neck},
                     {"shoulder-point", shoulder.tip},
                     {"underarm-point", lines.underarm},
                     {"waist-level", at.fold},
                     {"bust-level", {0.0, lines.underarm.y - bust_below_underarm(plan) * up.y}}};
  piece.grainline = {
      "grainline", {0.3 * blade.x, 0.2 * plan.nape_y}, {0.3 * blade.x, 0.8 * plan.nape_y}};
  piece.fold = "centre-back";
  return piece;
}

}  // namespace pinwright::drafting
