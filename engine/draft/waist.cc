#include "engine/draft/waist.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/draft/lines.h"

namespace pinwright::drafting {

Waist waist_line(const WaistCorners& at, Vec2 dart_point, Vec2 side_up) {
  const Vec2 into_dart = right_normal(unit(dart_point - at.mouth_in));
  const Vec2 out_of_dart = right_normal(unit(dart_point - at.mouth_out));
  return {chain({round_line(at.fold, {1.0, 0.0}, at.mouth_in, into_dart)}),
          chain({round_line(at.mouth_out, out_of_dart, at.corner, right_normal(side_up))})};
}

WaistCorners faired(WaistCorners at, Vec2 dart_point, double leg, Vec2 side_up) {
  const bool hangs_from_fold = leg == 0.0;
  const double intake = distance(at.mouth_in, at.mouth_out);
  const double inner_x = dart_point.x - intake / 2.0;
  double half = 0.0;
  if (hangs_from_fold) leg = dart_point.y - at.fold.y;
  for (int i = 0; i < 20; ++i) {
    half = std::asin(std::min(0.5, intake / 2.0 / leg));
    if (!hangs_from_fold) break;
    leg = (dart_point.y - at.fold.y + inner_x * std::tan(half / 2.0)) / std::cos(half);
  }
  const Vec2 down = direction(-std::numbers::pi / 2.0);
  at.mouth_in = dart_point + leg * turned(down, -half);
  at.mouth_out = dart_point + leg * turned(down, half);
  if (!hangs_from_fold) at.fold.y = at.mouth_in.y + at.mouth_in.x * std::tan(half / 2.0);

  const Vec2 arrives = right_normal(side_up);
  const double to = std::atan2(arrives.y, arrives.x);
  const double margin = 0.2 * std::abs(to - half);
  const double out = at.corner.x - at.mouth_out.x;
  const double rise = std::clamp(std::atan2(-at.mouth_out.y, out), std::min(half, to) + margin,
                                 std::max(half, to) - margin);
  at.corner.y = at.mouth_out.y + out * std::tan(rise);
  return at;
}

}  // namespace pinwright::drafting
