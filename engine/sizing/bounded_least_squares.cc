#include "engine/sizing/bounded_least_squares.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <limits>

namespace pinwright {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kRankTolerance = 1e-11;  // relative, of unit columns
constexpr double kProximal = 1e-8;        // weight of a proximal step, of unit columns
constexpr int kMostProximalSteps = 60;
constexpr double kViolated = 1e-12;   // relative to the size of the constraint's terms
constexpr double kDependent = 1e-11;  // length left of a unit normal beside the active ones

// Half spaces normal . y >= offset with unit normals.
struct HalfSpaces {
  Eigen::MatrixXd normal;  // one a column
  Eigen::VectorXd offset;
  std::vector<int> id;         // number of the constraint
  Eigen::VectorXd multiplier;  // of the constraint : of the unit normal
};

struct Projection {
  bool feasible = false;
  bool converged = false;
  Eigen::VectorXd y;
  std::vector<int> active;  // columns of the half spaces
  Eigen::VectorXd pressure;
  std::vector<int> clash;
  int rounds = 0;
};

// The part of v outside the span of the active normals, and v's coordinates in that span.
class ActiveSpan {
 public:
  ActiveSpan(const HalfSpaces& spaces, const std::vector<int>& active)
      : normals_(spaces.normal.rows(), static_cast<Eigen::Index>(active.size())) {
    for (std::size_t i = 0; i < active.size(); ++i)
      normals_.col(static_cast<Eigen::Index>(i)) = spaces.normal.col(active[i]);
    if (!active.empty()) qr_.compute(normals_);
  }
  Eigen::VectorXd coordinates(const Eigen::VectorXd& v) const {
    if (normals_.cols() == 0) return Eigen::VectorXd(0);
    return qr_.solve(v);
  }
  Eigen::VectorXd outside(const Eigen::VectorXd& v) const {
    if (normals_.cols() == 0) return v;
    Eigen::VectorXd turned = qr_.householderQ().transpose() * v;
    turned.head(normals_.cols()).setZero();
    return qr_.householderQ() * turned;
  }
  // The shortest v with N^T v = lacking, and its u in v = N u. With N = Q R: v = Q R^-T lacking,
  // u = R^-1 R^-T lacking; v itself never sees the square of N's condition.
  Eigen::VectorXd shortest(const Eigen::VectorXd& lacking, Eigen::VectorXd& u) const {
    const Eigen::Index q = normals_.cols();
    const auto r = qr_.matrixQR().topLeftCorner(q, q).triangularView<Eigen::Upper>();
    Eigen::VectorXd turned = Eigen::VectorXd::Zero(normals_.rows());
    turned.head(q) = r.transpose().solve(lacking);
    u = r.solve(turned.head(q));
    return qr_.householderQ() * turned;
  }

