#include "engine/draft/neckline.h"

#include "engine/draft/lines.h"

namespace pinwright::drafting {

Curve neckline(const NecklineAsk& ask, double depth) {
  const Vec2 centre{0.0, ask.neck_point.y - depth};
  const Cubic whole = turned_line(ask.neck_point, ask.start, centre, {-1.0, 0.0}, ask.fullness);
  if (ask.segments == 1) return chain({whole});
  const auto [upper, lower] = split(whole, 0.5);
  return chain({upper, lower});
}

}  // namespace pinwright::drafting
