#include "engine/constraint/qp.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace pinwright {
namespace {

// A pivot below this, on a unit diagonal, is a row that depends on those before it.
constexpr double kDependent = 1e-11;
// Inequalities count as violated, and multipliers as negative, beyond this.
constexpr double kSlackMm = 1e-9;

// Solves S m = b for S symmetric and positive semidefinite; m is 0 for dependent rows.
Eigen::VectorXd solve_semidefinite(Eigen::MatrixXd& s, const Eigen::VectorXd& b) {
  const Eigen::Index n = s.rows();
  Eigen::VectorXd scale(n);
  for (Eigen::Index i = 0; i < n; ++i) scale[i] = s(i, i) > 0.0 ? 1.0 / std::sqrt(s(i, i)) : 0.0;
  for (Eigen::Index j = 0; j < n; ++j)
    for (Eigen::Index i = j; i < n; ++i) s(i, j) *= scale[i] * scale[j];
  std::vector<Eigen::Index> order(static_cast<std::size_t>(n));
  for (Eigen::Index i = 0; i < n; ++i) order[static_cast<std::size_t>(i)] = i;
  const auto at = [&](Eigen::Index k) { return order[static_cast<std::size_t>(k)]; };
  // Lower triangle by pairs: s(max, min). Pivoted Cholesky on the permuted matrix.
  Eigen::MatrixXd l = Eigen::MatrixXd::Zero(n, n);
  Eigen::VectorXd diagonal(n);
  for (Eigen::Index i = 0; i < n; ++i) diagonal[i] = s(i, i);
  Eigen::Index rank = 0;
  for (; rank < n; ++rank) {
    Eigen::Index best = rank;
    for (Eigen::Index k = rank + 1; k < n; ++k)
      if (diagonal[at(k)] > diagonal[at(best)]) best = k;
    if (!(diagonal[at(best)] > kDependent)) break;
    std::swap(order[static_cast<std::size_t>(rank)], order[static_cast<std::size_t>(best)]);
    const Eigen::Index p = at(rank);
    const double root = std::sqrt(diagonal[p]);
    l(p, rank) = root;
    for (Eigen::Index k = rank + 1; k < n; ++k) {
      const Eigen::Index i = at(k);
      double sum = i > p ? s(i, p) : s(p, i);
      for (Eigen::Index c = 0; c < rank; ++c) sum -= l(i, c) * l(p, c);
      l(i, rank) = sum / root;
      diagonal[i] -= l(i, rank) * l(i, rank);
    }
  }
  Eigen::VectorXd y(rank);
  for (Eigen::Index k = 0; k < rank; ++k) {
    double sum = b[at(k)] * scale[at(k)];
    for (Eigen::Index c = 0; c < k; ++c) sum -= l(at(k), c) * y[c];
    y[k] = sum / l(at(k), k);
  }
  Eigen::VectorXd m = Eigen::VectorXd::Zero(n);
  for (Eigen::Index k = rank; k-- > 0;) {
    double sum = y[k];
    for (Eigen::Index c = k + 1; c < rank; ++c) sum -= l(at(c), k) * m[at(c)];
    m[at(k)] = sum / l(at(k), k);
  }
  return m.cwiseProduct(scale);
}

double along(const Residuals& rows, int row, const Eigen::VectorXd& d) {
  double sum = 0.0;
  for (const Residuals::Entry* e = rows.begin(row); e != rows.end(row); ++e)
    sum += e->factor * d[e->unknown];
  return sum;
}

}  // namespace

void solve_qp(const Residuals& rows, const Stiffness& stiffness, const Eigen::VectorXd& e,
              std::vector<bool>& working, Eigen::VectorXd& d) {
  const int m = rows.count();
  const Eigen::Index n = e.size();
  working.resize(static_cast<std::size_t>(m), false);
  Eigen::MatrixXd lifted(n, m);  // L^-1 J^T, a column a row, made when first needed
  std::vector<int> first(static_cast<std::size_t>(m), 0);  // entry of it that is not nothing
  std::vector<bool> made(static_cast<std::size_t>(m), false);
  std::vector<double> start(static_cast<std::size_t>(m));
  int inequalities = 0;
  for (int i = 0; i < m; ++i) {
    start[static_cast<std::size_t>(i)] =
        rows.value[static_cast<std::size_t>(i)] + along(rows, i, e);
    inequalities += rows.inequality[static_cast<std::size_t>(i)] ? 1 : 0;
  }
  std::vector<int> set;
  for (int turn = 0; turn <= 4 * inequalities; ++turn) {
    set.clear();
    for (int i = 0; i < m; ++i) {
      const std::size_t at = static_cast<std::size_t>(i);
      if (rows.inequality[at] && !working[at]) continue;
      set.push_back(i);
      if (made[at]) continue;
      made[at] = true;
      lifted.col(i).setZero();
      int from = static_cast<int>(n);
      for (const Residuals::Entry* x = rows.begin(i); x != rows.end(i); ++x) {
        lifted(x->unknown, i) += x->factor;
        from = std::min(from, x->unknown);
      }
      stiffness.forward(lifted.col(i), from);
      first[at] = from;
    }
    const Eigen::Index w = static_cast<Eigen::Index>(set.size());
    Eigen::MatrixXd schur(w, w);
    Eigen::VectorXd b(w);
    for (Eigen::Index j = 0; j < w; ++j) {
      const int col = set[static_cast<std::size_t>(j)];
      b[j] = -start[static_cast<std::size_t>(col)];
      for (Eigen::Index i = j; i < w; ++i) {
        const int row = set[static_cast<std::size_t>(i)];
        const Eigen::Index both = n - std::max(first[static_cast<std::size_t>(row)],
                                               first[static_cast<std::size_t>(col)]);
        schur(i, j) = lifted.col(row).tail(both).dot(lifted.col(col).tail(both));
      }
    }
    const Eigen::VectorXd multiplier = solve_semidefinite(schur, b);
    d.setZero();
    for (Eigen::Index i = 0; i < w; ++i)
      if (multiplier[i] != 0.0) d += multiplier[i] * lifted.col(set[static_cast<std::size_t>(i)]);
    stiffness.backward(d);
    d += e;

    int leaves = -1;
    double most_negative = -kSlackMm;
    for (Eigen::Index i = 0; i < w; ++i) {
      const int row = set[static_cast<std::size_t>(i)];
      if (!rows.inequality[static_cast<std::size_t>(row)] || multiplier[i] >= most_negative)
        continue;
      most_negative = multiplier[i];
      leaves = row;
    }
    if (leaves >= 0) {
      working[static_cast<std::size_t>(leaves)] = false;
      continue;
    }
    int enters = -1;
    double most_violated = -kSlackMm;
    for (int i = 0; i < m; ++i) {
      const std::size_t at = static_cast<std::size_t>(i);
      if (!rows.inequality[at] || working[at]) continue;
      const double v = rows.value[at] + along(rows, i, d);
      if (v >= most_violated) continue;
      most_violated = v;
      enters = i;
    }
    if (enters < 0) return;
    working[static_cast<std::size_t>(enters)] = true;
  }
}

}  // namespace pinwright
