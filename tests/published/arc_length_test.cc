// Arc length against curves whose lengths are known outside of this project.
#include "engine/geometry/arc_length.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/geometry/fairing.h"
#include "engine/geometry/transform.h"

namespace pinwright {
namespace {

constexpr double kPi = std::numbers::pi;

/// A quarter circle from (r, 0) to (0, r) in n equal cubics, handles 4/3 tan(step / 4) r.
Curve quarter(double r, int n) {
  Curve c;
  const double step = kPi / 2 / n, k = 4.0 / 3.0 * std::tan(step / 4) * r;
  for (int i = 0; i <= n; ++i) {
    const Vec2 out{std::cos(i * step), std::sin(i * step)}, d = k * left_normal(out);
    if (i > 0) c.points.push_back(r * out - d);
    c.points.push_back(r * out);
    if (i < n) c.points.push_back(r * out + d);
  }
  return c;
}

// Source: the standard cubic for a quarter circle, k = 4/3 (sqrt 2 - 1), lies nowhere inside the
// circle and at most 2.73e-4 of the radius outside of it (M. Goldapp, Approximation of circular
// arcs by cubic polynomials, CAGD 8, 1991; the figure from memory, and measured again below).
constexpr double kRadialError = 2.73e-4;

TEST(PublishedArcLength, QuarterCircleStandardCubic) {
  const double r = 100.0, k = 4.0 / 3.0 * (std::sqrt(2.0) - 1.0) * r;
  const Curve c{{{r, 0}, {r, k}, {k, r}, {0, r}}};
  double low = 1e300, high = 0.0;
  for (int i = 0; i <= 10000; ++i) {
    const double radius = norm(point(c, {0, i / 10000.0})) / r;
    low = std::min(low, radius), high = std::max(high, radius);
  }
  EXPECT_NEAR(low, 1.0, 1e-12);
  EXPECT_LT(high - 1.0, kRadialError);
  EXPECT_GT(high - 1.0, 0.99 * kRadialError);
  // Four such quarters are a convex line between the circles of radius r and (1 + error) r. Of
  // convex lines the outer one is the longer (Archimedes, On the Sphere and Cylinder I, second
  // assumption), so the length lies between pi r / 2 and (1 + error) pi r / 2.
  EXPECT_EQ(inflections(c), 0);
  const double circle = kPi / 2 * r;
  EXPECT_GT(length(c), circle);
  EXPECT_LT(length(c), (1.0 + kRadialError) * circle);
}

TEST(PublishedArcLength, FinerArcsTendToTheCircle) {
  // the radial error of an arc falls with the sixth power of its angle (same source)
  for (const int n : {2, 3, 4, 8}) {
    const double circle = kPi / 2 * 100.0, error = kRadialError / std::pow(n, 6);
    const double measured = length(quarter(100.0, n));
    EXPECT_GT(measured, circle * (1 - 1e-12)) << n;
    EXPECT_LT(measured, circle * (1 + error)) << n;
  }
}

// Source: a quarter of an ellipse with half axes a >= b is a E(k) long, k^2 = 1 - b^2 / a^2, E the
// complete elliptic integral of the second kind (NIST Digital Library of Mathematical Functions,
// 19.30(i)); its values come from the C++ standard library.
TEST(PublishedArcLength, EllipseQuarterAgainstEllipticIntegral) {
  for (const auto& [a, b] :
       {std::pair{100.0, 100.0}, {100.0, 50.0}, {180.0, 40.0}, {250.0, 12.0}}) {
    const double k = std::sqrt(1.0 - b * b / (a * a));
    const double exact = a * std::ellint_2(k, kPi / 2);
    // a finely cut circle, stretched: the convex line lies between the ellipse and the ellipse
    // enlarged by the radial error, so the relative bound stays
    const int n = 16;
    const Curve c = apply(Affine{a, 0, 0, b, {}}, quarter(1.0, n));
    const double error = kRadialError / std::pow(n, 6);
    EXPECT_NEAR(length(c) / exact, 1.0, error + 1e-12) << a << " by " << b;
  }
}

TEST(PublishedArcLength, EllipseQuarterFairedThroughItsPoints) {
  const double a = 180.0, b = 90.0;
  std::vector<Vec2> points;
  for (int i = 0; i <= 32; ++i) {
    points.push_back({a * std::cos(i * kPi / 64), b * std::sin(i * kPi / 64)});
  }
  const Result<Curve> c = fair_through(points, {0, 1}, {-1, 0});
  ASSERT_TRUE(c.ok());
  const double exact = a * std::ellint_2(std::sqrt(1.0 - b * b / (a * a)), kPi / 2);
  EXPECT_NEAR(length(*c) / exact, 1.0, 1e-6);
}

}  // namespace
}  // namespace pinwright
