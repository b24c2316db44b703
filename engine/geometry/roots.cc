#include "engine/geometry/roots.h"

#include <algorithm>
#include <cmath>

namespace pinwright {
namespace {

constexpr double kSameRoot = 1e-9;

double value(const std::vector<double>& c, double t) {
  double v = 0.0;
  for (auto it = c.rbegin(); it != c.rend(); ++it) v = v * t + *it;
  return v;
}

/// The root between a and b, whose values differ in sign.
double bracketed_root(const std::vector<double>& c, double a, double b, double fa, double fb) {
  for (int i = 0; i < 120 && b - a > 0.0; ++i) {
    // every third step halves, so that a flat stretch cannot stall the secant
    double m = i % 3 == 2 ? 0.5 * (a + b) : a - fa * (b - a) / (fb - fa);
    if (!(m > a && m < b)) m = 0.5 * (a + b);
    if (m <= a || m >= b) break;
    const double fm = value(c, m);
    if (fm == 0.0) return m;
    if ((fm < 0.0) == (fa < 0.0)) {
      a = m, fa = fm;
    } else {
      b = m, fb = fm;
    }
  }
  return std::abs(fa) <= std::abs(fb) ? a : b;
}

std::vector<double> roots(const std::vector<double>& c, double touch) {
  std::vector<double> stops{0.0};
  if (c.size() > 2) {
    std::vector<double> slope(c.size() - 1);
    for (std::size_t i = 1; i < c.size(); ++i) slope[i - 1] = static_cast<double>(i) * c[i];
    for (const double t : roots(slope, 0.0)) {
      if (t > stops.back() && t < 1.0) stops.push_back(t);
    }
  }
  stops.push_back(1.0);

  std::vector<double> found;
  const auto add = [&](double t) {
    if (found.empty() || t - found.back() > kSameRoot) found.push_back(t);
  };
  for (std::size_t i = 0; i < stops.size(); ++i) {
    const double f = value(c, stops[i]);
    if (std::abs(f) <= touch) add(stops[i]);
    if (i + 1 == stops.size()) break;
    const double g = value(c, stops[i + 1]);
    // ends that already count as roots need no bracket
    if (std::abs(f) > touch && std::abs(g) > touch && (f < 0.0) != (g < 0.0)) {
      add(bracketed_root(c, stops[i], stops[i + 1], f, g));
    }
  }
  return found;
}

}  // namespace

std::vector<double> unit_roots(const std::vector<double>& c, double touch) {
  double scale = 0.0;
  for (const double v : c) {
    if (!std::isfinite(v)) return {};
    scale += std::abs(v);
  }
  if (c.empty() || scale <= touch) return {0.0, 1.0};
  std::vector<double> trimmed = c;
  while (trimmed.size() > 1 && trimmed.back() == 0.0) trimmed.pop_back();
  if (trimmed.size() == 1) return {};
  return roots(trimmed, touch);
}

std::vector<double> power_basis(double b0, double b1, double b2, double b3) {
  return {b0, 3.0 * (b1 - b0), 3.0 * (b2 - 2.0 * b1 + b0), b3 - 3.0 * b2 + 3.0 * b1 - b0};
}

}  // namespace pinwright
