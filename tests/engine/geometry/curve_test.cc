#include "engine/geometry/curve.h"

#include <gtest/gtest.h>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/nearest.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

TEST(Curve, SplitJoinGivesBackTheCurve) {
  Chance chance(11);
  for (int i = 0; i < 100; ++i) {
    const Curve c = chance.curve(4, 200);
    const CurvePlace at{static_cast<std::size_t>(i % 4), chance.number(0.01, 0.99)};
    const auto [a, b] = split(c, at);
    EXPECT_EQ(a.end(), b.start());
    EXPECT_EQ(a.start(), c.start());
    EXPECT_EQ(b.end(), c.end());
    EXPECT_EQ(a.segments(), at.segment + 1);
    EXPECT_EQ(joined(a, b).segments(), 5u);
    // segments that were not cut are the same to the last bit
    for (std::size_t k = 0; k < at.segment; ++k) EXPECT_EQ(a.segment(k), c.segment(k));
    for (std::size_t k = 1; k < b.segments(); ++k) {
      EXPECT_EQ(b.segment(k), c.segment(at.segment + k));
    }
  }
}

TEST(Curve, SplitAtAJointCutsNothing) {
  Chance chance(12);
  const Curve c = chance.curve(3, 200);
  for (const CurvePlace joint : {CurvePlace{1, 0.0}, CurvePlace{0, 1.0}}) {
    const auto [a, b] = split(c, joint);
    EXPECT_EQ(a.segments(), 1u);
    EXPECT_EQ(b.segments(), 2u);
    EXPECT_EQ(joined(a, b), c);
  }
  EXPECT_TRUE(split(c, {0, 0.0}).first.points.empty());
  EXPECT_EQ(split(c, {0, 0.0}).second, c);
  EXPECT_EQ(split(c, {2, 1.0}).first, c);
  EXPECT_TRUE(split(c, {2, 1.0}).second.points.empty());
}

TEST(Curve, ReversedTwiceIsTheSameAndTurnsTangents) {
  Chance chance(13);
  const Curve c = chance.curve(3, 200);
  EXPECT_EQ(reversed(reversed(c)), c);
  EXPECT_EQ(start_tangent(reversed(c)), -end_tangent(c));
}

TEST(Curve, ChainOfItsSegmentsIsTheCurve) {
  Chance chance(14);
  const Curve c = chance.curve(3, 200);
  EXPECT_EQ(chain({c.segment(0), c.segment(1), c.segment(2)}), c);
}

TEST(Curve, EndTangentsSkipSegmentsShrunkToAPoint) {
  const Vec2 a{0, 0}, b{10, 0};
  const Curve c = chain({straight(a, a), straight(a, b), straight(b, b)});
  EXPECT_EQ(start_tangent(c), (Vec2{1, 0}));
  EXPECT_EQ(end_tangent(c), (Vec2{1, 0}));
}

TEST(Curve, FlattenStaysWithinTheFlatness) {
  Chance chance(15);
  for (const double flatness : {1.0, 0.1, 0.01}) {
    for (int i = 0; i < 20; ++i) {
      const Curve c = chance.curve(2, 300);
      const std::vector<Vec2> line = flatten(c, flatness);
      EXPECT_EQ(line.front(), c.start());
      EXPECT_EQ(line.back(), c.end());
      for (std::size_t k = 1; k < line.size(); ++k) {
        for (const double u : {0.25, 0.5, 0.75}) {
          EXPECT_LE(nearest(c, lerp(line[k - 1], line[k], u)).distance, flatness);
        }
      }
    }
  }
  EXPECT_EQ(flatten(straight_curve({0, 0}, {500, 300}), 0.01).size(), 2u);
}

}  // namespace
}  // namespace pinwright
