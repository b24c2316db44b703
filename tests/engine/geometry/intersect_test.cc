#include "engine/geometry/intersect.h"

#include <gtest/gtest.h>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/tolerance.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

std::vector<Vec2> polyline(const Curve& c, int n) {
  std::vector<Vec2> p{c.start()};
  for (std::size_t s = 0; s < c.segments(); ++s) {
    for (int k = 1; k <= n; ++k) p.push_back(point(c, {s, static_cast<double>(k) / n}));
  }
  return p;
}

struct Seen {
  Vec2 point;
  double sine = 0.0;  ///< of the angle between the two
};

/// Proper crossings of two polylines, every line against every line.
std::vector<Seen> brute(const std::vector<Vec2>& a, const std::vector<Vec2>& b, bool self) {
  std::vector<Seen> seen;
  for (std::size_t i = 0; i + 1 < a.size(); ++i) {
    const Vec2 low{std::min(a[i].x, a[i + 1].x), std::min(a[i].y, a[i + 1].y)};
    const Vec2 high{std::max(a[i].x, a[i + 1].x), std::max(a[i].y, a[i + 1].y)};
    for (std::size_t j = self ? i + 2 : 0; j + 1 < b.size(); ++j) {
      if (std::max(b[j].x, b[j + 1].x) < low.x || std::min(b[j].x, b[j + 1].x) > high.x ||
          std::max(b[j].y, b[j + 1].y) < low.y || std::min(b[j].y, b[j + 1].y) > high.y) {
        continue;
      }
      const Vec2 da = a[i + 1] - a[i], db = b[j + 1] - b[j];
      const double det = cross(da, db);
      const double u = cross(b[j] - a[i], db) / det, v = cross(b[j] - a[i], da) / det;
      if (u >= 0 && u < 1 && v >= 0 && v < 1) {
        seen.push_back({a[i] + u * da, std::abs(det) / (norm(da) * norm(db))});
      }
    }
  }
  return seen;
}

/// Each clear crossing that brute force saw is found, and each found place is on both curves.
void expect_agreement(const std::vector<Crossing>& found, const std::vector<Seen>& seen,
                      const Curve& a, const Curve& b, int i) {
  std::size_t clear = 0;
  for (const Seen& s : seen) {
    if (s.sine < 0.02) continue;
    ++clear;
    const bool there = std::any_of(found.begin(), found.end(), [&](const Crossing& c) {
      return distance(c.point, s.point) < 0.05 / s.sine;
    });
    EXPECT_TRUE(there) << "case " << i << " at " << s.point.x << ", " << s.point.y;
  }
  if (clear == seen.size()) {
    EXPECT_EQ(found.size(), seen.size()) << "case " << i;
  }
  for (const Crossing& c : found) {
    EXPECT_LE(distance(point(a, c.on_a), point(b, c.on_b)), kCoincidentMm) << "case " << i;
    EXPECT_LE(distance(point(a, c.on_a), c.point), kCoincidentMm) << "case " << i;
  }
}

TEST(Intersect, RandomCurvesAgainstPolylines) {
  Chance chance(51);
  std::size_t total = 0;
  for (int i = 0; i < 120; ++i) {
    const Curve a = chance.curve(2, 200), b = chance.curve(2, 200);
    const std::vector<Crossing> found = intersections(a, b);
    expect_agreement(found, brute(polyline(a, 300), polyline(b, 300), false), a, b, i);
    total += found.size();
  }
  EXPECT_GT(total, 200u);  // the cases are not idle
}

TEST(Intersect, OrderOfTheTwoDoesNotMatter) {
  Chance chance(52);
  for (int i = 0; i < 60; ++i) {
    const Curve a = chance.curve(2, 200), b = chance.curve(3, 200);
    std::vector<Crossing> ab = intersections(a, b), ba = intersections(b, a);
    ASSERT_EQ(ab.size(), ba.size()) << "case " << i;
    for (const Crossing& c : ab) {
      EXPECT_TRUE(std::any_of(ba.begin(), ba.end(), [&](const Crossing& d) {
        return distance(c.point, d.point) <= 2 * kCoincidentMm;
      }));
    }
    for (std::size_t k = 1; k < ab.size(); ++k) {
      EXPECT_LE(static_cast<double>(ab[k - 1].on_a.segment) + ab[k - 1].on_a.t,
                static_cast<double>(ab[k].on_a.segment) + ab[k].on_a.t);
    }
  }
}

