#include <algorithm>
#include <cmath>
#include <optional>

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

constexpr double kDartShortOfBustMm = 25.0;  // 1/2 to 2 in: common practice
constexpr double kSideLean = radians(1.5);   // wanted of the side as sewn
constexpr double kLeastWaistDartMm = 12.0;
constexpr double kMostWaistDartMm = 48.0;
constexpr double kDartBelowBustMm = 15.0;  // upper leg's mouth below the bust level
constexpr double kLeastBustDart = radians(1.0);
constexpr double kMostBustDart = radians(40.0);

/// The side and both darts for one choice of lean, swing and waist dart.
struct Layout {
  Vec2 underarm;
  Vec2 mouth_upper;
  Vec2 mouth_lower;
  Vec2 dart_point;
  Vec2 corner;  ///< of side and waist, by the swing
  Vec2 up;      ///< direction of the side's upper part
  Waist waist;
  WaistAsk ask;
};

class FrontSide {
 public:
  FrontSide(const WovenPlan& plan, double side_mm) : plan_(plan), side_mm_(side_mm) {
    underarm_y_ = plan.neck_y - plan.underarm_below_neck;
  }

  Layout at(double lean, double swing, double intake) const {
    const double below = bust_below_underarm(plan_);
    Layout made;
    made.up = {std::sin(lean), std::cos(lean)};
    made.underarm = {plan_.front_bust + below * std::tan(lean), underarm_y_};
    const double upper = std::clamp(below + kDartBelowBustMm, 40.0, side_mm_ - 40.0);
    made.mouth_upper = made.underarm - upper * made.up;
    // The dart's middle line aims at the bust point from the point short of it.
    double aim = 0.0;
    for (int i = 0; i < 40; ++i) {
      made.dart_point = plan_.bust_point + kDartShortOfBustMm * direction(aim);
      const Vec2 leg = made.mouth_upper - made.dart_point;
      aim = std::atan2(leg.y, leg.x) - swing / 2.0;
    }
    made.dart_point = plan_.bust_point + kDartShortOfBustMm * direction(aim);
    const auto swung = [&](Vec2 p) {
      return made.dart_point + turned(p - made.dart_point, -swing);
    };
    made.mouth_lower = swung(made.mouth_upper);
    made.corner = swung(made.underarm - side_mm_ * made.up);
    made.ask.dart_point = plan_.bust_point - Vec2{0.0, kDartShortOfBustMm};
    made.ask.leg_mm = made.ask.dart_point.y;
    made.ask.intake_mm = intake;
    made.ask.sewn_mm = plan_.front_waist;
    made.ask.side_lean = lean + swing;
    made.waist = waist_line(made.ask);
    return made;
  }

  /// The layout whose swung side ends where the waist does: first with the lean that is wanted, the
  /// waist dart taking the rest; where that dart would be too small or too deep, the lean gives.
  std::optional<Layout> solved() const {
    const double start =
        std::max(0.05, (plan_.neck_y - plan_.nape_y - plan_.shoulder.base_rise) / plan_.front_bust);
    Unknowns by_dart{start, 25.0};
    const bool found = solve(
        by_dart, [&](const Unknowns& u) { return gap(at(kSideLean, u[0], u[1])); }, 1e-9);
    double intake = found ? by_dart[1] : 25.0;
    if (found && intake >= kLeastWaistDartMm && intake <= kMostWaistDartMm) {
      return checked(kSideLean, by_dart[0], intake);
    }
    intake = std::clamp(intake, kLeastWaistDartMm, kMostWaistDartMm);
    Unknowns by_lean{found ? by_dart[0] : start, kSideLean};
    if (!solve(
            by_lean, [&](const Unknowns& u) { return gap(at(u[1], u[0], intake)); }, 1e-9)) {
      return std::nullopt;
    }
    return checked(by_lean[1], by_lean[0], intake);
  }

 private:
  static std::vector<double> gap(const Layout& layout) {
    const Vec2 d = layout.waist.outer.end() - layout.corner;
    return {d.x, d.y};
  }

