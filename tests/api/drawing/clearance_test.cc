#include "api/drawing/clearance.h"

#include <gtest/gtest.h>

namespace pinwright::api {
namespace {

TEST(Clearance, ALineThroughOrNearTheBoxIsMet) {
  Clearance taken;
  taken.add_line({0, 0}, {100, 0});
  EXPECT_FALSE(taken.is_free({{50, 0}, 10, 4, 0}));
  EXPECT_FALSE(taken.is_free({{50, 2.5}, 10, 4, 0}));  // 0.5 mm away
  EXPECT_TRUE(taken.is_free({{50, 3}, 10, 4, 0}));
  EXPECT_TRUE(taken.is_free({{106, 0}, 10, 4, 0}));
  EXPECT_FALSE(taken.is_free({{105, 0}, 10, 4, 0}));
}

TEST(Clearance, TurnedBoxesAreTurned) {
  Clearance taken;
  taken.add_line({0, 0}, {100, 0});
  const TextBox upright{{50, 4}, 10, 2, 0};
  EXPECT_TRUE(taken.is_free(upright));
  EXPECT_FALSE(taken.is_free({{50, 4}, 10, 2, 90}));
  // clockwise on the page: at 45 degrees the right end goes down
  Clearance point;
  point.add_line({53.4, 3.4}, {53.6, 3.6});
  EXPECT_FALSE(point.is_free({{50, 0}, 12, 2, 45}));
  EXPECT_TRUE(point.is_free({{50, 0}, 12, 2, -45}));
}

TEST(Clearance, BoxesMeetAlsoWhenOneHoldsTheOther) {
  Clearance taken;
  taken.add_box({{0, 0}, 40, 40, 0});
  EXPECT_FALSE(taken.is_free({{0, 0}, 4, 4, 0}));
  EXPECT_FALSE(taken.is_free({{0, 0}, 80, 80, 0}));
  EXPECT_FALSE(taken.is_free({{21, 0}, 4, 4, 0}));
  EXPECT_TRUE(taken.is_free({{23, 0}, 4, 4, 0}));
  EXPECT_EQ(taken.conflicts({{0, 0}, 4, 4, 0}), 10);
}

TEST(Clearance, InsideIsEvenOdd) {
  const std::vector<Vec2> ring = {{0, 0}, {10, 0}, {10, 10}, {5, 2}, {0, 10}};
  EXPECT_TRUE(inside(ring, {5, 1}));
  EXPECT_FALSE(inside(ring, {5, 5}));
  EXPECT_TRUE(inside(ring, {1, 5}));
  EXPECT_FALSE(inside(ring, {-1, 5}));
}

}  // namespace
}  // namespace pinwright::api
