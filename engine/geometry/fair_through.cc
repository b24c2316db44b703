#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "engine/geometry/fairing.h"
#include "engine/geometry/fairing_input.h"

namespace pinwright {
namespace {

/// Rounds of knots and tangents; each brings the knots nearer to the curve's own turns.
constexpr int kRounds = 4;
/// Weight that pulls the end derivatives' lengths to 1, and the most they may differ from it.
constexpr double kPull = 0.1;
constexpr double kMostChange = 0.5;

/// Length of every span from its chord and the directions at its ends.
std::vector<double> spans(const std::vector<Vec2>& p, const std::vector<Vec2>& directions) {
  std::vector<double> h(p.size() - 1);
  for (std::size_t i = 0; i < h.size(); ++i) {
    const Vec2 chord = p[i + 1] - p[i];
    const double angle =
        std::abs(turn(directions[i], chord)) + std::abs(turn(chord, directions[i + 1]));
    // past two thirds of a turn the span would grow without bound
    const double c = std::cos(std::min(angle, 4.0 * std::numbers::pi / 3.0) / 4.0);
    h[i] = norm(chord) / (c * c);
  }
  return h;
}

/// Derivatives of the clamped C2 spline at its points: a tridiagonal system that is diagonally
/// dominant, solved by elimination without pivots.
std::vector<Vec2> derivatives(const std::vector<Vec2>& p, const std::vector<double>& h, Vec2 first,
                              Vec2 last) {
  const std::size_t n = p.size();
  std::vector<Vec2> m(n);
  std::vector<double> upper(n, 0.0);
  m[0] = first, m[n - 1] = last;
  for (std::size_t i = 1; i + 1 < n; ++i) {
    const Vec2 right =
        3.0 * (h[i] / h[i - 1] * (p[i] - p[i - 1]) + h[i - 1] / h[i] * (p[i + 1] - p[i]));
    const double pivot = 2.0 * (h[i - 1] + h[i]) - h[i] * upper[i - 1];
    upper[i] = h[i - 1] / pivot;
    m[i] = (1.0 / pivot) * (right - h[i] * m[i - 1]);
  }
  for (std::size_t i = n - 2; i >= 1; --i) m[i] = m[i] - upper[i] * m[i + 1];
  return m;
}

/// Jumps of the third derivative at the inner points, made dimensionless with the spans there.
std::vector<Vec2> jumps(const std::vector<Vec2>& p, const std::vector<double>& h,
                        const std::vector<Vec2>& m) {
  std::vector<Vec2> third(h.size()), jump;
  for (std::size_t i = 0; i < h.size(); ++i) {
    third[i] = 6.0 / (h[i] * h[i]) * (m[i] + m[i + 1] - 2.0 / h[i] * (p[i + 1] - p[i]));
    if (i > 0) jump.push_back(h[i - 1] * h[i] * (third[i] - third[i - 1]));
  }
  return jump;
}

/// The lengths of the end derivatives (near 1) that make these jumps least. The spline is linear in
/// both lengths, so this is a least-squares problem of two unknowns.
std::pair<double, double> end_speeds(const std::vector<Vec2>& p, const std::vector<double>& h,
                                     Vec2 first, Vec2 last) {
  const std::vector<Vec2> base = jumps(p, h, derivatives(p, h, first, last));
  const std::vector<Vec2> with_a = jumps(p, h, derivatives(p, h, 2.0 * first, last));
  const std::vector<Vec2> with_b = jumps(p, h, derivatives(p, h, first, 2.0 * last));
  double aa = kPull, ab = 0.0, bb = kPull, ra = 0.0, rb = 0.0;
  for (std::size_t i = 0; i < base.size(); ++i) {
    const Vec2 da = with_a[i] - base[i], db = with_b[i] - base[i];
    aa += dot(da, da), ab += dot(da, db), bb += dot(db, db);
    ra -= dot(da, base[i]), rb -= dot(db, base[i]);
  }
  const double det = aa * bb - ab * ab;
  const auto kept = [](double change) {
    return 1.0 + (std::isfinite(change) ? std::clamp(change, -kMostChange, kMostChange) : 0.0);
  };
  return {kept((ra * bb - rb * ab) / det), kept((rb * aa - ra * ab) / det)};
}

}  // namespace

Result<Curve> fair_through(const std::vector<Vec2>& points, Vec2 start_tangent, Vec2 end_tangent) {
  if (Problems found = fairing_problems(points, start_tangent, end_tangent); !found.empty()) {
    return found;
  }
  const std::size_t n = points.size();
  const Vec2 first = unit(start_tangent), last = unit(end_tangent);
  // first guess of the directions: along the neighbours, the nearer one counting more
  std::vector<Vec2> m(n);
  m[0] = first, m[n - 1] = last;
  for (std::size_t i = 1; i + 1 < n; ++i) {
    const Vec2 in = points[i] - points[i - 1], out = points[i + 1] - points[i];
    m[i] = norm(out) / norm(in) * in + norm(in) / norm(out) * out;
  }
  std::vector<double> h;
  for (int round = 0; round < kRounds; ++round) {
    h = spans(points, m);
    const auto [a, b] = end_speeds(points, h, first, last);
    m = derivatives(points, h, a * first, b * last);
  }
  Curve c;
  c.points.reserve(3 * n - 2);
  c.points.push_back(points[0]);
  for (std::size_t i = 0; i + 1 < n; ++i) {
    c.points.push_back(points[i] + h[i] / 3.0 * m[i]);
    c.points.push_back(points[i + 1] - h[i] / 3.0 * m[i + 1]);
    c.points.push_back(points[i + 1]);
  }
  return c;
}

}  // namespace pinwright
