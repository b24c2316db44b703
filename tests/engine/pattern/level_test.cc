#include "engine/pattern/level.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "engine/geometry/transform.h"
#include "tests/engine/pattern/shapes.h"

namespace pinwright {
namespace {

TEST(ClothWidth, OfAPlainPiece) {
  const Piece piece = testing::half("front", EdgeRole::centre_front, 80.0);
  EXPECT_NEAR(*cloth_width(piece, 125.0), 195.0, 1e-9);
  EXPECT_NEAR(*cloth_width(piece, 320.0), 190.0, 1e-9);
}

TEST(ClothWidth, CountsFromTheFoldUnderADeepNeckline) {
  Piece piece = testing::half("front", EdgeRole::centre_front, 200.0);
  EXPECT_NEAR(*cloth_width(piece, 320.0), 190.0, 1e-9);
  piece.fold.reset();
  EXPECT_NEAR(*cloth_width(piece, 320.0), 190.0 - 36.0, 1e-9);
}

TEST(ClothWidth, NothingBesideThePiece) {
  const Piece piece = testing::half("front", EdgeRole::centre_front, 80.0);
  EXPECT_FALSE(cloth_width(piece, -5.0).has_value());
  EXPECT_FALSE(cloth_width(piece, 500.0).has_value());
  EXPECT_FALSE(cloth_width(piece, std::nan("")).has_value());
  EXPECT_FALSE(cloth_width(Piece{}, 10.0).has_value());
}

/// A rectangle 100 x 100 with a side dart from (100, 40..60) to (30, 50).
Piece side_dart(Vec2 lower, Vec2 upper, Vec2 point_of_dart) {
  Piece piece = testing::ring("front", {{"bottom", EdgeRole::hem, {0.0, 0.0}},
                                        {"low", EdgeRole::side, {100.0, 0.0}},
                                        {"in", EdgeRole::dart_leg, lower},
                                        {"out", EdgeRole::dart_leg, point_of_dart},
                                        {"high", EdgeRole::side, upper},
                                        {"top", EdgeRole::shoulder, {100.0, 100.0}},
                                        {"fold", EdgeRole::centre_front, {0.0, 100.0}}});
  piece.darts = {{"dart", "in", "out", "bust-point"}};
  return piece;
}

TEST(ClothWidth, ADartBesideTheLevelChangesNothing) {
  const Piece piece = side_dart({100.0, 40.0}, {100.0, 60.0}, {30.0, 50.0});
  EXPECT_NEAR(*cloth_width(piece, 20.0), 100.0, 1e-9);
  EXPECT_NEAR(*cloth_width(piece, 80.0), 100.0, 1e-9);
}

TEST(ClothWidth, GoesOnMidwayBetweenTheLevelsOfASewnDart) {
  // The dart slants up, so that the level at 52 enters it by its upper leg from above.
  const Vec2 tip{30.0, 40.0};
  const Vec2 lower{100.0, 50.0};
  const Vec2 upper{100.0, 80.0};
  const double leg = distance(tip, lower);
  const Vec2 even = tip + leg * unit(upper - tip);
  const Piece piece = side_dart(lower, even, tip);
  // By hand: the level meets the upper leg ...
  const double y = 52.0;
  const Vec2 along = unit(even - tip);
  const Vec2 meets = tip + ((y - tip.y) / along.y) * along;
  // ... and beyond it the lower part, turned up onto that leg about the point, takes over; its own
  // level would rise by the dart's angle, the line rises by half of that: seen from the line the
  // part is turned back by so much.
  const double angle = turn(lower - tip, even - tip);
  const Affine up = then(rotation_about(tip, angle), rotation_about(meets, -0.5 * angle));
  const Vec2 a = apply(up, Vec2{100.0, 0.0});
  const Vec2 b = apply(up, lower);
  const double share = (y - a.y) / (b.y - a.y);
  ASSERT_GT(share, 0.0);
  ASSERT_LT(share, 1.0);
  const double end = a.x + share * (b.x - a.x);
  ASSERT_GT(end, meets.x);
  EXPECT_NEAR(*cloth_width(piece, y), end, 1e-6);
}

TEST(ClothWidth, DoesNotJumpWhereTheDartsPointCrossesTheLevel) {
  const Vec2 lower{100.0, 40.0};
  const Vec2 upper{100.0, 64.0};
  const auto width_with_tip_at = [&](double y) {
    const Vec2 tip{30.0, y};
    const Vec2 even = tip + distance(tip, lower) * unit(upper - tip);
    return *cloth_width(side_dart(lower, even, tip), 52.0);
  };
  const double below = width_with_tip_at(52.0 - 1e-4);
  const double above = width_with_tip_at(52.0 + 1e-4);
  EXPECT_NEAR(below, above, 1e-2);
}

TEST(ClothWidth, AcrossAnUprightDartIsBothSidesTogether) {
  // Legs mirror each other about x = 50: sewn, the level bends by the dart's angle at the seam.
  Piece piece = testing::ring("front", {{"a", EdgeRole::waist, {0.0, 0.0}},
                                        {"in", EdgeRole::dart_leg, {40.0, 0.0}},
                                        {"out", EdgeRole::dart_leg, {50.0, 60.0}},
                                        {"b", EdgeRole::waist, {60.0, 0.0}},
                                        {"right", EdgeRole::side, {100.0, 0.0}},
                                        {"top", EdgeRole::neckline, {100.0, 80.0}},
                                        {"left", EdgeRole::centre_front, {0.0, 80.0}}});
  piece.darts = {{"dart", "in", "out", "bust-point"}};
  const double width = *cloth_width(piece, 30.0);
  // 45 on the left; on the right the way from the leg to the side, square to nothing, is at least
  // the level 45 and at most 45 / cos(the dart's angle).
  EXPECT_GT(width, 90.0);
  EXPECT_LT(width, 45.0 + 45.0 / std::cos(2.0 * std::atan(10.0 / 60.0)) + 6.0);
}

}  // namespace
}  // namespace pinwright
