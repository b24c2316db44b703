// Nothing here has a right answer; it must end, and not crash.
#include <gtest/gtest.h>

#include <limits>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/area.h"
#include "engine/geometry/fairing.h"
#include "engine/geometry/intersect.h"
#include "engine/geometry/nearest.h"
#include "engine/geometry/offset.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

void use_everything(const Curve& c, const Curve& d, double v) {
  length(c);
  length_to(c, {7, v});
  place_at(c, v);
  point(c, {99, v});
  tangent(c, {0, v});
  curvature(c, {0, v});
  start_tangent(c);
  end_tangent(c);
  split(c, {0, v});
  joined(c, d);
  bounds(c);
  EXPECT_LT(flatten(c, v).size(), 1000000u);
  signed_area({c, d});
  nearest(c, {v, v});
  EXPECT_LT(intersections(c, d).size(), 10000u);
  EXPECT_LT(self_intersections(c).size(), 10000u);
  at_height(c, v);
  at_x(c, v);
  inflections(c);
  (void)refit(c, 2, {1, v}, {1, 0});
  (void)fair_through(c.points, {1, 0}, {0, v});
  (void)offset_outline({{c, v, AllowanceKind::hem}, {d, 10, AllowanceKind::plain}});
  (void)offset_outline({{c, 10, AllowanceKind::hem}, {reversed(c), 5, AllowanceKind::plain}});
}

TEST(BadInput, Ends) {
  const double inf = std::numeric_limits<double>::infinity();
  const double nan = std::numeric_limits<double>::quiet_NaN();
  Chance chance(66);
  const Curve good = chance.curve(2, 100);
  std::vector<Curve> curves{Curve{},
                            Curve{{{1, 2}}},
                            Curve{{{1, 2}, {3, 4}}},
                            straight_curve({5, 5}, {5, 5}),
                            good,
                            straight_curve({-1e300, 0}, {1e300, 1e300}),
                            straight_curve({0, 0}, {1e-300, 1e-310}),
                            Curve{{{0, 0}, {1e9, 1e9}, {-1e9, 1e9}, {0, 0}}}};
  for (std::size_t i = 0; i < good.points.size(); ++i) {
    for (const double v : {nan, inf, -inf, 1e308}) {
      Curve c = good;
      c.points[i].y = v;
      curves.push_back(c);
    }
  }
  for (const Curve& c : curves) {
    for (const Curve& d : {good, c, Curve{}}) {
      for (const double v : {0.5, -3.0, 1e300, nan}) use_everything(c, d, v);
    }
  }
}

TEST(BadInput, RandomDegenerateCurvesEnd) {
  Chance chance(67);
  for (int i = 0; i < 300; ++i) {
    // few places to choose from: many points coincide or lie on one line
    Curve c;
    for (int k = 0; k < 10; ++k) {
      c.points.push_back({std::floor(chance.number(0, 3)), std::floor(chance.number(0, 3))});
    }
    Curve d;
    for (int k = 0; k < 7; ++k) {
      d.points.push_back({std::floor(chance.number(0, 3)), std::floor(chance.number(0, 2))});
    }
    use_everything(c, d, 1.0);
    EXPECT_TRUE(std::isfinite(length(c)));
    EXPECT_TRUE(std::isfinite(signed_area({c})));
  }
}

}  // namespace
}  // namespace pinwright
