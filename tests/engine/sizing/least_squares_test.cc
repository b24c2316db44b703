// The small solver: against hand-worked cases, against its own optimality conditions, and against
// Ceres on the same random problems.
#include "engine/sizing/bounded_least_squares.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "ceres_reference.h"

namespace pinwright {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

LeastSquares plain(const Eigen::MatrixXd& a, const Eigen::VectorXd& b) {
  LeastSquares p;
  p.a = a;
  p.b = b;
  return p;
}

TEST(LeastSquares, MeetsTheNormalEquationsWithoutConstraints) {
  Eigen::MatrixXd a(3, 2);
  a << 1, 0, 0, 2, 1, 1;
  const Eigen::Vector3d b(1, 2, 3);
  const LeastSquaresAnswer answer = solve_least_squares(plain(a, b));
  ASSERT_TRUE(answer.feasible);
  EXPECT_LT((a.transpose() * (a * answer.x - b)).norm(), 1e-12);
  EXPECT_EQ(answer.rank, 2);
  EXPECT_TRUE(answer.active.empty());
}

TEST(LeastSquares, StopsAtABoundAndSaysHowHardItPresses) {
  LeastSquares p = plain(Eigen::MatrixXd::Identity(2, 2), Eigen::Vector2d(5, 1));
  p.most = Eigen::Vector2d(3, kInfinity);
  const LeastSquaresAnswer answer = solve_least_squares(p);
  ASSERT_TRUE(answer.feasible);
  EXPECT_EQ(answer.x[0], 3.0);
  EXPECT_NEAR(answer.x[1], 1.0, 1e-14);
  EXPECT_EQ(answer.active, std::vector<int>{2});
  EXPECT_NEAR(answer.multiplier[2], 2.0, 1e-12);  // gradient 3 - 5 = multiplier * (-1)
}

TEST(LeastSquares, KeepsAnInequality) {
  // Nearest to (2, 2) with x + y <= 2 is (1, 1).
  LeastSquares p = plain(Eigen::MatrixXd::Identity(2, 2), Eigen::Vector2d(2, 2));
  p.c = Eigen::RowVector2d(-1, -1);
  p.d = Eigen::VectorXd::Constant(1, -2.0);
  const LeastSquaresAnswer answer = solve_least_squares(p);
  ASSERT_TRUE(answer.feasible);
  EXPECT_NEAR(answer.x[0], 1.0, 1e-13);
  EXPECT_NEAR(answer.x[1], 1.0, 1e-13);
  EXPECT_LT(answer.kkt, 1e-13);
}

TEST(LeastSquares, NamesTheConstraintsThatContradictEachOther) {
  LeastSquares p = plain(Eigen::MatrixXd::Identity(2, 2), Eigen::Vector2d(0, 0));
  p.least = Eigen::Vector2d(-kInfinity, -10);
  p.most = Eigen::Vector2d(1, 1);
  p.c = Eigen::RowVector2d(1, 1);
  p.d = Eigen::VectorXd::Constant(1, 3.0);
  const LeastSquaresAnswer answer = solve_least_squares(p);
  EXPECT_TRUE(answer.converged);
  EXPECT_FALSE(answer.feasible);
  EXPECT_EQ(answer.clash, (std::vector<int>{2, 3, 4}));  // both upper bounds against the sum
}

TEST(LeastSquares, TakesNoPartOfWhatTheRowsDoNotSee) {
  Eigen::MatrixXd a(2, 3);
  a << 1, 1, 0, 1, 1, 0;
  const LeastSquaresAnswer answer = solve_least_squares(plain(a, Eigen::Vector2d(4, 4)));
  ASSERT_TRUE(answer.feasible);
  EXPECT_EQ(answer.rank, 1);
  EXPECT_NEAR(answer.x[0], 2.0, 1e-9);
  EXPECT_NEAR(answer.x[1], 2.0, 1e-9);
  EXPECT_NEAR(answer.x[2], 0.0, 1e-12);
  EXPECT_LT(answer.kkt, 1e-10);
}

TEST(LeastSquares, KeepsItsDigitsWhereTheNormalEquationsLoseThem) {
  // Columns that differ by 1e-7: their product matrix is singular in double.
  Eigen::MatrixXd a(3, 2);
  a << 1, 1, 1e-7, 0, 0, 1e-7;
  const Eigen::Vector2d wanted(3, -2);
  const LeastSquaresAnswer answer = solve_least_squares(plain(a, a * wanted));
  ASSERT_TRUE(answer.feasible);
  EXPECT_EQ(answer.rank, 2);
  EXPECT_LT((answer.x - wanted).norm(), 1e-8);
}

TEST(LeastSquares, RefusesNumbersThatAreNone) {
  LeastSquares p = plain(Eigen::MatrixXd::Identity(1, 1), Eigen::VectorXd::Constant(1, NAN));
  EXPECT_FALSE(solve_least_squares(p).converged);
  p = plain(Eigen::MatrixXd::Zero(0, 0), Eigen::VectorXd(0));
  EXPECT_FALSE(solve_least_squares(p).converged);
}

struct Random {
  std::mt19937 engine;
  explicit Random(unsigned seed) : engine(seed) {}
  double normal() { return std::normal_distribution<double>()(engine); }
  int between(int a, int b) { return std::uniform_int_distribution<int>(a, b)(engine); }
  Eigen::MatrixXd matrix(int rows, int cols) {
    return Eigen::MatrixXd::NullaryExpr(rows, cols, [&](Eigen::Index) { return normal(); });
  }
};

LeastSquares random_bounded(Random& random) {
  const int n = random.between(1, 12);
  LeastSquares p = plain(random.matrix(n + random.between(0, 20), n), Eigen::VectorXd());
  p.b = 5.0 * random.matrix(static_cast<int>(p.a.rows()), 1);
  // Columns of very different size, as mm and ratios are.
  for (int i = 0; i < n; ++i) p.a.col(i) *= std::pow(10.0, random.between(-2, 2));
  p.least = Eigen::VectorXd::Constant(n, -kInfinity);
  p.most = Eigen::VectorXd::Constant(n, kInfinity);
  for (int i = 0; i < n; ++i) {
    const double reach = 1.0 / p.a.col(i).norm();
    if (random.between(0, 2) > 0) p.least[i] = -2.0 * reach * std::abs(random.normal());
    if (random.between(0, 2) > 0) p.most[i] = 2.0 * reach * std::abs(random.normal());
  }
  return p;
}

TEST(LeastSquaresAgainstCeres, RandomBoundedProblemsAgree) {
  Random random(20240);
  int pressing = 0;
  for (int i = 0; i < 300; ++i) {
    const LeastSquares p = random_bounded(random);
    const LeastSquaresAnswer own = solve_least_squares(p);
    ASSERT_TRUE(own.feasible);
    EXPECT_LT(own.kkt, 1e-9);
    const Eigen::VectorXd other = ceres_reference(p);
    // In the unit of each column, relative to the answer.
    const Eigen::VectorXd columns = p.a.colwise().norm().transpose();
    const double apart = columns.cwiseProduct(own.x - other).cwiseAbs().maxCoeff();
    EXPECT_LT(apart, 1e-6 * (1.0 + columns.cwiseProduct(own.x).norm())) << "problem " << i;
    EXPECT_LE((p.a * own.x - p.b).norm(), (p.a * other - p.b).norm() * (1.0 + 1e-8));
    pressing += static_cast<int>(own.active.size());
  }
  EXPECT_GT(pressing, 300);
}

// Ceres knows no inequalities: here the optimality conditions, which are sufficient for a convex
// problem, and the claims of infeasibility are checked.
TEST(LeastSquaresProperties, RandomInequalitiesAreOptimalOrTrulyContradict) {
  Random random(77);
  int infeasible = 0;
  for (int i = 0; i < 2000; ++i) {
    LeastSquares p = random_bounded(random);
    const auto n = static_cast<int>(p.a.cols());
    const int k = random.between(0, 8);
    p.c = random.matrix(k, n);
    p.d = 0.7 * random.matrix(k, 1);
    const LeastSquaresAnswer answer = solve_least_squares(p);
    ASSERT_TRUE(answer.converged) << i;
    if (answer.feasible) {
      EXPECT_LT(answer.kkt, 1e-9) << i;
      continue;
    }
    ++infeasible;
    // The clash alone is already infeasible; with any one of it left out it is not.
    ASSERT_FALSE(answer.clash.empty());
    const auto solve_only = [&](int left_out) {
      LeastSquares only = p;
      only.least = Eigen::VectorXd::Constant(n, -kInfinity);
      only.most = Eigen::VectorXd::Constant(n, kInfinity);
      only.c = Eigen::MatrixXd(0, n);
      only.d = Eigen::VectorXd(0);
      for (const int id : answer.clash) {
        if (id == left_out) continue;
        if (id < n) {
          only.least[id] = p.least[id];
        } else if (id < 2 * n) {
          only.most[id - n] = p.most[id - n];
        } else {
          only.c.conservativeResize(only.c.rows() + 1, n);
          only.d.conservativeResize(only.c.rows());
          only.c.row(only.c.rows() - 1) = p.c.row(id - 2 * n);
          only.d[only.c.rows() - 1] = p.d[id - 2 * n];
        }
      }
      return solve_least_squares(only).feasible;
    };
    EXPECT_FALSE(solve_only(-1));
    for (const int id : answer.clash) EXPECT_TRUE(solve_only(id)) << i;
  }
  EXPECT_GT(infeasible, 100);
}

}  // namespace
}  // namespace pinwright
