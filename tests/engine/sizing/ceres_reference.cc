#include "ceres_reference.h"

#include <cmath>

#include "tests/quiet_ceres.h"

namespace pinwright {
namespace {

// Ceres' own bounds are not used: its trust region holds the cost of the clipped step against what
// the unclipped one promised, and jams short of the answer where a bound presses hard (so on most
// of these problems). Here a bound that is passed costs weight * distance, the weight raised until
// the answer passes it by nothing that counts; the problem stays convex and once differentiable.
class Cost : public ceres::CostFunction {
 public:
  Cost(const LeastSquares& problem, const Eigen::VectorXd& unit, const double& weight)
      : problem_(problem), unit_(unit), weight_(weight) {
    set_num_residuals(static_cast<int>(problem.a.rows() + 2 * problem.a.cols()));
    mutable_parameter_block_sizes()->push_back(static_cast<int>(problem.a.cols()));
  }
  bool Evaluate(double const* const* parameters, double* residuals,
                double** jacobians) const override {
    const Eigen::Index n = problem_.a.cols();
    const Eigen::Index m = problem_.a.rows();
    const Eigen::VectorXd x =
        Eigen::Map<const Eigen::VectorXd>(parameters[0], n).cwiseProduct(unit_);
    Eigen::VectorXd r = Eigen::VectorXd::Zero(m + 2 * n);
    Eigen::MatrixXd j = Eigen::MatrixXd::Zero(m + 2 * n, n);
    r.head(m) = problem_.a * x - problem_.b;
    j.topRows(m) = problem_.a * unit_.asDiagonal();
    for (Eigen::Index i = 0; i < n; ++i) {
      if (problem_.least.size() > 0 && x[i] < problem_.least[i]) {
        r[m + i] = weight_ * (x[i] - problem_.least[i]) / unit_[i];
        j(m + i, i) = weight_;
      }
      if (problem_.most.size() > 0 && x[i] > problem_.most[i]) {
        r[m + n + i] = weight_ * (x[i] - problem_.most[i]) / unit_[i];
        j(m + n + i, i) = weight_;
      }
    }
    Eigen::Map<Eigen::VectorXd>(residuals, m + 2 * n) = r;
    if (jacobians == nullptr || jacobians[0] == nullptr) return true;
    for (Eigen::Index row = 0; row < j.rows(); ++row)
      for (Eigen::Index c = 0; c < n; ++c) jacobians[0][row * n + c] = j(row, c);
    return true;
  }

 private:
  const LeastSquares& problem_;
  const Eigen::VectorXd& unit_;
  const double& weight_;
};

}  // namespace

Eigen::VectorXd ceres_reference(const LeastSquares& problem) {
  const Eigen::VectorXd unit = problem.a.colwise().norm().transpose().cwiseInverse();
  Eigen::VectorXd s = Eigen::VectorXd::Zero(problem.a.cols());
  double weight = 1.0;
  ceres::Problem reference;
  reference.AddResidualBlock(new Cost(problem, unit, weight), nullptr, s.data());
  ceres::Solver::Options options;
  options.linear_solver_type = ceres::DENSE_QR;
  options.max_num_iterations = 500;
  options.initial_trust_region_radius = 1e16;
  options.max_trust_region_radius = 1e20;
  options.function_tolerance = 1e-17;
  options.gradient_tolerance = 1e-13;
  options.parameter_tolerance = 1e-14;
  options.logging_type = ceres::SILENT;
  for (weight = 1.0; weight < 3e5; weight *= 10.0) {
    ceres::Solver::Summary summary;
    ceres::Solve(options, &reference, &summary);
  }
  return s.cwiseProduct(unit);
}

}  // namespace pinwright
