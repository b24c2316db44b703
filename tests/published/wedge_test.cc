// Closing a wedge: what a fitter takes out at the edge against the chord of a circle.
//
// Source: the chord of an angle is twice the radius times the sine of half the angle (Euclid,
// Elements III; the chord tables of Ptolemy, Almagest I). The figures in inches are derived from
// it.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/transform.h"

namespace pinwright {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kInch = 25.4;  // exact since 1959 (international yard and pound agreement)

TEST(PublishedWedge, RotationMovesAPointByTheChord) {
  const Vec2 hinge{137.5, -42.0};
  for (const double r : {1.0, 25.0, 203.2, 600.0}) {
    for (const double degrees : {0.01, 1.0, 5.0, 10.0, 45.0, 90.0, 180.0}) {
      for (const double from : {0.0, 0.7, 2.5, -1.9}) {
        const Vec2 p = hinge + r * Vec2{std::cos(from), std::sin(from)};
        const double theta = degrees * kDegree;
        const double chord = 2.0 * r * std::sin(theta / 2.0);
        EXPECT_NEAR(distance(p, apply(rotation_about(hinge, theta), p)), chord, 1e-10);
        EXPECT_NEAR(distance(p, apply(rotation_about(hinge, -theta), p)), chord, 1e-10);
      }
    }
  }
}

TEST(PublishedWedge, TenDegreesAtEightInches) {
  // 2 * 8 in * sin 5 degrees = 16 in * 0.0871557 = 1.394 in
  const Vec2 hinge{50, 60}, p = hinge + Vec2{0, 8 * kInch};
  const double moved = distance(p, apply(rotation_about(hinge, -10 * kDegree), p));
  EXPECT_NEAR(moved / kInch, 1.394, 0.0005);
}

TEST(PublishedWedge, AWedgeOfThatAngleClosesExactly) {
  // the legs of a wedge taken out of an edge: turned about the hinge, one falls on the other
  const Vec2 hinge{10, 20};
  const double theta = 7 * kDegree, r = 150;
  const Vec2 a = hinge + Vec2{r, 0};
  const Vec2 b = hinge + r * Vec2{std::cos(theta), std::sin(theta)};
  const Curve leg = straight_curve(hinge, a);
  const Curve closed = apply(rotation_about(hinge, theta), leg);
  EXPECT_LT(distance(closed.end(), b), 1e-10);
  EXPECT_LT(distance(closed.start(), hinge), 1e-10);
  EXPECT_NEAR(length(closed), r, 1e-9);
  EXPECT_NEAR(distance(a, b), 2 * r * std::sin(theta / 2), 1e-10);
}

}  // namespace
}  // namespace pinwright
