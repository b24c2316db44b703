#include "engine/draft/bisect.h"

#include <gtest/gtest.h>

#include <cmath>

namespace pinwright::drafting {
namespace {

TEST(Bisect, FindsTheCrossingAndOnlyACrossing) {
  double t = 0.0;
  ASSERT_TRUE(bisect(
      0.0, 3.0, [](double x) { return x * x - 2.0; }, t));
  EXPECT_NEAR(t, std::sqrt(2.0), 1e-14);
  EXPECT_FALSE(bisect(
      2.0, 3.0, [](double x) { return x * x - 2.0; }, t));
  EXPECT_FALSE(bisect(
      0.0, 3.0, [](double) { return std::nan(""); }, t));
}

}  // namespace
}  // namespace pinwright::drafting