TEST(Intersect, StraightLinesMeetExactly) {
  const auto x = intersections(straight_curve({0, 0}, {10, 10}), straight_curve({0, 10}, {10, 0}));
  ASSERT_EQ(x.size(), 1u);
  EXPECT_LT(distance(x[0].point, {5, 5}), 1e-10);
  EXPECT_NEAR(x[0].on_a.t, 0.5, 1e-12);
}

TEST(Intersect, NineCrossingsOfTwoS) {
  // the most that Bezout allows two cubics
  const Curve a{{{0, 0}, {200, 520}, {-100, -420}, {100, 100}}};
  const Curve b{{{0, 0}, {520, 200}, {-420, -100}, {100, 100}}};
  const auto seen = brute(polyline(a, 5000), polyline(b, 5000), false);
  const auto found = intersections(a, b);
  // the shared ends are found too, whatever the polylines make of them
  EXPECT_GE(found.size(), 5u);
  for (const Seen& s : seen) {
    EXPECT_TRUE(std::any_of(found.begin(), found.end(),
                            [&](const Crossing& c) { return distance(c.point, s.point) < 0.1; }));
  }
}

TEST(Intersect, ACornerOnTheOtherCurveCountsOnce) {
  const Curve v = joined(straight_curve({-10, 10}, {0, 0}), straight_curve({0, 0}, {10, 10}));
  const auto touch = intersections(v, straight_curve({-20, 0}, {20, 0}));
  ASSERT_EQ(touch.size(), 1u);
  EXPECT_LT(norm(touch[0].point), 1e-9);
  const auto through = intersections(v, straight_curve({0, -5}, {0, 5}));
  EXPECT_EQ(through.size(), 1u);
}

TEST(Intersect, SharedEndIsFound) {
  const Curve a{{{0, 0}, {10, 30}, {40, 50}, {100, 60}}};
  const Curve b{{{100, 60}, {120, 40}, {150, 0}, {160, 10}}};
  const auto x = intersections(a, b);
  ASSERT_EQ(x.size(), 1u);
  EXPECT_EQ(x[0].on_a.t, 1.0);
  EXPECT_EQ(x[0].on_b.t, 0.0);
}

TEST(Intersect, TouchingCirclesTouchOnce) {
  const Curve left = arc({0, 0}, 50, -1, 2, 1);
  for (const double gap : {0.0, 5e-7}) {
    const Curve right = arc({100 + gap, 0}, 50, kPi - 1, 2, 1);
    // symmetric cubics touch at their middles, which bulge by the same little
    const double shift = 2 * (point(left, {0, 0.5}).x - 50);
    Curve moved = right;
    for (Vec2& p : moved.points) p.x += shift;
    const auto x = intersections(left, moved);
    ASSERT_EQ(x.size(), 1u) << gap;
    EXPECT_LT(std::abs(x[0].point.y), 0.05);
  }
  const Curve apart = arc({100.01, 0}, 50, kPi - 1, 2, 1);
  EXPECT_TRUE(intersections(left, apart).empty());
  const Curve deeper = arc({99.99, 0}, 50, kPi - 1, 2, 1);
  EXPECT_EQ(intersections(left, deeper).size(), 2u);
}

TEST(Intersect, TouchFromInside) {
  const Curve arch{{{0, 0}, {0, 40}, {100, 40}, {100, 0}}};
  EXPECT_EQ(intersections(arch, straight_curve({-10, 30}, {110, 30})).size(), 1u);
  EXPECT_EQ(intersections(arch, straight_curve({-10, 30 - 1e-3}, {110, 30 - 1e-3})).size(), 2u);
  EXPECT_EQ(intersections(arch, straight_curve({-10, 30 + 1e-3}, {110, 30 + 1e-3})).size(), 0u);
}

TEST(Intersect, OverlapGivesItsEnds) {
  Chance chance(53);
  const Curve c{{{0, 0}, {20, 60}, {70, 70}, {120, 10}}};
  const auto whole = intersections(c, c);
  ASSERT_EQ(whole.size(), 2u);
  EXPECT_EQ(whole[0].point, c.start());
  EXPECT_EQ(whole[1].point, c.end());
  const Curve part = split(split(c, {0, 0.3}).second, {0, 0.5}).first;
  for (const Curve& p : {part, reversed(part)}) {
    const auto x = intersections(c, p);
    ASSERT_EQ(x.size(), 2u);
    EXPECT_NEAR(x[0].on_a.t, 0.3, 1e-6);
    EXPECT_NEAR(x[1].on_a.t, 0.65, 1e-6);
  }
  // cut at different places: one stretch still
  const auto [p1, p2] = split(c, {0, 0.4});
  const auto [q1, q2] = split(c, {0, 0.7});
  const auto x = intersections(joined(p1, p2), joined(q1, q2));
  ASSERT_EQ(x.size(), 2u);
  EXPECT_EQ(x[0].point, c.start());
  EXPECT_EQ(x[1].point, c.end());
}

