#include "engine/draft/neckline.h"

#include <gtest/gtest.h>

#include "engine/draft/lines.h"
#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {
namespace {

TEST(Neckline, RunsFromTheNeckPointToTheCentre) {
  const NecklineAsk ask{{70.0, 400.0}, direction(-2.0), 0.56, 2};
  const Curve line = neckline(ask, 84.0);
  EXPECT_EQ(line.end(), (Vec2{0.0, 316.0}));
  EXPECT_NEAR(end_tangent(line).y, 0.0, 1e-12);
  EXPECT_NEAR(turn(start_tangent(line), direction(-2.0)), 0.0, 1e-12);
}

TEST(Neckline, TwoSegmentsDrawTheSameLine) {
  const NecklineAsk one{{70.0, 400.0}, direction(-1.8), 0.56, 1};
  NecklineAsk two = one;
  two.segments = 2;
  EXPECT_NEAR(length(neckline(one, 80.0)), length(neckline(two, 80.0)), 1e-9);
  EXPECT_EQ(neckline(two, 80.0).segments(), 2u);
}

TEST(TurnedLine, HalfFullIsNearlyAQuarterCircle) {
  const Cubic arc = round_line({10.0, 0.0}, {0.0, 1.0}, {0.0, 10.0}, {-1.0, 0.0});
  for (const double t : {0.1, 0.3, 0.5, 0.8}) EXPECT_NEAR(norm(point(arc, t)), 10.0, 3e-3);
}

TEST(TurnedLine, ParallelEndsFallBackToThirds) {
  const Cubic line = turned_line({0.0, 0.0}, {1.0, 0.0}, {9.0, 0.0}, {1.0, 0.0}, 0.6);
  EXPECT_EQ(line.p[1], (Vec2{3.0, 0.0}));
  EXPECT_EQ(line.p[2], (Vec2{6.0, 0.0}));
}

}  // namespace
}  // namespace pinwright::drafting
