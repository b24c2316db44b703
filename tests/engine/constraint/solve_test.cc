#include "engine/constraint/solve.h"

#include <gtest/gtest.h>

#include <numbers>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "sheet.h"

namespace pinwright {
namespace {

double top_length(const Block& block) { return length(block.pieces[0].edges[kTop].curve); }

System shorter_top(const Block& block, double by) {
  System system;
  system.free_edges = {{0, kTop}};
  system.lengths = {{"the top", {{{0, kTop}, 1.0}}, top_length(block) - by}};
  return system;
}

TEST(Solve, MeetsALengthAndLeavesTheRestBitForBit) {
  Block block = sheet();
  const Block before = block;
  ASSERT_TRUE(solve(block, shorter_top(before, 4.0)).ok());
  EXPECT_NEAR(top_length(block), top_length(before) - 4.0, 1e-6);
  for (const std::size_t e : {kFoot, kRight, kLeft})
    EXPECT_TRUE(block.pieces[0].edges[e].curve == before.pieces[0].edges[e].curve);
  EXPECT_EQ(block.pieces[0].edges[kTop].curve.start(), before.pieces[0].edges[kTop].curve.start());
  EXPECT_EQ(block.pieces[0].edges[kTop].curve.end(), before.pieces[0].edges[kTop].curve.end());
}

TEST(Solve, InnerJointStaysSmoothAndNoWiggleIsAdded) {
  Block block = sheet();
  const Curve old = block.pieces[0].edges[kTop].curve;
  System system = shorter_top(block, -9.0);
  ASSERT_TRUE(solve(block, system).ok());
  const Curve& top = block.pieces[0].edges[kTop].curve;
  EXPECT_NEAR(turn(top.points[3] - top.points[2], top.points[4] - top.points[3]), 0.0, 1e-8);
  EXPECT_LE(inflections(top), inflections(old));
}

TEST(Solve, TheSameInputGivesTheSameBits) {
  Block one = sheet();
  Block two = sheet();
  ASSERT_TRUE(solve(one, shorter_top(one, 6.0)).ok());
  ASSERT_TRUE(solve(two, shorter_top(two, 6.0)).ok());
  EXPECT_TRUE(one == two);
}

TEST(Solve, AngleAtACornerBecomesRight) {
  Block block = sheet();
  System system;
  system.free_edges = {{0, kTop}};
  system.angles = {{"square at the left", {{0, kTop}}, std::numbers::pi / 2.0}};
  ASSERT_TRUE(solve(block, system).ok());
  EXPECT_NEAR(corner_angle(block.pieces[0], kTop), std::numbers::pi / 2.0, 1e-8);
}

TEST(Solve, SayingTheSameTwiceDoesNoHarm) {
  Block once = sheet();
  Block twice = sheet();
  System system = shorter_top(once, 4.0);
  ASSERT_TRUE(solve(once, system).ok());
  system.lengths.push_back(system.lengths.front());
  ASSERT_TRUE(solve(twice, system).ok());
  for (std::size_t i = 0; i < 7; ++i)
    EXPECT_LT(distance(once.pieces[0].edges[kTop].curve.points[i],
                       twice.pieces[0].edges[kTop].curve.points[i]),
              1e-6);
}

TEST(Solve, StraightEdgesFollowTheirCornerAndStayStraight) {
  Block block = sheet();
  System system;
  system.free_edges = {{0, kTop}};
  system.free_corners = {{{0, kRight}, {false, true}}};
  system.lengths = {{"the right", {{{0, kRight}, 1.0}}, 350.0}};
  ASSERT_TRUE(solve(block, system).ok());
  const Curve& right = block.pieces[0].edges[kRight].curve;
  EXPECT_NEAR(length(right), 350.0, 1e-6);
  EXPECT_EQ(right.end().x, 200.0);
  EXPECT_TRUE(right == straight_curve(right.start(), right.end()));
  EXPECT_EQ(right.end(), block.pieces[0].edges[kTop].curve.start());
}

TEST(Solve, NoSolutionNamesTheConstraintAndChangesNothing) {
  Block block = sheet();
  const Block before = block;
  System system;
  system.free_edges = {{0, kTop}};
  system.lengths = {{"the right edge at 500 mm", {{{0, kRight}, 1.0}}, 500.0}};
  const Result<SolveReport> report = solve(block, system);
  ASSERT_FALSE(report.ok());
  EXPECT_EQ(report.problems().front().code, "no-solution");
  EXPECT_EQ(report.problems().front().place, "the right edge at 500 mm");
  EXPECT_TRUE(block == before);
}

TEST(Solve, AChordIsTheShortestTopThereIs) {
  Block block = sheet();
  const Block before = block;
  const Curve& top = block.pieces[0].edges[kTop].curve;
  System system;
  system.free_edges = {{0, kTop}};
  system.lengths = {{"the top", {{{0, kTop}, 1.0}}, distance(top.start(), top.end()) - 5.0}};
  EXPECT_FALSE(solve(block, system).ok());
  EXPECT_TRUE(block == before);
}

}  // namespace
}  // namespace pinwright
