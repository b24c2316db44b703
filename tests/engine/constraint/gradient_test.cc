// The analytic gradients against central differences.
#include <gtest/gtest.h>

#include "engine/constraint/residuals.h"
#include "engine/geometry/arc_length.h"
#include "sheet.h"

namespace pinwright {
namespace {

TEST(LengthGradient, AgreesWithDifferences) {
  const Curve curve = sheet().pieces[0].edges[kTop].curve;
  const LengthGradient g = length_gradient(curve);
  EXPECT_DOUBLE_EQ(g.length, length(curve));
  constexpr double kStep = 1e-4;
  for (std::size_t i = 0; i < curve.points.size(); ++i) {
    for (const bool along_x : {true, false}) {
      Curve more = curve;
      Curve less = curve;
      (along_x ? more.points[i].x : more.points[i].y) += kStep;
      (along_x ? less.points[i].x : less.points[i].y) -= kStep;
      const double difference = (length(more) - length(less)) / (2.0 * kStep);
      EXPECT_NEAR(along_x ? g.by_point[i].x : g.by_point[i].y, difference, 1e-7) << i;
    }
  }
}

TEST(Constraints, JacobianAgreesWithDifferences) {
  const Block block = sheet();
  System system;
  system.free_edges = {{0, kTop}};
  system.free_corners = {{{0, kRight}, {true, true}}, {{0, kTop}, {false, true}}};
  system.lengths = {{"top", {{{0, kTop}, 1.0}, {{0, kRight}, -0.5}}, 100.0}};
  system.angles = {{"corners", {{0, kRight}, {0, kTop}}, 3.0}};
  const Variables variables(block, system);
  const Constraints constraints(block, system, variables);
  const Residuals here = constraints.at(variables.start());
  ASSERT_EQ(here.jacobian.cols(), variables.count());
  constexpr double kStep = 1e-5;
  for (int k = 0; k < variables.count(); ++k) {
    Eigen::VectorXd more = variables.start();
    Eigen::VectorXd less = variables.start();
    more[k] += kStep;
    less[k] -= kStep;
    const Eigen::VectorXd difference =
        (constraints.at(more).value - constraints.at(less).value) / (2.0 * kStep);
    EXPECT_LT((difference - here.jacobian.col(k)).cwiseAbs().maxCoeff(), 1e-5) << "unknown " << k;
  }
}

}  // namespace
}  // namespace pinwright
