#include "engine/geometry/even_points.h"

#include <algorithm>
#include <cmath>

namespace pinwright {
namespace {

constexpr std::size_t kPanels = 16;  // a segment

}  // namespace

std::vector<Vec2> even_points(const Curve& c, int count) {
  // Simpson's rule on each panel.
  std::vector<double> run{0.0};
  std::vector<double> speed;  // two a panel: at its ends, per panel
  run.reserve(kPanels * c.segments() + 1);
  speed.reserve(2 * kPanels * c.segments());
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const Cubic s = c.segment(i);
    double before = norm(derivative(s, 0.0)) / kPanels;
    for (std::size_t k = 0; k < kPanels; ++k) {
      const double t = static_cast<double>(k) / kPanels;
      const double mid = norm(derivative(s, t + 0.5 / kPanels)) / kPanels;
      const double after = norm(derivative(s, t + 1.0 / kPanels)) / kPanels;
      run.push_back(run.back() + (before + 4.0 * mid + after) / 6.0);
      speed.push_back(before);
      speed.push_back(after);
      before = after;
    }
  }
  std::vector<Vec2> points{c.start()};
  points.reserve(static_cast<std::size_t>(count) + 1);
  std::size_t panel = 0;
  for (int n = 1; n < count; ++n) {
    const double wanted = run.back() * n / count;
    while (panel + 2 < run.size() && run[panel + 1] < wanted) ++panel;
    // Inside a panel the speed is taken as linear: rest = v0 u + (v1 - v0) u^2 / 2.
    const double own = run[panel + 1] - run[panel];
    double u = own > 0.0 ? (wanted - run[panel]) / own : 0.0;
    const double v0 = speed[2 * panel];
    const double slope = speed[2 * panel + 1] - v0;
    const double scale = v0 + 0.5 * slope > 0.0 ? own / (v0 + 0.5 * slope) : 0.0;
    for (int round = 0; round < 2 && scale > 0.0; ++round) {
      const double v = scale * (v0 + slope * u);
      if (!(v > 0.0)) break;
      u -= (scale * (v0 * u + 0.5 * slope * u * u) - (wanted - run[panel])) / v;
    }
    u = std::clamp(u, 0.0, 1.0);
    points.push_back(
        point(c.segment(panel / kPanels), (static_cast<double>(panel % kPanels) + u) / kPanels));
  }
  points.push_back(c.end());
  return points;
}

}  // namespace pinwright