TEST(Intersect, CollinearLines) {
  const Curve a = straight_curve({0, 0}, {100, 0});
  const auto overlap = intersections(a, straight_curve({150, 0}, {60, 0}));
  ASSERT_EQ(overlap.size(), 2u);
  EXPECT_LT(distance(overlap[0].point, {60, 0}), 1e-6);
  EXPECT_LT(distance(overlap[1].point, {100, 0}), 1e-6);
  EXPECT_EQ(intersections(a, straight_curve({100, 0}, {200, 0})).size(), 1u);
  EXPECT_EQ(intersections(a, straight_curve({101, 0}, {200, 0})).size(), 0u);
  EXPECT_EQ(intersections(a, straight_curve({0, 1e-3}, {100, 1e-3})).size(), 0u);
}

TEST(SelfIntersect, LoopOfOneCubicAgainstPolylines) {
  Chance chance(54);
  int loops = 0;
  for (int i = 0; i < 300; ++i) {
    const Curve c = chance.curve(1, 100);
    const auto seen = brute(polyline(c, 400), polyline(c, 400), true);
    const auto found = self_intersections(c);
    if (!seen.empty() && seen[0].sine > 0.05) {
      ASSERT_EQ(found.size(), 1u) << "case " << i;
      EXPECT_LT(distance(found[0].point, seen[0].point), 0.2);
      EXPECT_LT(distance(point(c, found[0].on_a), point(c, found[0].on_b)), 1e-7);
      EXPECT_LT(found[0].on_a.t, found[0].on_b.t);
      ++loops;
    } else if (seen.empty() && !found.empty()) {
      // a loop too small for the polyline
      EXPECT_LT(found[0].on_b.t - found[0].on_a.t, 0.1) << "case " << i;
    }
  }
  EXPECT_GT(loops, 10);
}

TEST(SelfIntersect, ChainsAgainstPolylines) {
  Chance chance(55);
  for (int i = 0; i < 60; ++i) {
    const Curve c = chance.curve(3, 200);
    expect_agreement(self_intersections(c), brute(polyline(c, 300), polyline(c, 300), true), c, c,
                     i);
  }
}

TEST(SelfIntersect, JointsAndClosingDoNotCount) {
  EXPECT_TRUE(self_intersections(arc({0, 0}, 80, 0, 2 * kPi, 4)).empty());
  EXPECT_TRUE(self_intersections(arc({0, 0}, 80, 0, 2 * kPi, 2)).empty());
  EXPECT_TRUE(self_intersections(arc({0, 0}, 80, 0, 1.5 * kPi, 3)).empty());
  // a drop: one cubic closed onto its start
  EXPECT_TRUE(self_intersections(Curve{{{0, 0}, {-50, 80}, {50, 80}, {0, 0}}}).empty());
  // three edges of a triangle
  const Curve triangle =
      chain({straight({0, 0}, {9, 0}), straight({9, 0}, {0, 9}), straight({0, 9}, {0, 0})});
  EXPECT_TRUE(self_intersections(triangle).empty());
  // a straight line cut into three, and one with a piece shrunk to a point
  const Curve line =
      chain({straight({0, 0}, {3, 1}), straight({3, 1}, {6, 2}), straight({6, 2}, {9, 3})});
  EXPECT_TRUE(self_intersections(line).empty());
  const Curve dot =
      chain({straight({0, 0}, {3, 1}), straight({3, 1}, {3, 1}), straight({3, 1}, {9, 4})});
  EXPECT_TRUE(self_intersections(dot).empty());
}

TEST(SelfIntersect, TurningBackOnItselfCounts) {
  const Curve back = chain({straight({0, 0}, {10, 0}), straight({10, 0}, {4, 0})});
  EXPECT_FALSE(self_intersections(back).empty());
  const Curve inside{{{0, 0}, {20, 0}, {-5, 0}, {10, 0}}};
  EXPECT_FALSE(self_intersections(inside).empty());
  const Curve plain{{{0, 0}, {1, 0}, {2, 0}, {10, 0}}};
  EXPECT_TRUE(self_intersections(plain).empty());
}

}  // namespace
}  // namespace pinwright
