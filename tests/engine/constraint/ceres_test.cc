// The solver against Ceres on systems as alterations make them.
#include <gtest/gtest.h>

#include "ceres_system.h"
#include "engine/constraint/solve.h"
#include "real_systems.h"

namespace pinwright {
namespace {

TEST(Ceres, FindsTheSameCurvesToAMillionthOfAMillimetre) {
  for (const RealSystem& real : real_systems()) {
    Block ours = real.block;
    const Result<SolveReport> solved = solve(ours, real.system);
    ASSERT_TRUE(solved.ok()) << real.name << ": " << solved.problems().front().what;
    Block theirs = real.block;
    ASSERT_LT(ceres_solve(theirs, real.system, 300.0, 12), 1e-8) << real.name;
    double moved = 0.0;
    double apart = 0.0;
    for (std::size_t p = 0; p < ours.pieces.size(); ++p) {
      for (std::size_t e = 0; e < ours.pieces[p].edges.size(); ++e) {
        const Curve& a = ours.pieces[p].edges[e].curve;
        for (std::size_t k = 0; k < a.points.size(); ++k) {
          apart = std::max(apart, distance(a.points[k], theirs.pieces[p].edges[e].curve.points[k]));
          moved =
              std::max(moved, distance(a.points[k], real.block.pieces[p].edges[e].curve.points[k]));
        }
      }
    }
    EXPECT_GT(moved, 1.0) << real.name;
    EXPECT_LT(apart, 1e-6) << real.name << ", which moved by " << moved << " mm";
  }
}

}  // namespace
}  // namespace pinwright
