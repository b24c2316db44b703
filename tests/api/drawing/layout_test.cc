#include "api/drawing/layout.h"

#include <gtest/gtest.h>

#include <random>

namespace pinwright::api {
namespace {

TEST(Layout, NoTwoBoxesComeNearerThanTheGap) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> side(10.0, 700.0);
  for (int round = 0; round < 200; ++round) {
    std::vector<Box> boxes;
    for (int i = 0; i < 1 + round % 9; ++i) {
      const Vec2 low{side(random) - 300, side(random) - 300};
      boxes.push_back({low, low + Vec2{side(random), side(random)}});
    }
    const Layout out = lay_out(boxes, 1200.0, 30.0);
    ASSERT_EQ(out.low.size(), boxes.size());
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      const Vec2 a = out.low[i];
      const Vec2 a_size = boxes[i].high - boxes[i].low;
      EXPECT_GE(a.x, 30.0 - 1e-9);
      EXPECT_GE(a.y - a_size.y, 30.0 - 1e-9);
      EXPECT_LE(a.x + a_size.x, out.width - 30.0 + 1e-9);
      EXPECT_LE(a.y, out.height - 30.0 + 1e-9);
      for (std::size_t j = 0; j < i; ++j) {
        const Vec2 b = out.low[j];
        const Vec2 b_size = boxes[j].high - boxes[j].low;
        const double apart_x = std::max(a.x - (b.x + b_size.x), b.x - (a.x + a_size.x));
        const double apart_y = std::max((a.y - a_size.y) - b.y, (b.y - b_size.y) - a.y);
        EXPECT_GE(std::max(apart_x, apart_y), 30.0 - 1e-9);
      }
    }
  }
}

TEST(Layout, ALowBoxIsStackedWhereTheRowIsHigh) {
  const Layout out =
      lay_out({{{0, 0}, {100, 600}}, {{0, 0}, {100, 200}}, {{0, 0}, {300, 40}}}, 1500.0, 30.0);
  EXPECT_EQ(out.low[1].x, out.low[2].x);
  EXPECT_EQ(out.low[2].y, out.low[1].y - 230.0);
  EXPECT_EQ(out.height, 660.0);
}

TEST(Layout, RowsEndAtTheirWidth) {
  const std::vector<Box> boxes(4, Box{{0, 0}, {400, 500}});
  const Layout out = lay_out(boxes, 1000.0, 30.0);
  EXPECT_LE(out.width, 1000.0);
  EXPECT_EQ(out.height, 1090.0);
}

}  // namespace
}  // namespace pinwright::api
