#include "engine/geometry/cubic.h"

#include <gtest/gtest.h>

#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

TEST(Cubic, SplitKeepsEndsBitForBit) {
  Chance chance(1);
  for (int i = 0; i < 500; ++i) {
    const Cubic c = chance.cubic(700);
    const double t = i == 0 ? 0.0 : i == 1 ? 1.0 : chance.number(0, 1);
    const auto [a, b] = split(c, t);
    EXPECT_EQ(a.p[0], c.p[0]);
    EXPECT_EQ(b.p[3], c.p[3]);
    EXPECT_EQ(a.p[3], b.p[0]);
    EXPECT_LT(distance(a.p[3], point(c, t)), 1e-10);
    const double u = chance.number(0, 1);
    EXPECT_LT(distance(point(a, u), point(c, u * t)), 1e-10);
    EXPECT_LT(distance(point(b, u), point(c, t + u * (1 - t))), 1e-10);
  }
  const Cubic c = chance.cubic(10);
  EXPECT_EQ(split(c, 0.0).second, c);
  EXPECT_EQ(split(c, 1.0).first, c);
}

TEST(Cubic, DerivativesAgreeWithDifferences) {
  Chance chance(2);
  for (int i = 0; i < 100; ++i) {
    const Cubic c = chance.cubic(100);
    const double t = chance.number(0.1, 0.9), h = 1e-5;
    const Vec2 d = (0.5 / h) * (point(c, t + h) - point(c, t - h));
    EXPECT_LT(distance(d, derivative(c, t)), 1e-5);
    const Vec2 dd = (0.5 / h) * (derivative(c, t + h) - derivative(c, t - h));
    EXPECT_LT(distance(dd, second_derivative(c, t)), 1e-5);
  }
}

TEST(Cubic, CurvatureOfACircleIsOneOverItsRadius) {
  const Cubic left = arc({0, 0}, 50, 0, kPi / 6, 1).segment(0);
  for (const double t : {0.0, 0.3, 0.5, 1.0}) EXPECT_NEAR(curvature(left, t), 1.0 / 50, 1e-5);
  const Cubic right = arc({0, 0}, 50, 0, -kPi / 6, 1).segment(0);
  EXPECT_NEAR(curvature(right, 0.5), -1.0 / 50, 1e-5);
}

TEST(Cubic, TangentWhereTheDerivativeVanishes) {
  const Vec2 a{0, 0}, b{30, 40};
  EXPECT_EQ(tangent(Cubic{{{a, a, {0, 5}, b}}}, 0.0), (Vec2{0, 1}));
  EXPECT_EQ(tangent(Cubic{{a, a, b, b}}, 0.0), (Vec2{0.6, 0.8}));
  EXPECT_EQ(tangent(Cubic{{a, a, a, b}}, 0.0), (Vec2{0.6, 0.8}));
  EXPECT_EQ(tangent(Cubic{{{a, {20, 40}, b, b}}}, 1.0), (Vec2{1, 0}));
  EXPECT_EQ(tangent(Cubic{{a, b, b, b}}, 1.0), (Vec2{0.6, 0.8}));
  EXPECT_EQ(tangent(Cubic{{a, a, a, a}}, 0.5), (Vec2{0, 0}));
  EXPECT_EQ(curvature(Cubic{{a, a, a, a}}, 0.5), 0.0);
  // cusp in the middle, left in the direction +x
  EXPECT_NEAR(tangent(Cubic{{{{1, -1}, {-1.0 / 3, 1}, {-1.0 / 3, -1}, {1, 1}}}}, 0.5).x, 1.0, 1e-9);
}

TEST(Cubic, BoundsAreTight) {
  Chance chance(3);
  for (int i = 0; i < 100; ++i) {
    const Cubic c = chance.cubic(100);
    const Box box = bounds(c);
    Box seen{c.p[0], c.p[0]};
    for (int k = 0; k <= 4000; ++k) {
      const Vec2 q = point(c, k / 4000.0);
      seen.low = {std::min(seen.low.x, q.x), std::min(seen.low.y, q.y)};
      seen.high = {std::max(seen.high.x, q.x), std::max(seen.high.y, q.y)};
    }
    for (const auto& [tight, looked] :
         {std::pair{box.low.x, seen.low.x}, {box.low.y, seen.low.y}}) {
      EXPECT_LE(tight, looked + 1e-10);
      EXPECT_NEAR(tight, looked, 1e-3);
    }
    for (const auto& [tight, looked] :
         {std::pair{box.high.x, seen.high.x}, {box.high.y, seen.high.y}}) {
      EXPECT_GE(tight, looked - 1e-10);
      EXPECT_NEAR(tight, looked, 1e-3);
    }
  }
}

}  // namespace
}  // namespace pinwright
