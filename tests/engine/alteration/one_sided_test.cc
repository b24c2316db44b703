// One shoulder lower, one side fuller: what opens, what follows, what stays to the last bit.
#include <gtest/gtest.h>

#include <random>

#include "engine/geometry/arc_length.h"
#include "engine/pattern/opened_piece.h"
#include "engine/pattern/sides.h"
#include "random_step.h"
#include "skerry_blocks.h"

namespace pinwright {
namespace {

Step on(Side side, Step s) {
  s.side = side;
  return s;
}

Block half(const Block& block, Side side) {
  Result<Block> out = half_block(block, side);
  EXPECT_TRUE(out.ok());
  return out.ok() ? *out : block;
}

bool full(const Block& block, const std::string& piece) {
  const Piece* p = find_piece(block, piece);
  return p != nullptr && p->centre_line.has_value();
}

// Every line of the side that was not asked for is where it was; a side of an unopened piece is
// both sides'.
void expect_untouched(const Block& before, const Block& after, Side side) {
  const Block was = half(before, side);
  const Block is = half(after, side);
  for (const Piece& piece : was.pieces) {
    if (edge_of_role(piece, EdgeRole::opening) != nullptr) continue;
    const Piece& now = *find_piece(is, piece.id);
    const bool notched = piece.notches.size() != now.notches.size();  // for an eased elbow
    EXPECT_TRUE(notched || same_piece(piece, now)) << piece.id;
    for (const Edge& edge : piece.edges)
      EXPECT_TRUE(same_bits(was, is, piece.id, edge.id)) << piece.id << "." << edge.id;
  }
}

class BothBlocks : public testing::TestWithParam<const Block* (*)()> {
 protected:
  const Block& block() const { return *GetParam()(); }
};
const Block* the_knit() { return &knit_top(); }
const Block* the_woven() { return &woven_bodice(); }
INSTANTIATE_TEST_SUITE_P(Skerry, BothBlocks, testing::Values(&the_knit, &the_woven));

TEST_P(BothBlocks, OneShoulderLowered) {
  for (const Side side : {Side::left, Side::right}) {
    const Block after = altered(block(), {on(side, step("swing-shoulder", 8))});
    EXPECT_TRUE(full(after, "front"));
    EXPECT_TRUE(full(after, "back"));
    expect_untouched(block(), after, other_side(side));
    // That half is the one that a change of both sides would have made.
    const Block both = altered(block(), {step("swing-shoulder", 8)});
    EXPECT_TRUE(same_piece(*find_piece(half(after, side), "front"), *find_piece(both, "front")));
    EXPECT_TRUE(same_piece(*find_piece(half(after, side), "back"), *find_piece(both, "back")));
    const double plain = garment(block(), "shoulder-slope");
    EXPECT_EQ(garment(after, "shoulder-slope" + std::string(suffix(other_side(side)))), plain);
    EXPECT_GT(garment(after, "shoulder-slope" + std::string(suffix(side))), plain);
    EXPECT_NEAR(garment(after, "bust-girth"),
                (garment(block(), "bust-girth") + garment(both, "bust-girth")) / 2.0, 1e-9);
  }
}

TEST_P(BothBlocks, OneSideFuller) {
  const Block after = altered(block(), {on(Side::left, step("full-bust", 8))});
  EXPECT_TRUE(full(after, "front"));
  EXPECT_FALSE(full(after, "back"));  // nothing of it is different
  EXPECT_TRUE(*find_piece(after, "back") == *find_piece(block(), "back"));
  expect_untouched(block(), after, Side::right);
  EXPECT_GT(garment(after, "bust-girth"), garment(block(), "bust-girth") + 4.0);
}

TEST_P(BothBlocks, OneSideLetOutWithItsSleeve) {
  const Block after = altered(block(), {on(Side::right, step("let-out-side", 10))});
  expect_untouched(block(), after, Side::left);
  EXPECT_NEAR(garment(after, "bust-girth"), garment(block(), "bust-girth") + 10.0, 0.5);
  ASSERT_NE(find_piece(after, "sleeve-left"), nullptr);
  ASSERT_NE(find_piece(after, "sleeve-right"), nullptr);
  EXPECT_GT(garment(after, "upper-arm-girth-right"), garment(after, "upper-arm-girth-left") + 5.0);
}

TEST_P(BothBlocks, OneUpperArm) {
  const Block after = altered(block(), {on(Side::left, step("widen-upper-arm", 12))});
  EXPECT_FALSE(full(after, "front"));
  EXPECT_FALSE(full(after, "back"));
  expect_untouched(block(), after, Side::right);
  EXPECT_NEAR(garment(after, "upper-arm-girth-left"), garment(block(), "upper-arm-girth") + 12.0,
              0.5);
}

TEST_P(BothBlocks, OneSideLongerMeetsAtTheCentre) {
  const Block after = altered(block(), {on(Side::left, step("lengthen", 6, {{"piece", "body"}}))});
  expect_untouched(block(), after, Side::right);
  EXPECT_EQ(garment(after, "front-length"), garment(block(), "front-length"));
  EXPECT_NEAR(garment(after, "side-length-left"), garment(block(), "side-length") + 6.0, 0.2);
}

TEST_P(BothBlocks, WhatBothSidesShareIsRefused) {
  for (const Step& s : {step("lower-neckline", 6, {{"piece", "front"}})}) {
    const Result<Altered> result = alter(block(), {on(Side::left, s)});
    ASSERT_FALSE(result.ok());
    EXPECT_EQ(result.problems().front().code, "one-sided");
    EXPECT_EQ(result.problems().front().place, "/steps/0/side");
  }
}

TEST(OneSided, TheStripIsOne) {
  const Result<Altered> result =
      alter(knit_top(), {on(Side::left, step("set-binding-ratio", 0.8))});
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.problems().front().code, "one-sided");
}

TEST_P(BothBlocks, TheOtherSideAlikeClosesIt) {
  for (const Step& s : {step("swing-shoulder", 8), step("full-bust", 8), step("let-out-side", 10),
                        step("widen-upper-arm", 12), step("widen-neckline", 5)}) {
    const Block one = altered(block(), {on(Side::left, s)});
    EXPECT_TRUE(is_opened(one)) << s.operation;
    const Block two = altered(one, {on(Side::right, s)});
    EXPECT_FALSE(is_opened(two)) << s.operation;
    EXPECT_EQ(two.seams.size(), block().seams.size());
  }
}

TEST_P(BothBlocks, ThereAndBackIsAsAtOnce) {
  const Step s = step("swing-shoulder", 8);
  const Block both = altered(block(), {s});
  const Block two = altered(block(), {on(Side::right, s), on(Side::left, s)});
  for (const Piece& piece : both.pieces)
    EXPECT_TRUE(same_piece(piece, *find_piece(two, piece.id))) << piece.id;
  EXPECT_EQ(two.joins, both.joins);
}

TEST_P(BothBlocks, AStepForBothOnAnOpenedBlock) {
  const Block one = altered(block(), {on(Side::left, step("swing-shoulder", 8))});
  const Block two = altered(one, {step("let-out-side", 8)});
  EXPECT_TRUE(full(two, "front"));
  EXPECT_NEAR(garment(two, "bust-girth"), garment(one, "bust-girth") + 16.0, 0.5);
  const Block three = altered(one, {step("lower-neckline", 6, {{"piece", "front"}})});
  EXPECT_NEAR(garment(three, "front-neck-depth"), garment(one, "front-neck-depth") + 6.0, 1e-6);
}

TEST(OneSided, TheNoteNamesTheSideAndThePieces) {
  const Result<Altered> done = alter(knit_top(), {on(Side::left, step("let-out-side", 10))});
  ASSERT_TRUE(done.ok());
  const StepNote& note = done->notes.front();
  EXPECT_EQ(note.text.rfind("left side: ", 0), 0u) << note.text;
  EXPECT_NE(note.text.find("this side only"), std::string::npos) << note.text;
  for (const std::string& piece : note.pieces)
    EXPECT_NE(find_piece(done->block, piece), nullptr) << piece;
}

TEST(OneSided, TheBindingFollowsTheOneSide) {
  const Block after = altered(
      knit_top(),
      {on(Side::left, step("close-wedge", 8,
                           {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "armhole"}}))});
  ASSERT_EQ(after.bindings.size(), 1u);
  EXPECT_EQ(after.bindings.front().copies, 1);
  EXPECT_EQ(after.bindings.front().opening.size(), 4u);
  EXPECT_NEAR(garment(after, "neckline-length"), garment(knit_top(), "neckline-length") - 8.0, 0.1);
  // The notch at the centre front lies between the unequal halves' stretches.
  const Piece& strip = *find_piece(after, "neck-binding");
  double to_centre = 0.0;
  for (std::size_t i = 0; i < 2; ++i) {
    const RunPart& part = after.bindings.front().opening[i];
    to_centre += length(find_edge(*find_piece(after, part.piece), part.edge)->curve);
  }
  EXPECT_NEAR(find_notch(strip, "centre-front-notch")->at_mm,
              after.bindings.front().ratio * to_centre, 1e-6);
}

TEST_P(BothBlocks, RandomSidesStayProved) {
  std::mt19937 rng(21);
  int done = 0;
  for (int i = 0; i < 40; ++i) {
    Block now = block();
    for (int k = 0; k < 4; ++k) {
      Step s = random_step(rng);
      s.side = std::array{Side::left, Side::right, Side::both}[rng() % 3];
      const Result<Altered> result = alter(now, {s});
      if (!result) {
        EXPECT_EQ(result.problems().front().place.rfind("/steps/0", 0), 0u);
        EXPECT_FALSE(result.problems().front().mend.empty());
        continue;
      }
      const Proof proof = prove(result->block, &now);
      ASSERT_TRUE(proof.pass) << s.operation << " " << s.amount << " " << to_text(s.side)
                              << " sequence " << i << ": " << proof.failures.front().place << " "
                              << proof.failures.front().what;
      ASSERT_TRUE(check_block(result->block).empty());
      if (s.side != Side::both) expect_untouched(now, result->block, other_side(s.side));
      now = result->block;
      ++done;
    }
  }
  EXPECT_GT(done, 60);
}

}  // namespace
}  // namespace pinwright
