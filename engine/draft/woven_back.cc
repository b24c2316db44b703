#include <algorithm>
#include <cmath>

#include "engine/draft/armhole.h"
#include "engine/draft/lines.h"
#include "engine/draft/neckline.h"
#include "engine/draft/parts.h"
#include "engine/draft/solve.h"
#include "engine/draft/waist.h"
#include "engine/draft/woven.h"
#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {
namespace {

constexpr double kShoulderDartAngle = radians(9.0);  // our own: 12 mm at the shoulder
constexpr double kShoulderDartMm = 75.0;
constexpr double kDartShortOfBladeMm = 15.0;
constexpr double kDartShareOfTakeIn = 0.55;  // of bust less waist; the side takes the rest
constexpr double kLeastDartMm = 8.0;
constexpr double kMostDartMm = 40.0;

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

/// Leg length with which the waist starts at height 0 at the fold.
double leg_to_waist(Vec2 point, double intake) {
  double leg = point.y;
  for (int i = 0; i < 60; ++i) {
    const double half = std::asin(intake / 2.0 / leg);
    leg = (point.y + (point.x - intake / 2.0) * std::tan(half / 2.0)) / std::cos(half);
  }
  return leg;
}

}  // namespace

double bust_below_underarm(const WovenPlan& plan) {
  return std::max(0.0, plan.neck_y - plan.underarm_below_neck - plan.bust_point.y);
}

Result<Piece> woven_back(const WovenPlan& plan) {
  const double allowance = kWovenAllowanceMm;
  const Vec2 neck =
      neck_point(plan.shoulder, {plan.shoulder.base_width, plan.nape_y + plan.shoulder.base_rise},
                 plan.shoulder.back_slope);
  const double depth = neck.y - plan.nape_y;
  const double underarm_y = plan.nape_y + plan.shoulder.base_rise - plan.underarm_below_neck;
  const double below = bust_below_underarm(plan);
  const Vec2 blade{0.5 * plan.back_across, plan.nape_y - 0.55 * (plan.nape_y - underarm_y)};
  if (underarm_y < 80.0 || below > underarm_y - 30.0) {
    return impossible("scye-depth",
                      "The underarm point lies only " + mm_text(underarm_y) + " above the waist.",
                      "Check scye-depth and neck-shoulder-point-to-bust-point against "
                      "back-waist-length.");
  }

  WaistAsk ask;
  ask.dart_point = {blade.x, std::max(0.45 * underarm_y, underarm_y - below - 12.0)};
  const double take_in = plan.back_bust - plan.back_waist;
  ask.intake_mm = std::clamp(kDartShareOfTakeIn * take_in, kLeastDartMm, kMostDartMm);
  ask.leg_mm = leg_to_waist(ask.dart_point, ask.intake_mm);
  ask.sewn_mm = plan.back_waist;
  Waist waist;
  Vec2 underarm;
  for (int i = 0; i < 100; ++i) {  // the lean settles by itself: the waist's end hardly moves
    waist = waist_line(ask);
    underarm = {plan.back_bust + below * std::sin(ask.side_lean), underarm_y};
    const Vec2 side = underarm - waist.outer.end();
    ask.side_lean = std::atan2(side.x, side.y);
  }
  const Vec2 corner = waist.outer.end();
  if (std::abs(ask.side_lean) > radians(30.0) || waist.outer.end().x < blade.x + 30.0) {
    return impossible("waist-girth",
                      "The back's side would lean " +
                          std::to_string(std::lround(degrees(ask.side_lean))) + " degrees.",
                      "Check waist-girth against bust-girth.");
  }

  const double shoulder_mm = plan.shoulder.length + kWovenShoulderEaseMm;
  const double slope = sewn_slope(neck, plan.shoulder.back_slope, shoulder_mm, blade);
  const Shoulder shoulder = open_shoulder(neck, slope, shoulder_mm, blade);
  const Vec2 centre{0.0, plan.nape_y};
  const Vec2 fold = waist.inner.start();
  const Vec2 up = unit(underarm - corner);

  Piece piece;
  piece.id = "back";
  piece.name = "Back";
  piece.edges = {
      curved("waist-inner", EdgeRole::waist, waist.inner, allowance),
      ruled("waist-dart-in", EdgeRole::dart_leg, waist.inner.end(), ask.dart_point, allowance),
      ruled("waist-dart-out", EdgeRole::dart_leg, ask.dart_point, waist.outer.start(), allowance),
      curved("waist-outer", EdgeRole::waist, waist.outer, allowance),
      ruled("side", EdgeRole::side, corner, underarm, allowance),
      curved("armhole", EdgeRole::armhole,
             armhole({underarm, up, shoulder.tip, shoulder.outer, plan.back_across, kBackHollow}),
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
      folded_at("centre-back", EdgeRole::centre_back, centre, fold)};
  piece.edges[10].curve.points.back() = centre;
  piece.darts = {{"shoulder-dart", "shoulder-dart-in", "shoulder-dart-out", "shoulder-blade-point"},
                 {"waist-dart", "waist-dart-in", "waist-dart-out", "shoulder-blade-point"}};
  piece.landmarks = {{"shoulder-blade-point", blade},
                     {"back-neck-point", centre},
                     {"neck-point", neck},
                     {"shoulder-point", shoulder.tip},
                     {"underarm-point", underarm},
                     {"waist-level", fold},
                     {"bust-level", {0.0, underarm_y - below * up.y}}};
  piece.grainline = {
      "grainline", {0.3 * blade.x, 0.2 * plan.nape_y}, {0.3 * blade.x, 0.8 * plan.nape_y}};
  piece.fold = "centre-back";
  Problems wrong = check_armhole(piece);
  if (!wrong.empty()) return wrong;
  return piece;
}

}  // namespace pinwright::drafting
