#include "engine/draft/binding.h"

#include <gtest/gtest.h>

#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {
namespace {

TEST(Strip, IsARectangleOfRatioTimesOpening) {
  const Piece piece = strip({150.0, 100.0, 0.9, 10.0, 10.0});
  EXPECT_DOUBLE_EQ(length(find_edge(piece, "opening")->curve), 450.0);
  EXPECT_DOUBLE_EQ(length(find_edge(piece, "folded")->curve), 450.0);
  EXPECT_DOUBLE_EQ(length(find_edge(piece, "join-end")->curve), 20.0);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(degrees(corner_angle(piece, i)), 90.0, 1e-9);
}

TEST(Strip, NotchesShareItAsTheNecklineIsShared) {
  const Piece piece = strip({150.0, 100.0, 0.9, 10.0, 10.0});
  // Centre back, half the back neckline, shoulder, the whole front, shoulder, centre back.
  EXPECT_DOUBLE_EQ(find_notch(piece, "shoulder-notch-1")->at_mm, 90.0);
  EXPECT_DOUBLE_EQ(find_notch(piece, "centre-front-notch")->at_mm, 225.0);
  EXPECT_DOUBLE_EQ(find_notch(piece, "shoulder-notch-2")->at_mm, 360.0);
}

}  // namespace
}  // namespace pinwright::drafting
