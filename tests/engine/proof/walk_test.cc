// The proof finds what was put wrong, and by how much.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/geometry/arc_length.h"
#include "skerry_blocks.h"

namespace pinwright {
namespace {

bool has(const Problems& problems, const std::string& code) {
  for (const Problem& p : problems)
    if (p.code == code) return true;
  return false;
}

const SeamProof& seam(const Proof& proof, const std::string& id) {
  for (const SeamProof& s : proof.seams)
    if (s.seam == id) return s;
  throw std::runtime_error("no seam " + id);
}

TEST(Prove, DraftedBlocksPass) {
  for (const Block* block : {&knit_top(), &woven_bodice()}) {
    const Proof proof = prove(*block);
    EXPECT_TRUE(proof.pass);
    EXPECT_EQ(proof.seams.size(), block->seams.size());
    EXPECT_EQ(proof.joins.size(), block->joins.size());
    EXPECT_TRUE(proof.moved.empty());
  }
}

TEST(Prove, WalksASeamAsTheSumOfItsEdges) {
  const Block& block = knit_top();
  const Proof proof = prove(block);
  const SeamProof& side = seam(proof, "side");
  EXPECT_NEAR(side.a_mm, length(find_edge(*find_piece(block, "front"), "side")->curve), 1e-9);
  EXPECT_NEAR(side.b_mm, length(find_edge(*find_piece(block, "back"), "side")->curve), 1e-9);
  double sections = 0.0;
  for (const SectionProof& s : side.sections) sections += s.a_mm;
  EXPECT_NEAR(sections, side.a_mm, 1e-9);
  EXPECT_GT(side.ease_found, 3.0) << "the front is longer over the bust and eased in";
}

TEST(Prove, FindsANotchThatDoesNotMeetItsMate) {
  Block block = knit_top();
  for (Notch& n : find_piece(block, "sleeve")->notches)
    if (n.id == "front-notch") n.at_mm += 2.0;
  const Proof proof = prove(block);
  EXPECT_FALSE(proof.pass);
  EXPECT_TRUE(has(proof.failures, "seam-unequal"));
  const SeamProof& armhole = seam(proof, "armhole-front");
  EXPECT_FALSE(armhole.ok);
  EXPECT_NEAR(armhole.sections.front().notch_offset_mm, 2.0, 1e-6);
  EXPECT_TRUE(seam(proof, "armhole-back").ok);
}

TEST(Prove, FindsASeamThatIsTooLong) {
  Block block = woven_bodice();
  find_seam(block, "armhole-back")->sections.back().ease_mm += 1.5;
  const Proof proof = prove(block);
  EXPECT_FALSE(seam(proof, "armhole-back").ok);
  EXPECT_NEAR(seam(proof, "armhole-back").ease_found - seam(proof, "armhole-back").ease_wanted,
              -1.5, 0.01);
}

TEST(Prove, ToleranceOfASeamIsATenthOfAMillimetre) {
  for (const auto& [by, passes] : {std::pair{0.08, true}, std::pair{0.12, false}}) {
    Block block = woven_bodice();
    find_seam(block, "armhole-back")->sections.back().ease_mm += by;
    EXPECT_EQ(prove(block).pass, passes) << by;
  }
}

TEST(Prove, FindsAStripThatDoesNotMatchItsOpening) {
  Block block = knit_top();
  block.bindings.front().ratio = 0.85;
  const Proof proof = prove(block);
  EXPECT_TRUE(has(proof.failures, "binding-unequal"));
  EXPECT_NEAR(proof.bindings.front().ratio_found, 0.9, 1e-9);
}

TEST(Prove, FindsAKinkOverTheShoulder) {
  Block block = knit_top();
  Curve& neckline = find_edge(*find_piece(block, "front"), "neckline")->curve;
  // The first handle turned by 3 degrees about the neck point.
  const Vec2 at = neckline.points[0];
  const Vec2 arm = neckline.points[1] - at;
  const double a = radians(3.0);
  neckline.points[1] = at + Vec2{arm.x * std::cos(a) - arm.y * std::sin(a),
                                 arm.x * std::sin(a) + arm.y * std::cos(a)};
  const Proof proof = prove(block);
  EXPECT_TRUE(has(proof.failures, "join-kinked"));
  for (const JoinProof& j : proof.joins)
    if (j.join == "neckline-over-shoulder") {
      EXPECT_NEAR(std::abs(j.deviation_deg), 3.0, 0.05);
    }
}

TEST(Prove, SaysWhatMovedAndWhatDidNot) {
  const Block& before = knit_top();
  const Result<Altered> result = alter(before, {step("lower-neckline", 12)});
  ASSERT_TRUE(result.ok());
  const Proof proof = prove(result->block, &before);
  int moved = 0;
  for (const Moved& m : proof.moved) {
    if (m.same_bits) {
      EXPECT_EQ(m.most_mm, 0.0);
      continue;
    }
    ++moved;
    if (m.piece == "front" && m.edge == "neckline") {
      EXPECT_NEAR(m.most_mm, 12.0, 0.01);
    }
  }
  EXPECT_EQ(moved, 5);  // neckline, centre front, and three edges of the strip
}

TEST(Prove, HoldsFinishedMeasuresAgainstBodyPlusEase) {
  const Block& block = woven_bodice();
  const Proof proof = prove(block);
  int targets = 0;
  for (const MeasureProof& m : proof.measures) {
    if (!m.target) continue;
    ++targets;
    EXPECT_NEAR(m.after, *m.target, 0.5) << m.id;
  }
  EXPECT_GE(targets, 5);
  Measurements other = block.drafted_for.body;
  other["bust-girth"] += 40.0;
  for (const MeasureProof& m : prove(block, nullptr, &other).measures)
    if (m.id == "bust-girth") {
      EXPECT_NEAR(*m.target - m.after, 40.0, 0.5);
    }
}

}  // namespace
}  // namespace pinwright