 private:
  Eigen::MatrixXd normals_;
  Eigen::HouseholderQR<Eigen::MatrixXd> qr_;
};

// The column that is most violated at y, or -1. The violation counts relative to the terms' size.
int most_violated(const HalfSpaces& s, const Eigen::VectorXd& y, const std::vector<int>& active) {
  int worst = -1;
  double deepest = 0.0;
  for (Eigen::Index k = 0; k < s.normal.cols(); ++k) {
    const double slack = s.normal.col(k).dot(y) - s.offset[k];
    const double size = 1.0 + std::abs(s.offset[k]) + y.norm();
    if (slack >= -kViolated * size || slack >= deepest) continue;
    if (std::find(active.begin(), active.end(), static_cast<int>(k)) != active.end()) continue;
    worst = static_cast<int>(k);
    deepest = slack;
  }
  return worst;
}

// Nearest point of the half spaces to `from`.
Projection project(const HalfSpaces& s, const Eigen::VectorXd& from) {
  Projection p;
  p.y = from;
  std::vector<int>& active = p.active;
  std::vector<double> pressure;
  const int most_rounds = 100 + 20 * static_cast<int>(s.normal.cols() + s.normal.rows());
  for (;;) {
    const int entering = most_violated(s, p.y, active);
    if (entering < 0) break;
    const Eigen::VectorXd normal = s.normal.col(entering);
    double own = 0.0;
    for (bool in = false; !in;) {
      if (++p.rounds > most_rounds) return p;
      const ActiveSpan span(s, active);
      const Eigen::VectorXd fall = span.coordinates(normal);
      const Eigen::VectorXd way = span.outside(normal);
      const double gain = way.squaredNorm();
      double until_dropped = kInfinity;
      std::size_t dropped = 0;
      for (std::size_t j = 0; j < active.size(); ++j) {
        const double f = fall[static_cast<Eigen::Index>(j)];
        if (f > kDependent && pressure[j] / f < until_dropped) {
          until_dropped = pressure[j] / f;
          dropped = j;
        }
      }
      const bool can_move = gain > kDependent * kDependent;
      const double until_met = can_move ? (s.offset[entering] - normal.dot(p.y)) / gain : kInfinity;
      const double t = std::min(until_dropped, until_met);
      if (t == kInfinity) {
        p.clash.push_back(s.id[static_cast<std::size_t>(entering)]);
        for (std::size_t j = 0; j < active.size(); ++j)
          if (fall[static_cast<Eigen::Index>(j)] < -kDependent)
            p.clash.push_back(s.id[static_cast<std::size_t>(active[j])]);
        std::sort(p.clash.begin(), p.clash.end());
        p.converged = true;
        return p;
      }
      for (std::size_t j = 0; j < active.size(); ++j)
        pressure[j] = std::max(0.0, pressure[j] - t * fall[static_cast<Eigen::Index>(j)]);
      own += t;
      if (can_move) p.y += t * way;
      if (until_met <= until_dropped) {
        active.push_back(entering);
        pressure.push_back(own);
        in = true;
      } else {
        active.erase(active.begin() + static_cast<std::ptrdiff_t>(dropped));
        pressure.erase(pressure.begin() + static_cast<std::ptrdiff_t>(dropped));
      }
    }
  }
  p.feasible = p.converged = true;
  p.pressure = Eigen::VectorXd(static_cast<Eigen::Index>(active.size()));
  if (active.empty()) return p;
  // Once more from the start with the active set known: the rounding of the way here falls away.
  const ActiveSpan span(s, active);
  Eigen::VectorXd lacking(static_cast<Eigen::Index>(active.size()));
  for (std::size_t j = 0; j < active.size(); ++j)
    lacking[static_cast<Eigen::Index>(j)] = s.offset[active[j]] - s.normal.col(active[j]).dot(from);
  p.y = from + span.shortest(lacking, p.pressure);
  return p;
}

// All constraints as rows g x >= h, with their numbers; those at infinity left out.
struct Rows {
  Eigen::MatrixXd g;
  Eigen::VectorXd h;
  std::vector<int> id;
};

Rows rows_of(const LeastSquares& problem) {
  const Eigen::Index n = problem.a.cols();
  std::vector<int> id;
  for (Eigen::Index i = 0; i < problem.least.size(); ++i)
    if (problem.least[i] > -kInfinity) id.push_back(static_cast<int>(i));
  for (Eigen::Index i = 0; i < problem.most.size(); ++i)
    if (problem.most[i] < kInfinity) id.push_back(static_cast<int>(n + i));
  for (Eigen::Index i = 0; i < problem.c.rows(); ++i) id.push_back(static_cast<int>(2 * n + i));
  Rows rows{Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(id.size()), n),
            Eigen::VectorXd(static_cast<Eigen::Index>(id.size())), id};
  for (std::size_t k = 0; k < id.size(); ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    if (id[k] < n) {
      rows.g(row, id[k]) = 1.0;
      rows.h[row] = problem.least[id[k]];
    } else if (id[k] < 2 * n) {
      rows.g(row, id[k] - n) = -1.0;
      rows.h[row] = -problem.most[id[k] - n];
    } else {
      rows.g.row(row) = problem.c.row(id[k] - 2 * n);
      rows.h[row] = problem.d[id[k] - 2 * n];
    }
  }
  return rows;
}

// Worst of stationarity, feasibility, sign and complementarity, each relative.
double kkt_error(const LeastSquares& problem, const Rows& rows, const LeastSquaresAnswer& answer) {
  const Eigen::VectorXd residual = problem.a * answer.x - problem.b;
  const double size = problem.b.norm() + (problem.a.cwiseAbs() * answer.x.cwiseAbs()).norm();
  Eigen::VectorXd gradient = problem.a.transpose() * residual;
  const double pull = 1e-300 + problem.a.norm() * size;
  double worst = 0.0;
  for (std::size_t k = 0; k < rows.id.size(); ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    const double m = answer.multiplier[rows.id[k]];
    gradient -= m * rows.g.row(row).transpose();
    const double norm = rows.g.row(row).norm();
    if (norm == 0.0) continue;
    const double slack = (rows.g.row(row).dot(answer.x) - rows.h[row]) /
                         (norm * (1.0 + answer.x.norm()) + std::abs(rows.h[row]));
    worst = std::max({worst, -slack, -m * norm / pull});
    worst = std::max(worst, std::min(std::abs(m * norm / pull), std::abs(slack)));
  }
  return std::max(worst, gradient.cwiseAbs().maxCoeff() / pull);
}

}  // namespace

