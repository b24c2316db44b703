#include "ceres_system.h"

#include <Eigen/Cholesky>

#include "engine/constraint/residuals.h"
#include "engine/constraint/stiffness.h"
#include "tests/quiet_ceres.h"

namespace pinwright {
namespace {

class Cost : public ceres::CostFunction {
 public:
  Cost(const Constraints& constraints, const Variables& variables, double smoothness,
       const double& weight, const Eigen::VectorXd& shift)
      : constraints_(constraints),
        start_(variables.start()),
        root_(Eigen::LLT<Eigen::MatrixXd>(Stiffness::dense(variables, smoothness)).matrixU()),
        weight_(weight),
        shift_(shift) {
    set_num_residuals(variables.count() + constraints.count());
    mutable_parameter_block_sizes()->push_back(variables.count());
  }

  bool Evaluate(double const* const* parameters, double* residuals,
                double** jacobians) const override {
    const Eigen::Index n = start_.size();
    const Eigen::VectorXd x = Eigen::Map<const Eigen::VectorXd>(parameters[0], n);
    Residuals r;
    constraints_.at(x, r);
    const Eigen::Index m = r.count();
    Eigen::Map<Eigen::VectorXd> out(residuals, n + m);
    out.head(n) = root_ * (x - start_);
    out.tail(m) = weight_ * (Eigen::Map<const Eigen::VectorXd>(r.value.data(), m) + shift_);
    if (jacobians == nullptr || jacobians[0] == nullptr) return true;
    Eigen::Map<Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>> j(
        jacobians[0], n + m, n);
    j.topRows(n) = root_;
    j.bottomRows(m) = weight_ * r.jacobian(static_cast<int>(n));
    return true;
  }

 private:
  const Constraints& constraints_;
  Eigen::VectorXd start_;
  Eigen::MatrixXd root_;
  const double& weight_;
  const Eigen::VectorXd& shift_;
};

}  // namespace

double ceres_solve(Block& block, const System& system, double weight, int rounds) {
  const Variables variables(block, system);
  const Constraints constraints(block, system, variables);
  Eigen::VectorXd x = variables.start();
  Eigen::VectorXd shift = Eigen::VectorXd::Zero(constraints.count());
  ceres::Problem problem;
  problem.AddResidualBlock(new Cost(constraints, variables, system.smoothness, weight, shift),
                           nullptr, x.data());
  ceres::Solver::Options options;
  options.linear_solver_type = ceres::DENSE_QR;
  options.function_tolerance = 1e-16;
  options.gradient_tolerance = 1e-14;
  options.parameter_tolerance = 1e-14;
  options.max_num_iterations = 200;
  options.logging_type = ceres::SILENT;
  Residuals r;
  for (int round = 0; round < rounds; ++round) {
    ceres::Solver::Summary summary;
    ceres::Solve(options, &problem, &summary);
    constraints.at(x, r);
    shift += Eigen::Map<const Eigen::VectorXd>(r.value.data(), r.count());
  }
  for (const auto& [at, curve] : variables.curves(x, block))
    block.pieces[at.piece].edges[at.edge].curve = curve;
  return r.worst();
}

}  // namespace pinwright
