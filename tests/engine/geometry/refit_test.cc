#include <gtest/gtest.h>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/geometry/nearest.h"
#include "engine/geometry/tolerance.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

double worst_distance(const Curve& from, const Curve& to) {
  double worst = 0.0;
  const double total = length(from);
  for (int k = 0; k <= 300; ++k) {
    worst = std::max(worst, nearest(to, point_at(from, total * k / 300.0)).distance);
  }
  return worst;
}

void expect_laws(const Curve& c, const Curve& target, Vec2 t0, Vec2 t1) {
  EXPECT_EQ(c.start(), target.start());
  EXPECT_EQ(c.end(), target.end());
  EXPECT_NEAR(turn(start_tangent(c), t0), 0.0, 1e-9);
  EXPECT_NEAR(turn(end_tangent(c), t1), 0.0, 1e-9);
  for (std::size_t k = 0; k + 1 < c.segments(); ++k) {
    EXPECT_NEAR(turn(tangent(c.segment(k), 1), tangent(c.segment(k + 1), 0)), 0.0, 1e-7);
  }
}

TEST(Refit, ACubicIsFoundAgain) {
  const Curve c{{{0, 0}, {30, 70}, {110, 80}, {160, 10}}};
  const auto [a, b] = split(c, {0, 0.37});
  const Curve target = joined(a, b);
  const auto got = refit(target, 1, start_tangent(c), end_tangent(c));
  ASSERT_TRUE(got.ok());
  expect_laws(*got, target, start_tangent(c), end_tangent(c));
  for (std::size_t k = 0; k < 4; ++k) EXPECT_LT(distance(got->points[k], c.points[k]), 1e-4) << k;
}

TEST(Refit, MoreSegmentsComeNearer) {
  const Curve target = arc({0, 0}, 100, 0, kPi, 8);
  double last = 1e300;
  for (const std::size_t n : {1u, 2u, 3u, 4u}) {
    const auto got = refit(target, n, {0, 1}, {0, -1});
    ASSERT_TRUE(got.ok());
    ASSERT_EQ(got->segments(), n);
    expect_laws(*got, target, {0, 1}, {0, -1});
    const double off = worst_distance(*got, target);
    EXPECT_LT(off, last) << n;
    EXPECT_EQ(inflections(*got), 0) << n;
    last = off;
  }
  EXPECT_LT(last, 1e-3);
}

TEST(Refit, NoSmallChangeComesNearer) {
  const Curve target = chain({Cubic{{{{0, 0}, {10, 50}, {40, 90}, {100, 100}}}},
                              Cubic{{{{100, 100}, {150, 108}, {180, 160}, {260, 150}}}}});
  const Vec2 t0 = start_tangent(target), t1 = end_tangent(target);
  const Curve got = *refit(target, 2, t0, t1);
  const auto cost = [&](const Curve& c) {
    double sum = 0.0;
    for (int k = 1; k < 200; ++k) {
      sum += std::pow(nearest(c, point_at(target, length(target) * k / 200.0)).distance, 2);
    }
    return sum;
  };
  const double least = cost(got);
  Chance chance(63);
  for (int i = 0; i < 30; ++i) {
    Curve c = got;
    const Vec2 l = chance.point(2) - Vec2{1, 1}, r = chance.point(2) - Vec2{1, 1};
    c.points[1] += chance.number(-1, 1) * t0;
    c.points[2] += l, c.points[4] += r, c.points[3] = 0.5 * (c.points[2] + c.points[4]);
    c.points[5] += chance.number(-1, 1) * t1;
    EXPECT_GT(cost(c), 0.999 * least) << i;
  }
}

TEST(Refit, ConvexTargetsStayConvex) {
  Chance chance(64);
  for (int i = 0; i < 60; ++i) {
    // a convex arc whose handles are short or long, so that one segment cannot follow closely
    const Vec2 a{0, 0}, b{200, chance.number(-40, 40)}, top{chance.number(20, 180), 150};
    const Curve target{
        {a, lerp(a, top, chance.number(0.05, 0.98)), lerp(b, top, chance.number(0.05, 0.98)), b}};
    ASSERT_EQ(inflections(target), 0);
    for (const std::size_t n : {1u, 2u, 4u}) {
      const auto got = refit(target, n, start_tangent(target), end_tangent(target));
      ASSERT_TRUE(got.ok());
      EXPECT_EQ(inflections(*got), 0) << "case " << i << ", " << n << " segments";
      EXPECT_LT(worst_distance(*got, target), 0.05) << "case " << i << ", " << n << " segments";
    }
  }
}

TEST(Refit, OtherEndTangentsAreKept) {
  const Curve target = arc({0, 0}, 100, 0, kPi / 2, 2);
  const Vec2 t0 = unit({0.1, 1}), t1 = unit({-1, 0.1});
  const auto got = refit(target, 3, t0, t1);
  ASSERT_TRUE(got.ok());
  expect_laws(*got, target, t0, t1);
  EXPECT_LT(worst_distance(*got, target), 1.5);
}

TEST(Refit, TellsEveryProblem) {
  const auto bad = refit(Curve{}, 0, {0, 0}, {1, 0});
  ASSERT_FALSE(bad.ok());
  EXPECT_EQ(bad.problems().size(), 3u);
  EXPECT_FALSE(refit(straight_curve({1, 1}, {1, 1}), 1, {1, 0}, {1, 0}).ok());
  EXPECT_FALSE(refit(straight_curve({1, NAN}, {1, 1}), 1, {1, 0}, {1, 0}).ok());
  EXPECT_FALSE(refit(straight_curve({0, 0}, {1, 1}), 65, {1, 0}, {1, 0}).ok());
}

TEST(Refit, AStraightTargetStaysStraight) {
  const auto got = refit(straight_curve({0, 0}, {90, 30}), 3, {3, 1}, {3, 1});
  ASSERT_TRUE(got.ok());
  for (const Vec2& p : got->points) EXPECT_NEAR(p.y, p.x / 3, 1e-9);
}

}  // namespace
}  // namespace pinwright