  std::optional<Layout> checked(double lean, double swing, double intake) const {
    if (std::abs(lean) > radians(25.0) || swing < kLeastBustDart || swing > kMostBustDart) {
      return std::nullopt;
    }
    Layout made = at(lean, swing, intake);
    made.corner = made.waist.outer.end();
    return made;
  }

  const WovenPlan& plan_;
  double side_mm_;
  double underarm_y_ = 0.0;
};

}  // namespace

Result<Piece> woven_front(const WovenPlan& plan, double side_mm, double neckline_mm) {
  const double allowance = kWovenAllowanceMm;
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
  const std::optional<Layout> layout = FrontSide(plan, side_mm).solved();
  if (!layout) {
    return impossible(
        "front-waist-length",
        "The front is " + mm_text(plan.neck_y - plan.nape_y - plan.shoulder.base_rise) +
            " longer than the back from neck point to waist: no bust dart can take that up.",
        "Check front-waist-length against back-waist-length, and waist-girth against bust-girth.");
  }
  const Vec2 shoulder = toward_neck(plan.shoulder.front_slope);
  const Vec2 neck =
      neck_point(plan.shoulder, {plan.shoulder.base_width, plan.neck_y}, plan.shoulder.front_slope);
  const Vec2 tip = neck - plan.shoulder.length * shoulder;
  const NecklineAsk round{
      neck, front_neckline_start(plan.shoulder.front_slope, plan.shoulder.neck_turn), 0.56, 2};
  const auto depth = neckline_depth(round, neckline_mm);
  if (!depth || neck.y - *depth < plan.bust_point.y) {
    return impossible("neck-base-girth",
                      "No front neckline of " + mm_text(neckline_mm) + " can be drawn.",
                      "Check neck-base-girth.");
  }
  const Vec2 centre{0.0, neck.y - *depth};
  const Waist& waist = layout->waist;
  const Vec2 waist_point = layout->ask.dart_point;

  Piece piece;
  piece.id = "front";
  piece.name = "Front";
  piece.edges = {
      curved("waist-inner", EdgeRole::waist, waist.inner, allowance),
      ruled("waist-dart-in", EdgeRole::dart_leg, waist.inner.end(), waist_point, allowance),
      ruled("waist-dart-out", EdgeRole::dart_leg, waist_point, waist.outer.start(), allowance),
      curved("waist-outer", EdgeRole::waist, waist.outer, allowance),
      ruled("side-lower", EdgeRole::side, layout->corner, layout->mouth_lower, allowance),
      ruled("bust-dart-in", EdgeRole::dart_leg, layout->mouth_lower, layout->dart_point, allowance),
      ruled("bust-dart-out", EdgeRole::dart_leg, layout->dart_point, layout->mouth_upper,
            allowance),
      ruled("side-upper", EdgeRole::side, layout->mouth_upper, layout->underarm, allowance),
      curved(
          "armhole", EdgeRole::armhole,
          armhole({layout->underarm, layout->up, tip, shoulder, plan.front_across, kFrontHollow}),
          allowance),
      ruled("shoulder", EdgeRole::shoulder, tip, neck, allowance),
      curved("neckline", EdgeRole::neckline, neckline(round, *depth), kWovenNeckAllowanceMm),
      folded_at("centre-front", EdgeRole::centre_front, centre, waist.inner.start())};
  piece.darts = {{"bust-dart", "bust-dart-in", "bust-dart-out", "bust-point"},
                 {"waist-dart", "waist-dart-in", "waist-dart-out", "bust-point"}};
  piece.landmarks = {{"bust-point", plan.bust_point},
                     {"front-neck-point", centre},
                     {"neck-point", neck},
                     {"shoulder-point", tip},
                     {"underarm-point", layout->underarm},
                     {"waist-level", waist.inner.start()}};
  const double grain_x = 0.4 * plan.bust_point.x;
  piece.grainline = {"grainline", {grain_x, 0.2 * centre.y}, {grain_x, 0.8 * centre.y}};
  piece.fold = "centre-front";
  Problems wrong = check_armhole(piece);
  if (!wrong.empty()) return wrong;
  return piece;
}

}  // namespace pinwright::drafting
