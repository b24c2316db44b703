#include <gtest/gtest.h>

#include "engine/geometry/intersect.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

TEST(Level, EveryPlaceIsOnTheLineAndNoneIsMissed) {
  Chance chance(41);
  for (int i = 0; i < 300; ++i) {
    const Curve c = chance.curve(3, 200);
    const double level = chance.number(0, 200);
    const std::vector<CurvePlace> places = at_height(c, level);
    for (std::size_t k = 0; k < places.size(); ++k) {
      EXPECT_NEAR(point(c, places[k]).y, level, 1e-8);
      if (k > 0) {
        EXPECT_LT(static_cast<double>(places[k - 1].segment) + places[k - 1].t,
                  static_cast<double>(places[k].segment) + places[k].t);
      }
    }
    std::size_t changes = 0;
    double last = c.start().y;
    for (std::size_t s = 0; s < 3; ++s) {
      for (int k = 1; k <= 2000; ++k) {
        const double y = point(c, {s, k / 2000.0}).y;
        changes += (y < level) != (last < level) ? 1 : 0;
        last = y;
      }
    }
    EXPECT_GE(places.size(), changes) << "case " << i;
    EXPECT_EQ((places.size() - changes) % 2, 0u) << "case " << i;
  }
}

TEST(Level, JointsAndTouchesCountOnce) {
  const Curve zigzag = chain(
      {straight({0, 0}, {10, 10}), straight({10, 10}, {20, 20}), straight({20, 20}, {30, 0})});
  ASSERT_EQ(at_height(zigzag, 10).size(), 2u);
  EXPECT_EQ(at_height(zigzag, 10)[0].segment, 0u);
  EXPECT_EQ(at_height(zigzag, 20).size(), 1u);
  EXPECT_EQ(at_height(zigzag, 0).size(), 2u);
  EXPECT_EQ(at_height(zigzag, 20.001).size(), 0u);
  EXPECT_EQ(at_x(zigzag, 10).size(), 1u);
  const Curve arch{{{0, 0}, {0, 40}, {100, 40}, {100, 0}}};  // top at y = 30
  ASSERT_EQ(at_height(arch, 30).size(), 1u);
  EXPECT_NEAR(at_height(arch, 30)[0].t, 0.5, 1e-6);
  EXPECT_EQ(at_height(arch, 29.9).size(), 2u);
}

TEST(Level, ASegmentOnTheLineGivesItsEnds) {
  const Curve step =
      chain({straight({0, 0}, {0, 10}), straight({0, 10}, {30, 10}), straight({30, 10}, {30, 20})});
  const std::vector<CurvePlace> on = at_height(step, 10);
  ASSERT_EQ(on.size(), 2u);
  EXPECT_EQ(point(step, on[0]), (Vec2{0, 10}));
  EXPECT_EQ(point(step, on[1]), (Vec2{30, 10}));
}

}  // namespace
}  // namespace pinwright
