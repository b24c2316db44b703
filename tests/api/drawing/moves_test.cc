#include "api/drawing/moves.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/api/exchange/hand_block.h"

namespace pinwright::api {
namespace {

Piece front() { return testing::hand_block().pieces[0]; }

TEST(Moves, NothingMovedNothingTold) { EXPECT_TRUE(moves(front(), front()).empty()); }

TEST(Moves, AStretchMovedAlikeIsToldOnceInItsMiddle) {
  Piece after = front();
  for (Vec2& p : after.edges[0].curve.points) p.y -= 20.0;        // the hem
  after.edges[1].curve = straight_curve({240, -20}, {240, 170});  // the side down to it
  after.edges[8].curve = straight_curve({0, 400}, {0, -20});      // the centre down to it
  const auto found = moves(front(), after);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].mm, 20.0, 1e-9);
  EXPECT_NEAR(found[0].to.x, 120.0, 3.0);
  EXPECT_NEAR(found[0].from.y, 0.0, 1e-9);
  EXPECT_NEAR(found[0].to.y, -20.0, 1e-9);
}

TEST(Moves, ACornerIsToldOnceForBothItsEdges) {
  Piece after = front();
  const Vec2 tip{170, 432};
  after.edges[5].curve.points.back() = tip;               // armhole ends lower
  after.edges[6].curve = straight_curve(tip, {70, 470});  // shoulder swings
  const auto found = moves(front(), after);
  const auto at_tip = std::count_if(found.begin(), found.end(),
                                    [&](const Move& m) { return distance(m.to, tip) < 1e-9; });
  EXPECT_EQ(at_tip, 1);
  for (const Move& m : found) EXPECT_LE(m.mm, 8.0 + 1e-9);
}

TEST(Moves, ABulgeIsToldAtItsGreatest) {
  Piece after = front();
  Curve& armhole = after.edges[5].curve;
  armhole.points[1].x -= 20.0;
  armhole.points[2].x -= 20.0;
  const auto found = moves(front(), after);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].mm, greatest_move(front().edges[5].curve, armhole), 0.7);
  EXPECT_GT(found[0].mm, 5.0);
}

TEST(Moves, LessThanHalfAMillimetreIsNotTold) {
  Piece after = front();
  for (Vec2& p : after.edges[0].curve.points) p.y -= 0.4;
  EXPECT_TRUE(moves(front(), after).empty());
  for (Vec2& p : after.edges[0].curve.points) p.y -= 0.2;
  EXPECT_EQ(moves(front(), after).size(), 1u);
}

TEST(Moves, LandmarksInsideAreToldThoseOnTheLineAreNot) {
  Piece before = front();
  before.landmarks.push_back({"waist-level", {0, 100}});
  Piece after = before;
  after.landmarks[0].at = {105, 170};
  after.landmarks[1].at = {0, 80};
  const auto found = moves(before, after);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_DOUBLE_EQ(found[0].mm, 15.0);
}

TEST(GreatestMove, IsZeroForTheSameBitsOnly) {
  const Curve hem = front().edges[0].curve;
  EXPECT_EQ(greatest_move(hem, hem), 0.0);
  Curve other = hem;
  for (Vec2& p : other.points) p.y += 1e-6;
  EXPECT_NEAR(greatest_move(hem, other), 1e-6, 1e-9);
}

}  // namespace
}  // namespace pinwright::api
