#include "engine/constraint/solve.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "engine/constraint/qp.h"
#include "engine/constraint/residuals.h"
#include "engine/constraint/stiffness.h"
#include "engine/constraint/variables.h"

namespace pinwright {
namespace {

constexpr int kMostRounds = 60;
constexpr double kShortestShare = 1e-4;

Problem no_solution(const Constraints& constraints, const Residuals& r) {
  int worst = 0;
  for (int i = 1; i < r.count(); ++i)
    if (r.miss(i) > r.miss(worst)) worst = i;
  char amount[64];
  std::snprintf(amount, sizeof amount, "%.2f mm", r.miss(worst));
  const std::string relax = constraints.relax(worst);
  return {"no-solution", constraints.name(worst),
          "this cannot be met together with the rest: it stays out by " + std::string(amount),
          relax.empty() ? "take a smaller amount, or split the change between two places" : relax};
}

}  // namespace

Result<Redrawn> redraw(const Block& block, const System& system) {
  const Variables variables(block, system);
  const Constraints constraints(block, system, variables);
  Redrawn redrawn;
  SolveReport& report = redrawn.report;
  Eigen::VectorXd x = variables.start();
  Residuals now;
  constraints.at(x, now);
  if (now.count() == 0) return redrawn;
  double worst = now.worst();
  if (!std::isfinite(worst)) {
    return Problem{"no-solution", constraints.name(0), "the block has points that are not numbers",
                   "check the block first"};
  }
  if (variables.count() == 0) {
    if (worst <= kSolvedMm) return redrawn;
    return no_solution(constraints, now);
  }
  const Stiffness stiffness(variables, system.smoothness);
  std::vector<bool> working;
  Eigen::VectorXd step(variables.count());
  Residuals next;
  for (; report.rounds < kMostRounds; ++report.rounds) {
    solve_qp(now, stiffness, variables.start() - x, working, step);
    const double most = step.cwiseAbs().maxCoeff();
    if (!std::isfinite(most)) return no_solution(constraints, now);
    if (worst <= kSolvedMm && most <= kStillMm) break;
    double share = 1.0;
    double after = 0.0;
    for (; share >= kShortestShare; share *= 0.5) {
      constraints.at(x + share * step, next);
      after = next.worst();
      if (after < worst || after <= kSolvedMm) break;
    }
    if (share < kShortestShare) {
      if (worst <= kSolvedMm) break;
      return no_solution(constraints, now);
    }
    x += share * step;
    std::swap(now, next);
    worst = after;
  }
  report.worst = worst;
  if (report.worst > kSolvedMm) return no_solution(constraints, now);
  report.most_moved_mm = (x - variables.start()).cwiseAbs().maxCoeff();
  redrawn.edges = variables.curves(x, block);
  return redrawn;
}

void put(const Redrawn& redrawn, Block& block) {
  for (const auto& [at, curve] : redrawn.edges) block.pieces[at.piece].edges[at.edge].curve = curve;
}

Result<SolveReport> solve(Block& block, const System& system) {
  const Result<Redrawn> redrawn = redraw(block, system);
  if (!redrawn) return redrawn.problems();
  put(*redrawn, block);
  return redrawn->report;
}

}  // namespace pinwright
