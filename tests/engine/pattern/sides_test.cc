// Halves joined and seen again: to the last bit, and only opened where they differ.
#include "engine/pattern/sides.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "../alteration/skerry_blocks.h"
#include "engine/geometry/arc_length.h"
#include "engine/pattern/opened_piece.h"
#include "engine/proof/proof.h"

namespace pinwright {
namespace {

const Block& drafted(const std::string& kind) {
  return kind == "knit-top" ? knit_top() : woven_bodice();
}

// Inner control points of one side's edges elsewhere: another half, its outline still closed.
Block disturbed(Block block, std::mt19937& rng, const std::string& piece) {
  Piece& p = *find_piece(block, piece);
  for (Edge& edge : p.edges) {
    if (edge.straight) continue;
    for (std::size_t i = 1; i + 1 < edge.curve.points.size(); ++i) {
      edge.curve.points[i].x += 0.3 * static_cast<double>(rng() % 1000) / 999.0;
      edge.curve.points[i].y += 0.3 * static_cast<double>(rng() % 1000) / 999.0;
    }
  }
  for (Notch& notch : p.notches)
    notch.at_mm *= 1.0 - 0.01 * static_cast<double>(rng() % 1000) / 999.0;
  return block;
}

// All but the strips that go round both sides.
void expect_same_half(const Block& a, const Block& b) {
  ASSERT_EQ(a.pieces.size(), b.pieces.size());
  for (std::size_t i = 0; i < a.pieces.size(); ++i) {
    if (edge_of_role(a.pieces[i], EdgeRole::opening) != nullptr) continue;
    EXPECT_TRUE(same_piece(a.pieces[i], b.pieces[i])) << a.pieces[i].id;
    for (std::size_t e = 0; e < a.pieces[i].edges.size(); ++e)
      EXPECT_TRUE(a.pieces[i].edges[e] == b.pieces[i].edges[e]) << a.pieces[i].edges[e].id;
  }
  EXPECT_EQ(a.seams, b.seams);
  EXPECT_EQ(a.joins, b.joins);
  EXPECT_EQ(a.bindings, b.bindings);
  EXPECT_EQ(a.linings, b.linings);
}

class Sides : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Kinds, Sides, ::testing::Values("knit-top", "woven-bodice"));

TEST_P(Sides, EqualHalvesAreTheBlock) {
  const Block block = drafted(GetParam());
  EXPECT_FALSE(is_opened(block));
  for (const Side side : {Side::both, Side::left, Side::right}) {
    const Result<Block> half = half_block(block, side);
    ASSERT_TRUE(half.ok());
    EXPECT_TRUE(*half == block);
  }
  const Result<Block> joined = join_halves(block, block);
  ASSERT_TRUE(joined.ok());
  EXPECT_TRUE(*joined == block);
}

TEST_P(Sides, HalvesComeBackToTheLastBit) {
  const Block block = drafted(GetParam());
  std::mt19937 rng(5);
  for (int i = 0; i < 30; ++i) {
    Block left = block;
    Block right = block;
    for (const char* piece : {"front", "back", "sleeve"}) {
      if (rng() % 2 == 0) left = disturbed(left, rng, piece);
      if (rng() % 2 == 0) right = disturbed(right, rng, piece);
    }
    const Result<Block> joined = join_halves(left, right);
    ASSERT_TRUE(joined.ok());
    const Result<Block> l = half_block(*joined, Side::left);
    const Result<Block> r = half_block(*joined, Side::right);
    ASSERT_TRUE(l.ok() && r.ok());
    expect_same_half(left, *l);
    expect_same_half(right, *r);
    // Once more changes nothing: what was rounded stays.
    const Result<Block> again = join_halves(*l, *r);
    ASSERT_TRUE(again.ok());
    for (const Piece& piece : joined->pieces) {
      if (edge_of_role(piece, EdgeRole::opening) != nullptr) continue;
      EXPECT_TRUE(same_piece(piece, *find_piece(*again, piece.id))) << piece.id;
    }
  }
}

TEST_P(Sides, WhatIsOpenedIsASoundBlockThatSewsTheSame) {
  const Block block = drafted(GetParam());
  const Result<Block> joined = join_halves(block, block, {"front", "back", "sleeve"});
  ASSERT_TRUE(joined.ok());
  EXPECT_TRUE(check_block(*joined).empty());
  const Proof proof = prove(*joined, &block);
  for (const Problem& p : proof.failures) ADD_FAILURE() << p.place << ": " << p.what;
  EXPECT_TRUE(proof.pass);
  for (const Moved& m : proof.moved)
    EXPECT_TRUE(m.same_bits || m.piece == "neck-binding") << m.piece << "." << m.edge;
  // The same garment: every measure, and no measure of one side alone.
  ASSERT_EQ(measures(*joined).size(), measures(block).size());
  for (const GarmentMeasure& m : measures(block))
    EXPECT_NEAR(find_measure(measures(*joined), m.id)->value, m.value, 1e-8) << m.id;
  const Proof plain = prove(block);
  EXPECT_GT(proof.seams.size(), plain.seams.size());
  for (std::size_t i = 0; i < plain.bindings.size(); ++i)
    EXPECT_NEAR(proof.bindings[i].opening_mm, plain.bindings[i].opening_mm, 1e-6);
}

TEST_P(Sides, TheWearersLeftIsWhereTheClothIsLookedAt) {
  const Block block = drafted(GetParam());
  const Result<Block> joined = join_halves(block, block, {"front", "back", "sleeve"});
  ASSERT_TRUE(joined.ok());
  EXPECT_GT(find_edge(*find_piece(*joined, "front"), "armhole-left")->curve.start().x, 0.0);
  EXPECT_LT(find_edge(*find_piece(*joined, "back"), "armhole-left")->curve.start().x, 0.0);
  EXPECT_TRUE(find_edge(*find_piece(*joined, "sleeve-right"), "cap-front")->curve ==
              find_edge(*find_piece(block, "sleeve"), "cap-front")->curve);
  EXPECT_LT(find_edge(*find_piece(*joined, "sleeve-left"), "cap-front")->curve.end().x, 0.0);
  EXPECT_EQ(find_piece(*joined, "front")->cut.count, 1);
  EXPECT_EQ(find_piece(*joined, "sleeve-left")->cut.count, 1);
}

TEST(Joining, HalvesThatDoNotMeetAtTheCentreAreRefused) {
  const Block block = drafted("knit-top");
  Block longer = block;
  Piece& front = *find_piece(longer, "front");
  const std::size_t fold = edge_index(front, *front.fold);
  front.edges[fold].curve = straight_curve(front.edges[fold].curve.start(), {0.0, -5.0});
  front.edges[(fold + 1) % front.edges.size()].curve.points.front() = {0.0, -5.0};
  const Result<Block> joined = join_halves(longer, block);
  ASSERT_FALSE(joined.ok());
  EXPECT_EQ(joined.problems().front().code, "centre-apart");
}

TEST(Joining, WhatServesBothSidesIsRefused) {
  const Block block = drafted("knit-top");
  Block other = block;
  other.bindings.front().ratio = 0.8;
  const Result<Block> joined = join_halves(block, other);
  ASSERT_FALSE(joined.ok());
  EXPECT_EQ(joined.problems().front().code, "one-sided");
  EXPECT_EQ(join_halves(block, drafted("woven-bodice")).problems().front().code, "sides-differ");
}

TEST(Joining, ALiningOpensWithItsShellAndComesBack) {
  Block block = drafted("woven-bodice");
  Piece lining = *find_piece(block, "front");
  lining.id = "front-lining";
  lining.cloth = "lining";
  Piece sleeve_lining = *find_piece(block, "sleeve");
  sleeve_lining.id = "sleeve-lining";
  block.pieces.push_back(lining);
  block.pieces.push_back(sleeve_lining);
  block.linings = {{"front-lining", "front"}, {"sleeve-lining", "sleeve"}};
  const Result<Block> joined = join_halves(block, block, {"front", "sleeve"});
  ASSERT_TRUE(joined.ok());
  EXPECT_TRUE(find_piece(*joined, "front-lining")->centre_line.has_value());
  EXPECT_EQ(joined->linings.size(), 3u);
  EXPECT_TRUE(check_block(*joined).empty());
  const Result<Block> half = half_block(*joined, Side::right);
  ASSERT_TRUE(half.ok());
  expect_same_half(block, *half);
}

TEST(Joining, AnArmholeStripIsCutForEachSide) {
  Block block = drafted("knit-top");
  Piece strip = *find_piece(block, "neck-binding");
  strip.id = "armhole-binding";
  strip.cut = {2, false};
  block.pieces.push_back(strip);
  block.bindings.push_back({"armhole-binding",
                            "armhole-binding",
                            {{"front", "armhole", false}, {"back", "armhole", true}},
                            1,
                            0.9,
                            10});
  const Result<Block> joined = join_halves(block, block, {"front", "armhole-binding"});
  ASSERT_TRUE(joined.ok());
  EXPECT_NE(find_piece(*joined, "armhole-binding-left"), nullptr);
  EXPECT_EQ(joined->bindings.size(), 3u);
  EXPECT_TRUE(check_block(*joined).empty());
  for (const Side side : {Side::left, Side::right})
    expect_same_half(block, *half_block(*joined, side));
}

TEST(Opened, AnEdgeWithoutItsMateIsFound) {
  const Block block = drafted("knit-top");
  Block joined = *join_halves(block, block, {"front"});
  find_piece(joined, "front")->notches.pop_back();
  EXPECT_EQ(check_block(joined).empty(), false);
  Block renamed = *join_halves(block, block, {"front"});
  renamed.pieces.front().centre_line->curve.points.front().x = 3.0;
  const Problems found = check_block(renamed);
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found.front().code, "centre-line");
}

}  // namespace
}  // namespace pinwright
