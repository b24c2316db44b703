#include "engine/draft/statement.h"

#include <gtest/gtest.h>

#include <numbers>

#include "engine/draft/lines.h"
#include "engine/draft/parts.h"
#include "engine/draft/sewing.h"
#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {
namespace {

/// A quarter of a round, from (100, 0) to (0, 100), closed over the centre.
Block quarter() {
  Piece piece;
  piece.id = "yoke";
  piece.edges = {
      curved("hem", EdgeRole::hem,
             chain({round_line({100.0, 0.0}, {0.0, 1.0}, {0.0, 100.0}, {-1.0, 0.0})}), 0.0),
      ruled("centre", EdgeRole::centre_front, {0.0, 100.0}, {0.0, 0.0}, 0.0),
      ruled("side", EdgeRole::side, {0.0, 0.0}, {100.0, 0.0}, 0.0)};
  Block block;
  block.pieces = {piece};
  block.joins = {square_at_fold("hem-at-centre", "Hem at the centre", {"yoke", "hem", "centre"})};
  return block;
}

Statement free_hem(const Block& sketch) {
  Statement holds(sketch);
  holds.bends("yoke", "hem");
  holds.moves("yoke", "hem", {false, true});
  holds.joins();
  return holds;
}

TEST(Statement, MeetsLengthWidthAndJoinTogether) {
  const Block sketch = quarter();
  Statement holds = free_hem(sketch);
  holds.length("the hem", {{"yoke", "hem"}}, 170.0);
  holds.width("the width half way", "yoke", "hem", 50.0, 88.0);
  const auto solved = holds.solved();
  ASSERT_TRUE(solved.ok());
  const Piece& piece = solved->block.pieces[0];
  EXPECT_NEAR(length(piece.edges[0].curve), 170.0, 1e-6);
  EXPECT_NEAR(corner_angle(piece, 0), std::numbers::pi / 2.0, 1e-8);
  EXPECT_EQ(piece.edges[0].curve.start(), (Vec2{100.0, 0.0}));
  EXPECT_GT(solved->most_moved_mm, 5.0);
  EXPECT_TRUE(solved->wiggle.empty());
}

TEST(Statement, AContradictionIsNamed) {
  const Block sketch = quarter();
  Statement holds = free_hem(sketch);
  holds.length("the hem", {{"yoke", "hem"}}, 170.0);
  holds.length("the facing of the hem", {{"yoke", "hem"}}, 150.0);
  const auto solved = holds.solved();
  ASSERT_FALSE(solved.ok());
  EXPECT_EQ(solved.problems()[0].code, "draft-impossible");
  EXPECT_NE(solved.problems()[0].what.find("hem"), std::string::npos);
}

TEST(Statement, FarTargetsAreApproachedInParts) {
  const Block sketch = quarter();
  Statement holds = free_hem(sketch);
  holds.length("the hem", {{"yoke", "hem"}}, 900.0);
  const auto solved = holds.solved();
  ASSERT_TRUE(solved.ok());
  EXPECT_NEAR(length(solved->block.pieces[0].edges[0].curve), 900.0, 1e-6);
}

TEST(Settled, SketchesAnewUntilNothingMoves) {
  double height = 100.0;
  int rounds = 0;
  const Result<Block> block = settled([&]() -> Result<Statement::Solved> {
    ++rounds;
    Block sketch = quarter();
    Piece& piece = sketch.pieces[0];
    piece.edges[0].curve =
        chain({round_line({100.0, 0.0}, {0.0, 1.0}, {0.0, height}, {-1.0, 0.0})});
    piece.edges[1].curve = straight_curve({0.0, height}, {0.0, 0.0});
    Statement holds = free_hem(sketch);
    holds.length("the hem", {{"yoke", "hem"}}, 200.0);
    auto made = holds.solved();
    if (made) height = made->block.pieces[0].edges[0].curve.end().y;
    return made;
  });
  ASSERT_TRUE(block.ok());
  EXPECT_GT(rounds, 1);
  EXPECT_LT(rounds, kMostRounds);
  EXPECT_NEAR(length(block->pieces[0].edges[0].curve), 200.0, 1e-6);
}

}  // namespace
}  // namespace pinwright::drafting
