#include "engine/geometry/nearest.h"

#include <gtest/gtest.h>

#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

TEST(Nearest, NeverFartherThanAnySample) {
  Chance chance(31);
  for (int i = 0; i < 200; ++i) {
    const Curve c = chance.curve(3, 200);
    const Vec2 q = chance.point(260) - Vec2{30, 30};
    const Nearest n = nearest(c, q);
    EXPECT_EQ(n.point, point(c, n.at));
    EXPECT_EQ(n.distance, distance(n.point, q));
    double sampled = 1e300;
    for (std::size_t s = 0; s < 3; ++s) {
      for (int k = 0; k <= 3000; ++k) {
        sampled = std::min(sampled, distance(point(c, {s, k / 3000.0}), q));
      }
    }
    EXPECT_LE(n.distance, sampled + 1e-9) << "case " << i;
    EXPECT_NEAR(n.distance, sampled, 0.2) << "case " << i;
  }
}

TEST(Nearest, PointsOfTheCurveHaveNoDistance) {
  Chance chance(32);
  for (int i = 0; i < 200; ++i) {
    const Curve c = chance.curve(2, 200);
    const CurvePlace at{static_cast<std::size_t>(i % 2), chance.number(0, 1)};
    EXPECT_LT(nearest(c, point(c, at)).distance, 1e-9);
  }
}

TEST(Nearest, OfEqualPlacesTheFirst) {
  const Curve hook = joined(straight_curve({0, 0}, {10, 0}), straight_curve({10, 0}, {10, 10}));
  const Nearest n = nearest(hook, {6, 4});  // 4 mm from both
  EXPECT_EQ(n.at.segment, 0u);
  EXPECT_NEAR(n.distance, 4.0, 1e-12);
  const Nearest joint = nearest(hook, {20, -10});
  EXPECT_EQ(joint.at.segment, 0u);
  EXPECT_EQ(joint.at.t, 1.0);
  // the centre of a circle: every place is as near to rounding, an end of a cubic is nearest
  const Curve circle = arc({0, 0}, 100, 0, 2 * kPi, 4);
  EXPECT_EQ(nearest(circle, {0, 0}).at.segment, 0u);
}

}  // namespace
}  // namespace pinwright
