#include "engine/sizing/search.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/sizing/bounded_least_squares.h"

namespace pinwright {
namespace {

constexpr int kMostRounds = 12;
constexpr int kMostRefusals = 16;
constexpr double kStillMm = 0.01;  // amounts that move less have settled
constexpr double kTrustMm = 0.25;  // a refused bound is known to this
constexpr double kWithin = 0.8;    // share of a band aimed at, for what is not linear

class Search {
 public:
  Search(const Block& block, const Rows& rows, std::vector<Unknown>& unknowns, int& alterations)
      : block_(block), rows_(rows), unknowns_(unknowns), alterations_(alterations) {}

  Found run() {
    const auto n = static_cast<Eigen::Index>(unknowns_.size());
    found_.jacobian = first_ = first_jacobian(block_, rows_.list, unknowns_, alterations_);
    found_.x = Eigen::VectorXd::Zero(n);
    // Bounds may leave nothing out: start at the nearest amounts they allow.
    for (Eigen::Index i = 0; i < n; ++i)
      found_.x[i] = std::clamp(0.0, unknown(i).least, unknown(i).most);
    TrialResult start = try_amounts(block_, rows_.list, unknowns_, found_.x, alterations_);
    if (!start.trial) {
      found_.x.setZero();
      start = try_amounts(block_, rows_.list, unknowns_, found_.x, alterations_);
    }
    found_.trial = std::move(*start.trial);
    for (int round = 0; round < kMostRounds; ++round) {
      if (rows_.met(found_.trial.value, true)) break;
      const Eigen::VectorXd step = best_step(false);
      if (step.size() == 0 || step.cwiseAbs().maxCoeff() < kStillMm || !take(step)) break;
    }
    found_.met = rows_.met(found_.trial.value, false);
    if (!found_.met) within_tolerances();
    return std::move(found_);
  }

 private:
  Unknown& unknown(Eigen::Index i) { return unknowns_[static_cast<std::size_t>(i)]; }

  // The step that the linearised problem asks for: first with every target in its band, the other
  // measures as still as can be; where the bands cannot all be kept, with as little missing as can
  // be. `loosely`: the bands are the tolerances, and nothing is given when they cannot be kept.
  Eigen::VectorXd best_step(bool loosely) {
    hold_ = kHold;
    LeastSquares banded = held_and_small();
    for (const TargetRow& t : rows_.targets) {
      const double reach = kWithin * (loosely ? t.tolerance : t.exact_to);
      const double lack = t.wanted - found_.trial.value[t.row];
      add_row(banded, found_.jacobian.row(t.row), lack - reach);
      add_row(banded, -found_.jacobian.row(t.row), -lack - reach);
    }
    add_limits(banded);
    LeastSquaresAnswer answer = solve_least_squares(banded);
    if (answer.feasible) return answer.x;
    if (loosely) return {};
    hold_ = kHoldNearest;
    const LeastSquares nearest = missing_least(held_and_small());
    answer = solve_least_squares(nearest);
    if (!answer.feasible) answer = solve_least_squares(softened(nearest));
    if (!answer.feasible) return {};
    return answer.x.head(found_.x.size());
  }

  // min hold |held|^2 + kSmall |amounts|^2 within the bounds of the amounts.
  LeastSquares held_and_small() {
    const Eigen::Index n = found_.x.size();
    const auto held = static_cast<Eigen::Index>(rows_.held.size());
    LeastSquares problem;
    problem.a = Eigen::MatrixXd::Zero(held + n, n);
    problem.b = Eigen::VectorXd::Zero(held + n);
    const double hold = std::sqrt(hold_);
    for (Eigen::Index i = 0; i < held; ++i) {
      const Eigen::Index row = rows_.held[static_cast<std::size_t>(i)];
      problem.a.row(i) = hold * found_.jacobian.row(row);
      problem.b[i] = hold * (rows_.start[row] - found_.trial.value[row]);
    }
    const double small = std::sqrt(kSmall);
    problem.least = problem.most = Eigen::VectorXd(n);
    for (Eigen::Index i = 0; i < n; ++i) {
      problem.a(held + i, i) = small;
      problem.b[held + i] = -small * found_.x[i];
      problem.least[i] = std::min(0.0, unknown(i).least - found_.x[i]);
      problem.most[i] = std::max(0.0, unknown(i).most - found_.x[i]);
    }
    problem.c = Eigen::MatrixXd(0, n);
    problem.d = Eigen::VectorXd(0);
    return problem;
  }

