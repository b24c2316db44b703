#include "engine/draft/waist.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/draft/lines.h"
#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {
namespace {

/// From a along ta to where the direction is tb, `mm` long, ending at the height y or as near to it
/// as a line that turns one way only can.
Cubic outward(Vec2 a, Vec2 ta, Vec2 tb, double mm, double y) {
  const double from = std::atan2(ta.y, ta.x);
  const double to = std::atan2(tb.y, tb.x);
  const double margin = 0.2 * std::abs(to - from);
  const double wanted = std::asin(std::clamp((y - a.y) / mm, -0.9, 0.9));
  const double rise = std::clamp(wanted, std::min(from, to) + margin, std::max(from, to) - margin);
  double reach = mm;
  for (int i = 0; i < 12; ++i) {
    reach *= mm / length(round_line(a, ta, a + reach * direction(rise), tb));
  }
  return round_line(a, ta, a + reach * direction(rise), tb);
}

}  // namespace

Waist waist_line(const WaistAsk& ask) {
  const double half_angle = std::asin(ask.intake_mm / 2.0 / ask.leg_mm);
  const Vec2 down = direction(-std::numbers::pi / 2.0);
  const Vec2 mouth_in = ask.dart_point + ask.leg_mm * turned(down, -half_angle);
  const Vec2 mouth_out = ask.dart_point + ask.leg_mm * turned(down, half_angle);
  // Directions square to the legs, walking outward.
  const Vec2 into_dart = direction(-half_angle);
  const Vec2 out_of_dart = direction(half_angle);
  const Vec2 at_side = direction(-ask.side_lean);

  const Vec2 fold{0.0, mouth_in.y + mouth_in.x * std::tan(half_angle / 2.0)};
  Waist waist;
  waist.inner = chain({round_line(fold, {1.0, 0.0}, mouth_in, into_dart)});
  const double rest = std::max(0.0, ask.sewn_mm - length(waist.inner));
  waist.outer = rest > 0.0 ? chain({outward(mouth_out, out_of_dart, at_side, rest, ask.corner_y)})
                           : straight_curve(mouth_out, mouth_out);
  return waist;
}

}  // namespace pinwright::drafting
