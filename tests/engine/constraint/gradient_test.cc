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
  system.spans = {{"height", {0, kFoot}, {0, kRight}, {0.0, 1.0}, 90.0, Sense::at_most, ""}};
  system.radii = {{"start", {0, kTop}, true, 30.0, ""}, {"end", {0, kTop}, false, 30.0, ""}};
  const Variables variables(block, system);
  const Constraints constraints(block, system, variables);
  const auto values_at = [&](const Eigen::VectorXd& x) -> Eigen::VectorXd {
    Residuals r;
    constraints.at(x, r);
    return Eigen::Map<Eigen::VectorXd>(r.value.data(), r.count());
  };
  Residuals here;
  constraints.at(variables.start(), here);
  const Eigen::MatrixXd jacobian = here.jacobian(variables.count());
  constexpr double kStep = 1e-5;
  for (int k = 0; k < variables.count(); ++k) {
    Eigen::VectorXd more = variables.start();
    Eigen::VectorXd less = variables.start();
    more[k] += kStep;
    less[k] -= kStep;
    const Eigen::VectorXd difference = (values_at(more) - values_at(less)) / (2.0 * kStep);
    EXPECT_LT((difference - jacobian.col(k)).cwiseAbs().maxCoeff(), 1e-5) << "unknown " << k;
  }
}

}  // namespace
}  // namespace pinwright
