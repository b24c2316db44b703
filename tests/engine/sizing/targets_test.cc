// What a body asks of a block, the operations chosen for it, and the least squares of a real sizing
// held against Ceres.
#include "engine/sizing/targets.h"

#include <gtest/gtest.h>

#include <cmath>

#include "ceres_reference.h"
#include "engine/sizing/amounts.h"
#include "skerry_blocks.h"

namespace pinwright {
namespace {

TEST(TargetsOf, ABlockDraftedForTheBodyHasNone) {
  for (const Block* block : {&knit_top(), &woven_bodice()})
    EXPECT_TRUE(targets_of(*block, block->drafted_for.body).empty()) << block->kind;
}

TEST(TargetsOf, AreBodyAndEaseWhereTheBlockIsOff) {
  Measurements body = woven_bodice().drafted_for.body;
  body["bust-girth"] += 24.0;
  body["shoulder-length"] -= 0.3;  // less than anyone sees
  body["elbow-girth"] = 300.0;     // no measure names it
  const std::vector<Target> targets = targets_of(woven_bodice(), body);
  ASSERT_EQ(targets.size(), 1u);
  EXPECT_EQ(targets[0].measure, "bust-girth");
  EXPECT_NEAR(targets[0].wanted, body["bust-girth"] + woven_bodice().ease.at("bust-girth"), 1e-9);
}

TEST(CuresFor, ABodyOfOtherMeasurementsIsFittedWithoutWords) {
  for (const Block* block : {&knit_top(), &woven_bodice()}) {
    Measurements body = block->drafted_for.body;
    body["bust-girth"] += 20.0;
    body["upper-arm-girth"] += 10.0;
    body["shoulder-length"] -= 5.0;
    const std::vector<Target> targets = targets_of(*block, body);
    ASSERT_EQ(targets.size(), 3u);
    const std::vector<Cure> cures = cures_for(*block, targets);
    ASSERT_FALSE(cures.empty());
    EXPECT_LE(cures.size(), kMostCures);
    for (const Cure& c : cures)
      EXPECT_NE(c.asked_by.find("body and ease"), std::string::npos) << c.asked_by;
    const Result<Sizing> sizing = size_jointly(*block, {cures, targets, {}, {}});
    ASSERT_TRUE(sizing.ok());
    EXPECT_TRUE(sizing->met) << block->kind;
    EXPECT_TRUE(prove(sizing->block).pass);
    // Nothing that nobody asked for is far off.
    for (const SizedMeasure& h : sizing->held) {
      // A wider upper arm has a lower cap.
      if (h.kind == MeasureKind::angle || h.measure == "cap-height" || h.measure == "sleeve-length")
        continue;
      EXPECT_LT(std::abs(h.left_over), 4.0) << h.measure;
    }
  }
}

TEST(CuresFor, NothingAskedForNothingChosen) {
  EXPECT_TRUE(cures_for(knit_top(), {}).empty());
  EXPECT_TRUE(cures_for(knit_top(), {{"no-such-measure", 1.0, 1.0, "", 0.05}}).empty());
  EXPECT_TRUE(cures_for(knit_top(), {{"bust-girth", NAN, 1.0, "", 0.05}}).empty());
}

// The first step of a real sizing, its effects taken from the blocks: with tight bounds, so that
// some press.
TEST(LeastSquaresAgainstCeres, TheSizingOfFourComplaintsAgrees) {
  for (const Block* block : {&knit_top(), &woven_bodice()}) {
    std::vector<Cure> cures;
    for (const char* id : {"full-bust", "swing-shoulder", "widen-upper-arm", "let-out-side",
                           "widen-neckline", "move-shoulder-tip", "lower-underarm"})
      cures.push_back({step(id, 0.0), "", -6.0, 6.0});
    Result<std::vector<Unknown>> unknowns = unknowns_of(*block, cures);
    ASSERT_TRUE(unknowns.ok());
    const MeasureList list{measures(*block)};
    int alterations = 0;
    const Eigen::MatrixXd effect = first_jacobian(*block, list, *unknowns, alterations);
    const Eigen::Index n = effect.cols();
    LeastSquares p;
    p.a = Eigen::MatrixXd::Zero(effect.rows() + n, n);
    p.b = Eigen::VectorXd::Zero(effect.rows() + n);
    p.a.topRows(effect.rows()) = 0.1 * effect;
    p.a.bottomRows(n) = 1e-2 * Eigen::MatrixXd::Identity(n, n);
    for (const auto& [id, by] : {std::pair{"bust-girth", 18.0},
                                 {"neckline-length", -10.0},
                                 {"shoulder-slope", 5.0},
                                 {"upper-arm-girth", 12.0}}) {
      const int row = list.find(id);
      ASSERT_GE(row, 0);
      p.a.row(row) *= 10.0;
      p.b[row] = by;
    }
    p.least = Eigen::VectorXd::Constant(n, -6.0);
    p.most = Eigen::VectorXd::Constant(n, 6.0);
    const LeastSquaresAnswer own = solve_least_squares(p);
    ASSERT_TRUE(own.feasible);
    EXPECT_LT(own.kkt, 1e-10);
    EXPECT_FALSE(own.active.empty());
    EXPECT_LT((own.x - ceres_reference(p)).cwiseAbs().maxCoeff(), 1e-6);
  }
}

}  // namespace
}  // namespace pinwright