  // One more unknown a target: what its measure misses its band by, in tolerances.
  LeastSquares missing_least(const LeastSquares& still) const {
    const Eigen::Index n = found_.x.size();
    const auto targets = static_cast<Eigen::Index>(rows_.targets.size());
    LeastSquares problem;
    problem.a = Eigen::MatrixXd::Zero(still.a.rows() + targets, n + targets);
    problem.a.topLeftCorner(still.a.rows(), n) = still.a;
    problem.a.bottomRightCorner(targets, targets).setIdentity();
    problem.b = Eigen::VectorXd::Zero(problem.a.rows());
    problem.b.head(still.b.size()) = still.b;
    problem.least = Eigen::VectorXd::Zero(n + targets);
    problem.most = Eigen::VectorXd::Constant(n + targets, kInfinity);
    problem.least.head(n) = still.least;
    problem.most.head(n) = still.most;
    problem.c = Eigen::MatrixXd(0, n + targets);
    problem.d = Eigen::VectorXd(0);
    for (Eigen::Index i = 0; i < targets; ++i) {
      const TargetRow& t = rows_.targets[static_cast<std::size_t>(i)];
      const double reach = kWithin * t.exact_to;
      const double lack = t.wanted - found_.trial.value[t.row];
      Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(n + targets);
      row[n + i] = t.tolerance;
      row.head(n) = found_.jacobian.row(t.row);
      add_row(problem, row, lack - reach);
      row.head(n) = -found_.jacobian.row(t.row);
      add_row(problem, row, -lack - reach);
    }
    add_limits(problem);
    return problem;
  }

  static void add_row(LeastSquares& problem, const Eigen::RowVectorXd& row, double at_least) {
    const Eigen::Index k = problem.c.rows();
    problem.c.conservativeResize(k + 1, row.size());
    problem.d.conservativeResize(k + 1);
    problem.c.row(k) = row;
    problem.d[k] = at_least;
  }

  void add_limits(LeastSquares& problem) const {
    for (const LimitRow& l : rows_.limits) {
      Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(problem.a.cols());
      row.head(found_.x.size()) = l.form.transpose() * found_.jacobian;
      const double now = l.form.dot(found_.trial.value);
      if (l.least > -kInfinity) add_row(problem, row, l.least - now);
      if (l.most < kInfinity) add_row(problem, -row, now - l.most);
    }
  }

  // Limits that cannot all be kept are broken as little as can be. (The rows of the targets, which
  // miss what they miss already, gain nothing by it.)
  static LeastSquares softened(const LeastSquares& hard) {
    LeastSquares soft = hard;
    const Eigen::Index n = hard.a.cols();
    const Eigen::Index k = hard.c.rows();
    soft.a = Eigen::MatrixXd::Zero(hard.a.rows() + k, n + k);
    soft.a.topLeftCorner(hard.a.rows(), n) = hard.a;
    soft.b = Eigen::VectorXd::Zero(hard.b.size() + k);
    soft.b.head(hard.b.size()) = hard.b;
    soft.least = Eigen::VectorXd::Zero(n + k);
    soft.most = Eigen::VectorXd::Constant(n + k, kInfinity);
    soft.least.head(n) = hard.least;
    soft.most.head(n) = hard.most;
    soft.c = Eigen::MatrixXd::Zero(k, n + k);
    soft.c.leftCols(n) = hard.c;
    for (Eigen::Index i = 0; i < k; ++i) {
      soft.a(hard.a.rows() + i, n + i) = std::sqrt(kBroken);
      soft.c(i, n + i) = 1.0;
    }
    return soft;
  }

