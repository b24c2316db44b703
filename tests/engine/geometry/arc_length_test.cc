#include "engine/geometry/arc_length.h"

#include <gtest/gtest.h>

#include "engine/geometry/tolerance.h"
#include "engine/geometry/transform.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

/// By brute force: chords between n equal steps of t, the error of order 1/n^2 extrapolated away.
double chords(const Cubic& c, int n) {
  double sum = 0.0;
  for (int i = 1; i <= n; ++i) {
    sum += distance(point(c, static_cast<double>(i - 1) / n), point(c, static_cast<double>(i) / n));
  }
  return sum;
}
double by_chords(const Cubic& c, int n) { return (4.0 * chords(c, 2 * n) - chords(c, n)) / 3.0; }

TEST(ArcLength, StraightEqualsDistance) {
  EXPECT_NEAR(length(straight({3, 4}, {303, 404})), 500.0, 1e-10);
  // handles anywhere between the ends: the same line at another speed
  EXPECT_NEAR(length(Cubic{{{{0, 0}, {5, 0}, {7, 0}, {100, 0}}}}), 100.0, 1e-10);
  EXPECT_EQ(length(straight({2, 2}, {2, 2})), 0.0);
}

TEST(ArcLength, ParabolaEqualsItsClosedForm) {
  // integral of sqrt(1 + 4 a^2 x^2) = x/2 sqrt(1 + u^2) + asinh(u) / (4 a), u = 2 a x
  for (const double a : {1e-4, 0.01, 0.3, 5.0}) {
    const auto primitive = [&](double x) {
      const double u = 2.0 * a * x;
      return 0.5 * x * std::sqrt(1.0 + u * u) + std::asinh(u) / (4.0 * a);
    };
    const double exact = primitive(80.0) - primitive(-35.0);
    EXPECT_NEAR(length(parabola(a, -35.0, 80.0)) / exact, 1.0, 1e-12) << "a = " << a;
  }
}

TEST(ArcLength, CuspEqualsItsClosedForm) {
  // (t^2, t^3) over [-1, 1] has a cusp in the middle; each half is (13 sqrt 13 - 8) / 27 long
  const Cubic cusp{{{{1, -1}, {-1.0 / 3, 1}, {-1.0 / 3, -1}, {1, 1}}}};
  const double half = (13.0 * std::sqrt(13.0) - 8.0) / 27.0;
  EXPECT_NEAR(length(cusp), 2.0 * half, 1e-10);
  // cut so that the cusp lies at no halving point
  const auto [left, right] = split(cusp, 0.813);
  EXPECT_NEAR(length(left) + length(right), 2.0 * half, 2e-9 * half);
}

TEST(ArcLength, AlmostACuspAndTightS) {
  for (const double gap : {0.0, 1e-6, 1e-3, 0.1, 2.0}) {
    const Cubic crossed{{{{0, 0}, {100 + gap, 100}, {gap / 2, 100}, {100, 0}}}};
    const double reference = by_chords(crossed, 200000);
    EXPECT_NEAR(length(crossed) / reference, 1.0, kLengthRelative) << gap;
    const Cubic s{{{{0, 0}, {300, gap}, {-200, 10}, {100, 10}}}};
    EXPECT_NEAR(length(s) / by_chords(s, 200000), 1.0, kLengthRelative) << gap;
  }
}

TEST(ArcLength, RandomCubicsAgreeWithChords) {
  Chance chance(71);
  for (int i = 0; i < 60; ++i) {
    const Cubic c = chance.cubic(400);
    EXPECT_NEAR(length(c) / by_chords(c, 40000), 1.0, 1e-9) << "case " << i;
  }
}

TEST(ArcLength, SplittingKeepsTheSum) {
  Chance chance(5);
  for (int i = 0; i < 300; ++i) {
    const Cubic c = chance.cubic(500);
    const double t = chance.number(0, 1);
    const auto [a, b] = split(c, t);
    const double whole = length(c);
    EXPECT_NEAR(length(a) + length(b), whole, kLengthRelative * whole) << "case " << i;
    EXPECT_NEAR(length(c, 0, t), length(a), kLengthRelative * whole) << "case " << i;
    EXPECT_NEAR(length(c, t, 1), length(b), kLengthRelative * whole) << "case " << i;
    EXPECT_EQ(length(c, 0.7, 0.2), -length(c, 0.2, 0.7));
  }
}

TEST(ArcLength, ReversedAndRigidlyMovedIsAsLong) {
  Chance chance(6);
  for (int i = 0; i < 200; ++i) {
    const Curve c = chance.curve(3, 300);
    const double whole = length(c);
    EXPECT_NEAR(length(reversed(c)), whole, kLengthRelative * whole);
    const Affine m = then(rotation_about(chance.point(900), chance.number(-4, 4)),
                          then(mirror_x(chance.number(-50, 50)), translation(chance.point(1000))));
    EXPECT_NEAR(length(apply(m, c)), whole, kLengthRelative * whole) << "case " << i;
  }
}

TEST(ArcLength, InverseGivesThePlaceBack) {
  Chance chance(8);
  for (int i = 0; i < 200; ++i) {
    const Curve c = chance.curve(4, 300);
    const double whole = length(c);
    for (int k = 0; k < 6; ++k) {
      const double s = chance.number(0, whole);
      const CurvePlace at = place_at(c, s);
      EXPECT_NEAR(length_to(c, at), s, kLengthRelative * whole) << "case " << i;
      const Vec2 p = point_at(c, s);
      EXPECT_EQ(p, point(c, at));
    }
  }
}

TEST(ArcLength, InverseAcrossACusp) {
  const Curve cusp{{{1, -1}, {-1.0 / 3, 1}, {-1.0 / 3, -1}, {1, 1}}};
  const double whole = length(cusp);
  for (int k = 0; k <= 50; ++k) {
    const double s = whole * k / 50.0;
    EXPECT_NEAR(length_to(cusp, place_at(cusp, s)), s, kLengthRelative * whole) << k;
  }
}

TEST(ArcLength, InverseIsClampedAndKeepsJoints) {
  const Curve c = joined(straight_curve({0, 0}, {100, 0}), straight_curve({100, 0}, {100, 50}));
  EXPECT_EQ(point_at(c, -5), (Vec2{0, 0}));
  EXPECT_EQ(point_at(c, 1e9), (Vec2{100, 50}));
  EXPECT_EQ(point_at(c, length(c)), (Vec2{100, 50}));
  const CurvePlace joint = place_at(c, length(c.segment(0)));
  EXPECT_EQ(joint.segment, 0u);
  EXPECT_EQ(joint.t, 1.0);
  EXPECT_EQ(tangent_at(c, 120), (Vec2{0, 1}));
}

}  // namespace
}  // namespace pinwright
