#include "engine/draft/solve.h"

#include <gtest/gtest.h>

#include <cmath>

namespace pinwright::drafting {
namespace {

TEST(Solve, WhereACircleMeetsALine) {
  Unknowns x{3.0, 1.0};
  ASSERT_TRUE(solve(
      x,
      [](const Unknowns& u) {
        return std::vector<double>{u[0] * u[0] + u[1] * u[1] - 25.0, u[0] - u[1] - 1.0};
      },
      1e-10));
  EXPECT_NEAR(x[0], 4.0, 1e-9);
  EXPECT_NEAR(x[1], 3.0, 1e-9);
}

TEST(Solve, SaysWhenThereIsNoSolution) {
  Unknowns x{1.0};
  EXPECT_FALSE(solve(
      x, [](const Unknowns& u) { return std::vector<double>{u[0] * u[0] + 1.0}; }, 1e-9));
  Unknowns y{1.0, 1.0};
  EXPECT_FALSE(solve(
      y,
      [](const Unknowns& u) {
        return std::vector<double>{u[0] + u[1] - 1.0, u[0] + u[1] - 2.0};
      },
      1e-9));
  Unknowns z{1.0};
  EXPECT_FALSE(solve(
      z, [](const Unknowns&) { return std::vector<double>{std::nan("")}; }, 1e-9));
}

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
