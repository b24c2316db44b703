#include "engine/draft/upper.h"

#include <algorithm>
#include <cmath>

#include "engine/draft/lines.h"
#include "engine/draft/neckline.h"
#include "engine/draft/parts.h"

namespace pinwright::drafting {

Result<ShoulderPlan> plan_shoulder(const Body& body, double neckline_mm) {
  const double drop = body["shoulder-drop"];
  const double along = body["shoulder-length"];
  if (drop > along * std::sin(radians(40.0))) {
    return impossible("shoulder-drop",
                      "The shoulder falls " + mm_text(drop) + " over a length of " +
                          mm_text(along) + ", steeper than 40 degrees.",
                      "Check shoulder-drop against shoulder-length.");
  }
  const double slope = std::asin(drop / along);
  ShoulderPlan plan;
  plan.base_width = kNeckWidthShare * body["neck-base-girth"];
  plan.base_rise = kNeckRiseShare * plan.base_width;
  plan.neck_width = kNeckWidthShare * neckline_mm;
  plan.neckline_mm = neckline_mm;
  plan.front_slope = slope + kSlopeShift;
  plan.back_slope = std::max(0.0, slope - kSlopeShift);
  plan.neck_turn = std::min(kNeckTurn, 0.6 * plan.front_slope);
  plan.length = along - (plan.neck_width - plan.base_width) / std::cos(slope);
  if (plan.length < 35.0) {
    return impossible("shoulder-length",
                      "A neckline of " + mm_text(neckline_mm) + " leaves " +
                          mm_text(std::max(0.0, plan.length)) + " of the shoulder.",
                      "Check shoulder-length against neck-base-girth and head-girth, or take a "
                      "fabric that stretches more.");
  }
  return plan;
}

Vec2 neck_point(const ShoulderPlan& plan, Vec2 body_neck_point, double slope) {
  const double out = plan.neck_width - plan.base_width;
  return body_neck_point + Vec2{out, -out * std::tan(slope)};
}

double plumb_part(double along, double aside) {
  const double level = std::min(std::abs(aside), 0.9 * along);
  return std::sqrt(along * along - level * level);
}

Vec2 toward_neck(double slope) { return {-std::cos(slope), std::sin(slope)}; }

Vec2 front_neckline_start(double slope, double neck_turn) {
  return turned(left_normal(toward_neck(slope)), neck_turn);
}

Vec2 back_neckline_start(double slope, double neck_turn) {
  return turned(left_normal(toward_neck(slope)), -neck_turn);
}

}  // namespace pinwright::drafting
