#include "engine/draft/knit_side.h"

#include <algorithm>
#include <cmath>

#include "engine/draft/lines.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright::drafting {
namespace {

double chord_slope(Vec2 a, Vec2 b) { return (b.x - a.x) / (b.y - a.y); }

Cubic hermite(Vec2 a, double slope_a, Vec2 b, double slope_b) {
  const double third = (b.y - a.y) / 3.0;
  return {{a, a + third * Vec2{slope_a, 1.0}, b - third * Vec2{slope_b, 1.0}, b}};
}

}  // namespace

double hem_slope(Vec2 hem, Vec2 waist) {
  // Flatter than the chord: the hip is nearly reached at the hem.
  return 0.6 * chord_slope(hem, waist);
}

Curve knit_side(Vec2 hem, Vec2 waist, Vec2 underarm) {
  const double below = chord_slope(hem, waist);
  const double above = chord_slope(waist, underarm);
  const double at_waist = below * above > 0.0 ? 2.0 * below * above / (below + above) : 0.0;
  return chain({hermite(hem, hem_slope(hem, waist), waist, at_waist),
                hermite(waist, at_waist, underarm, 0.0)});
}

Curve hem_line(Vec2 corner, double slope) {
  return chain({round_line({0.0, 0.0}, {1.0, 0.0}, corner, right_normal(unit({slope, 1.0})))});
}

double side_x(const Curve& side, double y) {
  const auto crossings = at_height(side, y);
  return crossings.empty() ? side.end().x : point(side, crossings.front()).x;
}

double hem_rise(Vec2 hem, Vec2 waist) {
  double rise = 0.0;
  for (int i = 0; i < 60; ++i) {
    rise = hem.x * std::tan(std::atan(-hem_slope({hem.x, rise}, waist)) / 2.0);
  }
  return rise;
}

bool place_easing(const Curve& front, double bust_y, double extra, BustEasing& easing) {
  const double whole = length(front);
  const auto crossings = at_height(front, bust_y);
  easing.below = crossings.empty() ? 0.0 : whole - length_to(front, crossings.front());
  const double above_waist = whole - length(front.segment(0));
  easing.upper_notch = std::clamp(easing.below - 45.0, 20.0, std::max(20.0, above_waist - 110.0));
  easing.span = std::min(90.0, above_waist - 20.0 - easing.upper_notch);
  if (easing.span < 4.0 * extra) return false;
  // Within the eased stretch the back gives every part of it the same share.
  const double into = std::clamp(easing.below - easing.upper_notch, 0.0, easing.span);
  easing.below_back = easing.below - extra * into / easing.span;
  return true;
}

}  // namespace pinwright::drafting
