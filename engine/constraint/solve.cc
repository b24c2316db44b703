#include "engine/constraint/solve.h"

#include <Eigen/Cholesky>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "engine/constraint/residuals.h"
#include "engine/constraint/variables.h"

namespace pinwright {
namespace {

constexpr int kMostRounds = 60;

// W + s D2^T D2, with D2 over the moving control points of each edge.
Eigen::MatrixXd hessian(const Variables& variables, double smoothness) {
  const int n = variables.count();
  Eigen::MatrixXd h = Eigen::MatrixXd::Identity(n, n);
  constexpr double kSecond[3] = {1.0, -2.0, 1.0};
  const auto add_row = [&](const Coordinate* a, const Coordinate* b, const Coordinate* c) {
    const Coordinate* parts[3] = {a, b, c};
    for (int i = 0; i < 3; ++i) {
      for (int j = 0; j < 3; ++j) {
        for (std::size_t k = 0; k < 2; ++k) {
          for (std::size_t l = 0; l < 2; ++l) {
            if (parts[i]->unknown[k] < 0 || parts[j]->unknown[l] < 0) continue;
            h(parts[i]->unknown[k], parts[j]->unknown[l]) +=
                smoothness * kSecond[i] * parts[i]->factor[k] * kSecond[j] * parts[j]->factor[l];
          }
        }
      }
    }
  };
  for (const auto& [at, controls] : variables.edges()) {
    for (std::size_t i = 1; i + 1 < controls.size(); ++i) {
      add_row(&controls[i - 1].x, &controls[i].x, &controls[i + 1].x);
      add_row(&controls[i - 1].y, &controls[i].y, &controls[i + 1].y);
    }
  }
  return h;
}

Problem no_solution(const Constraints& constraints, const Eigen::VectorXd& residual) {
  Eigen::Index worst = 0;
  residual.cwiseAbs().maxCoeff(&worst);
  char amount[64];
  std::snprintf(amount, sizeof amount, "%.2f mm", std::abs(residual[worst]));
  const std::string name = constraints.name(static_cast<int>(worst));
  return {"no-solution", name,
          "this cannot be met together with the rest: it stays out by " + std::string(amount),
          "take a smaller amount, or split the change between two places"};
}

}  // namespace

Result<SolveReport> solve(Block& block, const System& system) {
  const Variables variables(block, system);
  const Constraints constraints(block, system, variables);
  SolveReport report;
  Eigen::VectorXd x = variables.start();
  Residuals now = constraints.at(x);
  if (now.value.size() == 0) return report;
  if (!now.value.allFinite()) {
    return Problem{"no-solution", constraints.name(0), "the block has points that are not numbers",
                   "check the block first"};
  }
  if (variables.count() == 0) {
    if (now.value.cwiseAbs().maxCoeff() <= kSolvedMm) return report;
    return no_solution(constraints, now.value);
  }
  const Eigen::LLT<Eigen::MatrixXd> h(hessian(variables, system.smoothness));
  for (report.rounds = 0; report.rounds < kMostRounds; ++report.rounds) {
    // min 1/2 (x + d - x0)^T H (x + d - x0)  such that  J d = -c:  with e = x0 - x,
    // d = e + H^-1 J^T m  and  (J H^-1 J^T) m = -c - J e.
    const Eigen::VectorXd to_start = variables.start() - x;
    const Eigen::MatrixXd hinv_jt = h.solve(now.jacobian.transpose());
    const Eigen::MatrixXd schur = now.jacobian * hinv_jt;
    const Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> factor(schur);
    const Eigen::VectorXd multiplier = factor.solve(-now.value - now.jacobian * to_start);
    const Eigen::VectorXd step = to_start + hinv_jt * multiplier;

    const double before = now.value.cwiseAbs().maxCoeff();
    if (before <= kSolvedMm && step.cwiseAbs().maxCoeff() <= 1e-6) break;
    double share = 1.0;
    Residuals next;
    for (;; share *= 0.5) {
      next = constraints.at(x + share * step);
      const double after = next.value.cwiseAbs().maxCoeff();
      if (std::isfinite(after) && (after < before || after <= kSolvedMm)) break;
      if (share < 1e-4) {
        if (before <= kSolvedMm) break;
        return no_solution(constraints, now.value);
      }
    }
    if (share < 1e-4) break;
    x += share * step;
    now = std::move(next);
  }
  report.worst = now.value.cwiseAbs().maxCoeff();
  if (report.worst > kSolvedMm) return no_solution(constraints, now.value);
  report.most_moved_mm = (x - variables.start()).cwiseAbs().maxCoeff();
  variables.write(x, block);
  return report;
}

}  // namespace pinwright
