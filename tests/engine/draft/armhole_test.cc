#include "engine/draft/armhole.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/draft/upper.h"
#include "engine/geometry/fairing.h"

namespace pinwright::drafting {
namespace {

ArmholeAsk usual() {
  return {{245.0, 190.0}, {0.0, 1.0}, {185.0, 375.0}, toward_neck(0.36), 175.0};
}

TEST(Armhole, SquareAtBothEndsAndPlumbHalfWayUp) {
  const Curve line = armhole(usual());
  EXPECT_EQ(line.segments(), 2u);
  EXPECT_NEAR(dot(start_tangent(line), Vec2{0.0, 1.0}), 0.0, 1e-12);
  EXPECT_NEAR(dot(end_tangent(line), toward_neck(0.36)), 0.0, 1e-12);
  EXPECT_NEAR(line.points[3].x, 175.0, 1e-12);
  EXPECT_NEAR(line.points[3].y, (190.0 + 375.0) / 2.0, 1e-12);
  EXPECT_NEAR(tangent(line, {0, 1.0}).x, 0.0, 1e-12);
  EXPECT_EQ(inflections(line), 0);
}

TEST(Armhole, StaysHollowWhateverWidthIsWanted) {
  for (const double x : {60.0, 140.0, 180.0, 240.0, 400.0}) {
    ArmholeAsk ask = usual();
    ask.across_x = x;
    EXPECT_EQ(inflections(armhole(ask)), 0) << x;
    EXPECT_LT(armhole_across(ask), ask.tip.x);
  }
}

TEST(Armhole, ALevelShoulderDropsPlumb) {
  ArmholeAsk ask = usual();
  ask.shoulder = {-1.0, 0.0};
  EXPECT_DOUBLE_EQ(armhole_across(ask), ask.tip.x);
  EXPECT_EQ(inflections(armhole(ask)), 0);
}

}  // namespace
}  // namespace pinwright::drafting
