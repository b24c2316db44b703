#include "engine/draft/neckline.h"

#include "engine/draft/lines.h"
#include "engine/draft/solve.h"
#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {

Curve neckline(const NecklineAsk& ask, double depth) {
  const Vec2 centre{0.0, ask.neck_point.y - depth};
  const Cubic whole = turned_line(ask.neck_point, ask.start, centre, {-1.0, 0.0}, ask.fullness);
  if (ask.segments == 1) return chain({whole});
  const auto [upper, lower] = split(whole, 0.5);
  return chain({upper, lower});
}

std::optional<double> neckline_depth(const NecklineAsk& ask, double wanted_mm) {
  double depth = 0.0;
  const auto excess = [&](double d) { return length(neckline(ask, d)) - wanted_mm; };
  if (!bisect(ask.neck_point.x / 3.0, 5.0 * ask.neck_point.x, excess, depth)) return std::nullopt;
  return depth;
}

}  // namespace pinwright::drafting
