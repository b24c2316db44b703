#include "engine/geometry/fairing.h"

#include <gtest/gtest.h>

#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

double worst_from_circle(const Curve& c, double r) {
  double worst = 0.0;
  for (std::size_t s = 0; s < c.segments(); ++s) {
    for (int k = 0; k <= 200; ++k) {
      worst = std::max(worst, std::abs(norm(point(c, {s, k / 200.0})) - r));
    }
  }
  return worst;
}

std::vector<Vec2> on_circle(double r, const std::vector<double>& degrees) {
  std::vector<Vec2> p;
  for (const double d : degrees) {
    p.push_back({r * std::cos(d * kPi / 180), r * std::sin(d * kPi / 180)});
  }
  return p;
}

TEST(FairThrough, CirclePointsGiveTheCircle) {
  for (const auto& degrees : std::vector<std::vector<double>>{{0, 90},
                                                              {0, 45, 90},
                                                              {0, 30, 60, 90},
                                                              {0, 20, 90},
                                                              {0, 10, 30, 90},
                                                              {0, 5, 50, 60, 90}}) {
    // tangents of any length
    const auto c = fair_through(on_circle(120, degrees), {0, 5}, {-0.01, 0});
    ASSERT_TRUE(c.ok());
    EXPECT_LT(worst_from_circle(*c, 120), 1e-3 * 120) << degrees.size() << " points";
    EXPECT_EQ(inflections(*c), 0);
  }
}

TEST(FairThrough, MeetsPointsAndTangentsAndIsC2) {
  Chance chance(61);
  for (int i = 0; i < 100; ++i) {
    std::vector<Vec2> p;
    for (int k = 0; k < 6; ++k) p.push_back(chance.point(100) + Vec2{60.0 * k, 0});
    const Vec2 t0 = chance.point(2) - Vec2{1, 1}, t1 = chance.point(2) - Vec2{1, 1};
    const auto made = fair_through(p, t0, t1);
    ASSERT_TRUE(made.ok());
    const Curve& c = *made;
    ASSERT_EQ(c.segments(), 5u);
    for (std::size_t k = 0; k < 5; ++k) EXPECT_EQ(c.segment(k).p[0], p[k]);
    EXPECT_EQ(c.end(), p[5]);
    EXPECT_NEAR(turn(start_tangent(c), t0), 0.0, 1e-9);
    EXPECT_NEAR(turn(end_tangent(c), t1), 0.0, 1e-9);
    for (std::size_t k = 0; k + 1 < 5; ++k) {
      const Cubic a = c.segment(k), b = c.segment(k + 1);
      EXPECT_NEAR(turn(tangent(a, 1), tangent(b, 0)), 0.0, 1e-7);
      EXPECT_NEAR(curvature(a, 1), curvature(b, 0), 1e-6 * (1 + std::abs(curvature(a, 1))));
    }
  }
}

TEST(FairThrough, NoOtherInterpolantOnItsKnotsBendsLess) {
  // Holladay: moving the inner derivatives of the same Hermite pieces only adds energy
  const std::vector<Vec2> p{{0, 0}, {40, 30}, {90, 35}, {140, 0}};
  const Curve c = *fair_through(p, {1, 1}, {1, -2});
  std::vector<double> h;  // knots, but for scale: |handle| = h / 3 |m|, m equal at a joint
  for (std::size_t k = 0; k < 3; ++k) h.push_back(1.0);
  for (std::size_t k = 1; k < 3; ++k) {
    h[k] = h[k - 1] * distance(c.points[3 * k], c.points[3 * k + 1]) /
           distance(c.points[3 * k], c.points[3 * k - 1]);
  }
  const auto energy = [&](const Curve& q) {
    double sum = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
      // |B''|^2 is a quadratic: Simpson's rule is exact; d/du = d/dt / h
      const auto e = [&](double t) {
        const Vec2 d = second_derivative(q.segment(k), t);
        return dot(d, d) / std::pow(h[k], 3);
      };
      sum += (e(0) + 4 * e(0.5) + e(1)) / 6;
    }
    return sum;
  };
  const double least = energy(c);
  Chance chance(62);
  for (int i = 0; i < 50; ++i) {
    Curve q = c;
    for (std::size_t k = 1; k < 3; ++k) {
      const Vec2 dm = chance.point(0.2) - Vec2{0.1, 0.1};
      q.points[3 * k - 1] = q.points[3 * k - 1] - h[k - 1] / 3 * dm;
      q.points[3 * k + 1] = q.points[3 * k + 1] + h[k] / 3 * dm;
    }
    EXPECT_GT(energy(q), least);
  }
}

TEST(FairThrough, PointsOnALineGiveTheLine) {
  const auto c = fair_through({{0, 0}, {10, 5}, {60, 30}}, {2, 1}, {2, 1});
  ASSERT_TRUE(c.ok());
  for (const Vec2& q : c->points) EXPECT_NEAR(q.y, q.x / 2, 1e-12);
}

TEST(FairThrough, TellsEveryProblem) {
  const auto bad = fair_through({{0, 0}, {0, 0}, {NAN, 1}, {5, 5}}, {0, 0}, {1, INFINITY});
  ASSERT_FALSE(bad.ok());
  ASSERT_EQ(bad.problems().size(), 4u);
  EXPECT_EQ(bad.problems()[0].code, "fairing-points");
  EXPECT_EQ(bad.problems()[0].place, "point 1");
  EXPECT_EQ(bad.problems()[1].place, "point 2");
  EXPECT_EQ(bad.problems()[2].code, "fairing-tangent");
  EXPECT_EQ(bad.problems()[3].place, "end tangent");
  EXPECT_FALSE(fair_through({}, {1, 0}, {1, 0}).ok());
  EXPECT_FALSE(fair_through({{1, 1}}, {1, 0}, {1, 0}).ok());
}

TEST(Inflections, CountsChangesOfSign) {
  EXPECT_EQ(inflections(straight_curve({0, 0}, {50, 80})), 0);
  EXPECT_EQ(inflections(arc({0, 0}, 50, 0, 5, 4)), 0);
  EXPECT_EQ(inflections(Curve{{{0, 0}, {40, 60}, {60, -60}, {100, 0}}}), 1);
  EXPECT_EQ(inflections(joined(arc({0, 0}, 50, kPi, -kPi / 2, 1),
                               Curve{{{0, 50}, {30, 50}, {60, 60}, {60, 90}}})),
            1);
  // a cubic with two
  EXPECT_EQ(inflections(Curve{{{0, 0}, {120, 40}, {-40, 41}, {80, 0}}}), 0);
  EXPECT_EQ(inflections(Curve{{{0, 0}, {30, 50}, {31, -10}, {100, 10}}}), 1);
  EXPECT_EQ(inflections(Curve{}), 0);
}

TEST(Inflections, CornersCountWhenTheyTurnTheOtherWay) {
  const Curve bow = arc({0, 0}, 50, 0, kPi / 2, 1);  // turns left, ends at (0, 50) going -x
  EXPECT_EQ(inflections(joined(bow, straight_curve({0, 50}, {-10, 40}))), 0);
  EXPECT_EQ(inflections(joined(bow, straight_curve({0, 50}, {-10, 60}))), 1);
  EXPECT_EQ(inflections(joined(bow, straight_curve({0, 50}, {-100, 50.5}))), 0);  // 0.3 degrees
}

}  // namespace
}  // namespace pinwright
