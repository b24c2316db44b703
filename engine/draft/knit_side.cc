#include "engine/draft/knit_side.h"

#include <algorithm>
#include <cmath>

#include "engine/draft/lines.h"
#include "engine/draft/solve.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright::drafting {
namespace {

double chord_slope(Vec2 a, Vec2 b) { return (b.x - a.x) / (b.y - a.y); }

Cubic hermite(Vec2 a, double slope_a, Vec2 b, double slope_b) {
  const double third = (b.y - a.y) / 3.0;
  return {{a, a + third * Vec2{slope_a, 1.0}, b - third * Vec2{slope_b, 1.0}, b}};
}

/// Draws both sides for the hem and underarm widths given; false when they cannot be drawn.
bool lay_out(KnitSide& side, const KnitSideAsk& ask) {
  // The hem is an arc square to the side: its corner stands as high as an arc's end would.
  side.hem.y = 0.0;
  for (int i = 0; i < 60; ++i) {
    const double flare = std::atan(-hem_slope(side.hem, side.waist));
    side.hem.y = side.hem.x * std::tan(flare / 2.0);
  }
  side.back = knit_side(side.hem, side.waist, side.underarm);
  const double back_length = length(side.back);
  const auto front_for = [&](double raise) {
    return knit_side(side.hem, side.waist, side.underarm + Vec2{0.0, raise});
  };
  const auto excess = [&](double raise) {
    return length(front_for(raise)) - back_length - side.extra;
  };
  if (!bisect(0.0, 4.0 * side.extra, excess, side.raise)) return false;
  side.front = front_for(side.raise);

  const double front_length = length(side.front);
  side.bust_front = ask.neck_y + side.raise - ask.bust_below_neck;
  const auto crossings = at_height(side.front, side.bust_front);
  const double below =
      crossings.empty() ? 0.0 : front_length - length_to(side.front, crossings.front());
  const double above_waist = front_length - length(side.front.segment(0));
  side.upper_notch = std::clamp(below - 45.0, 20.0, std::max(20.0, above_waist - 110.0));
  side.span = std::min(90.0, above_waist - 20.0 - side.upper_notch);
  if (side.span < 4.0 * side.extra) return false;
  // Within the eased stretch the back gives every part of it the same share.
  const double into = std::clamp(below - side.upper_notch, 0.0, side.span);
  const double below_back = below - side.extra * into / side.span;
  side.bust_back = point_at(side.back, back_length - below_back).y;
  return true;
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

bool draw_knit_side(const KnitSideAsk& ask, KnitSide& side) {
  side.waist = {ask.waist_quarter, ask.waist_y};
  side.underarm.y = ask.back_underarm_y;
  side.extra = ask.extra_mm;
  Unknowns x{ask.bust_half / 2.0, ask.hem_half / 2.0};
  const auto error = [&](const Unknowns& u) -> std::vector<double> {
    side.underarm.x = u[0];
    side.hem.x = u[1];
    if (!lay_out(side, ask)) return {std::nan(""), std::nan("")};
    const double slope = hem_slope(side.hem, side.waist);
    const double bust = side_x(side.front, std::min(side.bust_front, side.front.end().y)) +
                        side_x(side.back, side.bust_back);
    const double hem = 2.0 * length(hem_line(side.hem, slope));
    return {bust - ask.bust_half, hem - ask.hem_half};
  };
  if (!solve(x, error, 1e-9)) return false;
  error(x);
  return true;
}

}  // namespace pinwright::drafting