  // Takes the step, or the half of it, ... that lessens the merit. A refusal narrows the bound of
  // the amount that was refused and ends the try: the next step is sought within it.
  bool take(const Eigen::VectorXd& step) {
    const double before = rows_.merit(found_.trial.value, found_.x, hold_);
    for (double share = 1.0; share > 0.05; share *= 0.5) {
      const Eigen::VectorXd x = found_.x + share * step;
      TrialResult tried = try_amounts(block_, rows_.list, unknowns_, x, alterations_);
      if (tried.refusal) {
        if (++refusals_ > kMostRefusals) return false;
        return narrow(*tried.refusal, x);
      }
      const bool better = rows_.merit(tried.trial->value, x, hold_) < before;
      renew(x, *tried.trial);
      if (!better) continue;
      found_.x = x;
      found_.trial = std::move(*tried.trial);
      return true;
    }
    return false;
  }

  bool narrow(const Refusal& refusal, const Eigen::VectorXd& tried) {
    // The step that was refused may not be the one that went: then the one that went furthest.
    auto at = static_cast<Eigen::Index>(refusal.unknown);
    const Eigen::VectorXd went = tried - found_.x;
    if (std::abs(went[at]) < kStillMm) went.cwiseAbs().maxCoeff(&at);
    if (std::abs(went[at]) < kStillMm) return false;
    const double bound =
        std::abs(went[at]) < kTrustMm ? found_.x[at] : found_.x[at] + 0.5 * went[at];
    Unknown& u = unknown(at);
    (went[at] > 0.0 ? u.most : u.least) = bound;
    (went[at] > 0.0 ? u.most_reason : u.least_reason) = refusal.problem.what;
    return true;
  }

  // The columns of the Jacobian at x from what each step did there. To second order a measure goes
  // as p a + q a^2: the first Jacobian gives p, the step's secant p + q a, so that the slope at a
  // is twice the secant less p.
  void renew(const Eigen::VectorXd& x, const Trial& trial) {
    for (Eigen::Index i = 0; i < x.size(); ++i) {
      if (std::abs(x[i]) < 1.0) continue;
      found_.jacobian.col(i) = 2.0 * trial.by_step.col(i) / x[i] - first_.col(i);
    }
  }

  // The least squares may trade one target off against another where all could be kept within their
  // tolerances: sought once more as bands.
  void within_tolerances() {
    for (int round = 0; round < 3; ++round) {
      const Eigen::VectorXd step = best_step(true);
      if (step.size() == 0) return;
      const Eigen::VectorXd x = found_.x + step;
      TrialResult tried = try_amounts(block_, rows_.list, unknowns_, x, alterations_);
      if (!tried.trial || step.cwiseAbs().maxCoeff() < kStillMm) return;
      const bool met = rows_.met(tried.trial->value, false);
      const Eigen::MatrixXd was = found_.jacobian;
      renew(x, *tried.trial);
      if (!met && worst(tried.trial->value) >= worst(found_.trial.value)) {
        found_.jacobian = was;
        return;
      }
      found_.x = x;
      found_.trial = std::move(*tried.trial);
      found_.met = met;
      if (met) return;
    }
  }

  double worst(const Eigen::VectorXd& value) const {
    double most = 0.0;
    for (const TargetRow& t : rows_.targets)
      most = std::max(most, std::abs(value[t.row] - t.wanted) / t.tolerance);
    return most;
  }

  const Block& block_;
  const Rows& rows_;
  std::vector<Unknown>& unknowns_;
  int& alterations_;
  Eigen::MatrixXd first_;
  Found found_;
  int refusals_ = 0;
  double hold_ = kHold;  // of the step at hand
};

}  // namespace

Found search_amounts(const Block& block, const Rows& rows, std::vector<Unknown>& unknowns,
                     int& alterations) {
  return Search(block, rows, unknowns, alterations).run();
}

}  // namespace pinwright
