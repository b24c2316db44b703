#include <gtest/gtest.h>

#include "engine/geometry/area.h"
#include "engine/geometry/transform.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

std::vector<Curve> rectangle(double w, double h) {
  return {straight_curve({0, 0}, {w, 0}), straight_curve({w, 0}, {w, h}),
          straight_curve({w, h}, {0, h}), straight_curve({0, h}, {0, 0})};
}

std::vector<Curve> backwards(const std::vector<Curve>& ring) {
  std::vector<Curve> b;
  for (auto it = ring.rbegin(); it != ring.rend(); ++it) b.push_back(reversed(*it));
  return b;
}

TEST(Area, RectangleAndSign) {
  EXPECT_NEAR(signed_area(rectangle(120, 50)), 6000.0, 1e-9);
  EXPECT_NEAR(signed_area(backwards(rectangle(120, 50))), -6000.0, 1e-9);
  EXPECT_EQ(signed_area({}), 0.0);
}

TEST(Area, ParabolaSegmentIsTwoThirdsOfItsBox) {
  // Archimedes: below the arch y = h - a x^2 over its chord lie two thirds of the rectangle
  const Cubic up = parabola(0.01, -50, 50);  // height 25 at the ends
  const std::vector<Curve> ring{Curve{{up.p.begin(), up.p.end()}},
                                straight_curve({50, 25}, {-50, 25})};
  EXPECT_NEAR(signed_area(ring), 2.0 / 3.0 * 100 * 25, 1e-9);
}

TEST(Area, CutInTwoAddsUp) {
  Chance chance(21);
  for (int i = 0; i < 100; ++i) {
    const Curve a = chance.curve(2, 300);
    const Curve back = straight_curve(a.end(), a.start());
    const CurvePlace at{1, chance.number(0.1, 0.9)};
    const auto [first, second] = split(a, at);
    const Curve cut = straight_curve(first.end(), a.start());
    const double whole = signed_area({a, back});
    EXPECT_NEAR(signed_area({first, cut}) + signed_area({reversed(cut), second, back}), whole,
                1e-8);
    EXPECT_NEAR(signed_area(backwards({a, back})), -whole, 1e-8);
  }
}

TEST(Area, RigidMapsKeepItAndMirrorsTurnIt) {
  Chance chance(22);
  for (int i = 0; i < 50; ++i) {
    const Curve a = chance.curve(3, 300);
    const std::vector<Curve> ring{a, straight_curve(a.end(), a.start())};
    const double whole = signed_area(ring);
    const auto mapped = [&](const Affine& m) {
      return signed_area({apply(m, ring[0]), apply(m, ring[1])});
    };
    EXPECT_NEAR(mapped(rotation_about({40, -9}, chance.number(-7, 7))), whole, 1e-8);
    EXPECT_NEAR(mapped(translation({1e5, -3e5})), whole, 1e-4);
    EXPECT_NEAR(mapped(mirror_x(17)), -whole, 1e-8);
    EXPECT_NEAR(mapped({2, 0, 0, 3, {}}), 6 * whole, 1e-7);
  }
}

TEST(Transform, PivotStaysAndQuarterTurn) {
  const Affine m = rotation_about({100, 40}, kPi / 2);
  EXPECT_LT(distance(apply(m, Vec2{100, 40}), {100, 40}), 1e-12);
  EXPECT_LT(distance(apply(m, Vec2{110, 40}), {100, 50}), 1e-12);
}

TEST(Transform, ThenAppliesFirstFirst) {
  const Affine turn_then_move = then(rotation_about({0, 0}, kPi / 2), translation({5, 0}));
  EXPECT_LT(distance(apply(turn_then_move, Vec2{1, 0}), {5, 1}), 1e-12);
  Chance chance(23);
  for (int i = 0; i < 50; ++i) {
    const Affine f = rotation_about(chance.point(10), chance.number(-3, 3));
    const Affine g = then(mirror_x(chance.number(-5, 5)), translation(chance.point(7)));
    const Vec2 p = chance.point(100);
    EXPECT_LT(distance(apply(then(f, g), p), apply(g, apply(f, p))), 1e-10);
  }
  const Affine twice = then(mirror_x(3), mirror_x(3));
  EXPECT_EQ(apply(twice, Vec2{8, 2}), (Vec2{8, 2}));
}

}  // namespace
}  // namespace pinwright
