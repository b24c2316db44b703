// Limits: what they count, and that the solver keeps them by its active set.
#include "engine/constraint/limits.h"

#include <gtest/gtest.h>

#include <cmath>

#include "../alteration/skerry_blocks.h"
#include "engine/constraint/conflict.h"
#include "engine/constraint/solve.h"
#include "engine/geometry/arc_length.h"
#include "sheet.h"

namespace pinwright {
namespace {

const Limit* limit(const std::vector<Limit>& all, std::string_view id) {
  for (const Limit& l : all)
    if (l.id == id) return &l;
  return nullptr;
}

TEST(Limits, OpeningCountsTheStretchOfTheStrip) {
  const Block& top = knit_top();
  const std::vector<Limit> all = limits_of(top, top.drafted_for.body, top.fabric);
  const Limit* opening = limit(all, "opening-passes-head");
  ASSERT_NE(opening, nullptr);
  EXPECT_NEAR(opening->found, garment(top, "neckline-length"), 1e-9);
  const double head = top.drafted_for.body.at("head-girth");
  EXPECT_NEAR(opening->bound * top.bindings[0].ratio * (1.0 + top.fabric.stretch_across), head,
              1e-9);
  EXPECT_TRUE(opening->holds());
}

TEST(Limits, DraftedBlocksHoldAllOfTheirs) {
  for (const Block* block : {&knit_top(), &woven_bodice()}) {
    const std::vector<Limit> all = limits_of(*block, block->drafted_for.body, block->fabric);
    EXPECT_GE(all.size(), 5u);
    for (const Limit& l : all) EXPECT_TRUE(l.holds()) << l.name << ' ' << l.found;
  }
}

TEST(Limits, AWovenBodiceIsNotPulledOverTheHead) {
  const Block& bodice = woven_bodice();
  const std::vector<Limit> all = limits_of(bodice, {{"head-girth", 900.0}}, bodice.fabric);
  EXPECT_EQ(limit(all, "opening-passes-head"), nullptr);
}

TEST(Inequality, KeepsTheRadiusAtTheStartWhileTheCurveGetsShorter) {
  Block loose = sheet();
  System system;
  system.free_edges = {{0, kTop}};
  const double was = length(loose.pieces[0].edges[kTop].curve);
  system.lengths = {{"the top", {{{0, kTop}, 1.0}}, was + 12.0}};
  Block bound = loose;
  ASSERT_TRUE(solve(loose, system).ok());
  const auto radius = [](const Block& b) {
    return 1.0 / std::abs(curvature(b.pieces[0].edges[kTop].curve, CurvePlace{0, 0.0}));
  };
  const double least = radius(loose) * 1.5;
  system.radii = {{"gentle", {0, kTop}, true, least, ""}};
  ASSERT_TRUE(solve(bound, system).ok());
  EXPECT_GE(radius(bound), least - 1e-6);
  EXPECT_NEAR(length(bound.pieces[0].edges[kTop].curve), was + 12.0, 1e-6);
  // The limit binds: nothing is given away.
  EXPECT_NEAR(radius(bound), least, 1e-3);
}

TEST(Inequality, ThatHoldsAnywayChangesNothing) {
  Block free = sheet();
  Block bound = free;
  System system;
  system.free_edges = {{0, kTop}};
  const double was = length(free.pieces[0].edges[kTop].curve);
  system.lengths = {{"the top", {{{0, kTop}, 1.0}}, was - 5.0}};
  ASSERT_TRUE(solve(free, system).ok());
  system.lengths.push_back({"no more", {{{0, kTop}, 1.0}}, was, Sense::at_most});
  ASSERT_TRUE(solve(bound, system).ok());
  for (std::size_t i = 0; i < free.pieces[0].edges[kTop].curve.points.size(); ++i)
    EXPECT_LT(distance(free.pieces[0].edges[kTop].curve.points[i],
                       bound.pieces[0].edges[kTop].curve.points[i]),
              1e-9);
}

TEST(Inequality, ALengthAloneMovesOnlyAsFarAsItMust) {
  Block block = sheet();
  System system;
  system.free_edges = {{0, kTop}};
  const double was = length(block.pieces[0].edges[kTop].curve);
  system.lengths = {{"at least", {{{0, kTop}, 1.0}}, was + 3.0, Sense::at_least}};
  ASSERT_TRUE(solve(block, system).ok());
  EXPECT_NEAR(length(block.pieces[0].edges[kTop].curve), was + 3.0, 1e-6);
}

TEST(Conflict, IsTheSmallestSetAndNoMemberCanBeSpared) {
  const Block block = sheet();
  System system;
  system.free_edges = {{0, kTop}};
  const double was = length(block.pieces[0].edges[kTop].curve);
  system.angles = {{"the top is square", {{0, kTop}}, 1.57}};
  system.lengths = {
      {"the top is shorter", {{{0, kTop}, 1.0}}, was - 8.0},
      {"the top is at most as long as before", {{{0, kTop}, 1.0}}, was, Sense::at_most},
      {"the head passes", {{{0, kTop}, 1.0}}, was - 2.0, Sense::at_least, "keep it longer"}};
  const Conflict conflict = smallest_conflict(block, system);
  ASSERT_EQ(conflict.members.size(), 2u);
  EXPECT_NE(conflict.members[0].name.find("the top is shorter"), std::string::npos);
  EXPECT_NE(conflict.members[1].name.find("the head passes"), std::string::npos);
  EXPECT_EQ(conflict.relax, "keep it longer");
  for (const std::size_t spared : {std::size_t{0}, std::size_t{2}}) {
    System rest = system;
    rest.lengths.erase(rest.lengths.begin() + static_cast<std::ptrdiff_t>(spared));
    Block trial = block;
    EXPECT_TRUE(solve(trial, rest).ok());
  }
}

TEST(Conflict, ASolvableSystemHasNone) {
  System system;
  system.free_edges = {{0, kTop}};
  system.angles = {{"square", {{0, kTop}}, 1.57}};
  EXPECT_TRUE(smallest_conflict(sheet(), system).members.empty());
}

TEST(Conflict, TheOpeningMustPassTheHead) {
  // Closing 40 mm on the half neckline of a top whose opening has little to spare.
  Step s;
  s.operation = "close-wedge";
  s.options = {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "armhole"}};
  s.amount = 35.0;
  const Result<Altered> refused = alter(knit_top(), {s});
  ASSERT_FALSE(refused.ok());
  const Problem& problem = refused.problems().front();
  EXPECT_EQ(problem.code, "conflict");
  EXPECT_NE(problem.what.find("passes a head of 545 mm"), std::string::npos) << problem.what;
  EXPECT_NE(problem.mend.find("407 mm"), std::string::npos) << problem.mend;
}

}  // namespace
}  // namespace pinwright
