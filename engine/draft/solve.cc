#include "engine/draft/solve.h"

#include <Eigen/Dense>
#include <cmath>

namespace pinwright::drafting {
namespace {

Eigen::VectorXd as_vector(const std::vector<double>& v) {
  return Eigen::Map<const Eigen::VectorXd>(v.data(), static_cast<Eigen::Index>(v.size()));
}

Unknowns moved(const Unknowns& x, const Eigen::VectorXd& step, double share) {
  Unknowns y = x;
  for (std::size_t i = 0; i < y.size(); ++i) y[i] += share * step[static_cast<Eigen::Index>(i)];
  return y;
}

}  // namespace

bool solve(Unknowns& x, const Equations& equations, double tolerance) {
  constexpr int kMostSteps = 60;
  constexpr double kProbe = 1e-5;
  const auto n = static_cast<Eigen::Index>(x.size());
  Eigen::VectorXd r = as_vector(equations(x));
  if (r.size() != n || !r.allFinite()) return false;
  for (int step = 0; step < kMostSteps; ++step) {
    if (r.lpNorm<Eigen::Infinity>() < tolerance) return true;
    Eigen::MatrixXd jacobian(n, n);
    for (Eigen::Index j = 0; j < n; ++j) {
      Unknowns up = x;
      Unknowns down = x;
      up[static_cast<std::size_t>(j)] += kProbe;
      down[static_cast<std::size_t>(j)] -= kProbe;
      jacobian.col(j) = (as_vector(equations(up)) - as_vector(equations(down))) / (2.0 * kProbe);
    }
    if (!jacobian.allFinite()) return false;
    const Eigen::FullPivLU<Eigen::MatrixXd> lu(jacobian);
    if (!lu.isInvertible()) return false;
    const Eigen::VectorXd full = lu.solve(-r);
    bool better = false;
    for (double share = 1.0; share > 1e-4 && !better; share /= 2.0) {
      const Unknowns y = moved(x, full, share);
      const Eigen::VectorXd s = as_vector(equations(y));
      if (s.allFinite() && s.norm() < r.norm()) {
        x = y;
        r = s;
        better = true;
      }
    }
    if (!better) return false;
  }
  return r.lpNorm<Eigen::Infinity>() < tolerance;
}

bool bisect(double low, double high, const std::function<double(double)>& f, double& t) {
  double at_low = f(low);
  const double at_high = f(high);
  if (!std::isfinite(at_low) || !std::isfinite(at_high) || (at_low > 0.0) == (at_high > 0.0)) {
    return false;
  }
  for (int i = 0; i < 200; ++i) {
    const double middle = low + (high - low) / 2.0;
    if (middle == low || middle == high) break;
    const double here = f(middle);
    if ((here > 0.0) == (at_low > 0.0)) {
      low = middle;
      at_low = here;
    } else {
      high = middle;
    }
  }
  t = low + (high - low) / 2.0;
  return true;
}

}  // namespace pinwright::drafting