LeastSquaresAnswer solve_least_squares(const LeastSquares& problem) {
  LeastSquaresAnswer answer;
  const Eigen::Index n = problem.a.cols();
  const Eigen::Index m = problem.a.rows();
  if (n == 0 || !problem.a.allFinite() || !problem.b.allFinite() || !problem.c.allFinite() ||
      !problem.d.allFinite() || problem.least.hasNaN() || problem.most.hasNaN())
    return answer;
  const Rows rows = rows_of(problem);
  answer.multiplier = Eigen::VectorXd::Zero(2 * n + problem.c.rows());

  Eigen::VectorXd column(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const double norm = problem.a.col(i).norm();
    column[i] = norm > 0.0 ? norm : 1.0;
  }
  const Eigen::MatrixXd scaled = problem.a * column.cwiseInverse().asDiagonal();
  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> revealing(scaled);
  revealing.setThreshold(kRankTolerance);
  answer.rank = static_cast<int>(revealing.rank());
  const bool lacks_rank = answer.rank < n;
  Eigen::MatrixXd stacked(m + (lacks_rank ? n : 0), n);
  stacked.topRows(m) = scaled;
  if (lacks_rank) stacked.bottomRows(n) = std::sqrt(kProximal) * Eigen::MatrixXd::Identity(n, n);
  const Eigen::HouseholderQR<Eigen::MatrixXd> qr(stacked);
  const auto r = qr.matrixQR().topLeftCorner(n, n).triangularView<Eigen::Upper>();

  HalfSpaces spaces{Eigen::MatrixXd(n, rows.g.rows()), rows.h, rows.id,
                    Eigen::VectorXd(rows.g.rows())};
  Eigen::Index kept = 0;
  std::vector<int> kept_id;
  for (Eigen::Index k = 0; k < rows.g.rows(); ++k) {
    const Eigen::VectorXd g = rows.g.row(k).transpose().cwiseQuotient(column);
    const Eigen::VectorXd normal = r.transpose().solve(g);
    const double norm = normal.norm();
    if (norm == 0.0) {
      // A row of zeros holds everywhere or nowhere.
      if (rows.h[k] <= 0.0) continue;
      answer.converged = true;
      answer.clash = {rows.id[static_cast<std::size_t>(k)]};
      return answer;
    }
    spaces.normal.col(kept) = normal / norm;
    spaces.offset[kept] = rows.h[k] / norm;
    spaces.multiplier[kept] = norm;
    kept_id.push_back(rows.id[static_cast<std::size_t>(k)]);
    ++kept;
  }
  spaces.normal.conservativeResize(n, kept);
  spaces.offset.conservativeResize(kept);
  spaces.id = std::move(kept_id);

  Eigen::VectorXd z = Eigen::VectorXd::Zero(n);
  Projection found;
  for (int step = 0; step < (lacks_rank ? kMostProximalSteps : 1); ++step) {
    Eigen::VectorXd right(stacked.rows());
    right.head(m) = problem.b;
    if (lacks_rank) right.tail(n) = std::sqrt(kProximal) * z;
    const Eigen::VectorXd target = (qr.householderQ().transpose() * right).head(n);
    found = project(spaces, target);
    answer.rounds += found.rounds;
    if (!found.feasible) {
      answer.converged = found.converged;
      answer.clash = std::move(found.clash);
      return answer;
    }
    const Eigen::VectorXd next = r.solve(found.y);
    const double moved = (next - z).norm();
    z = next;
    if (moved <= 1e-14 * (1.0 + z.norm())) break;
  }
  answer.feasible = answer.converged = true;
  answer.x = z.cwiseQuotient(column);
  for (std::size_t j = 0; j < found.active.size(); ++j) {
    const int k = found.active[j];
    const int id = spaces.id[static_cast<std::size_t>(k)];
    answer.multiplier[id] = found.pressure[static_cast<Eigen::Index>(j)] / spaces.multiplier[k];
    answer.active.push_back(id);
    // A bound that presses is met to the last bit.
    if (id < n) {
      answer.x[id] = problem.least[id];
    } else if (id < 2 * n) {
      answer.x[id - n] = problem.most[id - n];
    }
  }
  std::sort(answer.active.begin(), answer.active.end());
  answer.kkt = kkt_error(problem, rows, answer);
  return answer;
}

}  // namespace pinwright
