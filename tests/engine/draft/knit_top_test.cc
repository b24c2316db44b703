#include <gtest/gtest.h>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/pattern/measures.h"
#include "tests/engine/draft/sewn_checks.h"

namespace pinwright {
namespace {

using testing::deckhand;
using testing::faults;
using testing::joined;
using testing::measure_faults;

Block drafted(const DraftInput& input) {
  const Result<Block> block = draft_knit_top(input);
  EXPECT_TRUE(block.ok()) << block.problems()[0].what;
  return *block;
}

double edge_mm(const Block& block, const char* piece, const char* edge) {
  return length(find_edge(*find_piece(block, piece), edge)->curve);
}

TEST(KnitTop, CanBeSewn) {
  const Block block = drafted(deckhand());
  EXPECT_EQ(joined(faults(block)), "");
  EXPECT_EQ(joined(measure_faults(block)), "");
}

TEST(KnitTop, HasItsEdgesInRingOrder) {
  const Block block = drafted(deckhand());
  const std::vector<std::vector<std::string>> wanted = {
      {"hem", "side", "armhole", "shoulder", "neckline", "centre-front"},
      {"hem", "side", "armhole", "shoulder", "neckline", "centre-back"},
      {"hem", "underarm-front", "cap-front", "cap-back", "underarm-back"},
      {"opening", "join-end", "folded", "join-start"}};
  ASSERT_EQ(block.pieces.size(), wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    std::vector<std::string> ids;
    for (const Edge& edge : block.pieces[i].edges) ids.push_back(edge.id);
    EXPECT_EQ(ids, wanted[i]);
  }
}

TEST(KnitTop, GivesTheUsualEase) {
  const Block block = drafted(deckhand());
  EXPECT_DOUBLE_EQ(block.ease.at("bust-girth"), 20.0);  // 30 % stretch
  EXPECT_DOUBLE_EQ(block.ease.at("hip-girth"), 30.0);
  EXPECT_DOUBLE_EQ(block.ease.at("upper-arm-girth"), 25.0);
}

TEST(KnitTop, TakesAnotherEaseWhenAsked) {
  DraftInput input = deckhand();
  input.ease = {{"bust-girth", -40.0},
                {"waist-girth", 10.0},
                {"hip-girth", 0.0},
                {"upper-arm-girth", 5.0},
                {"neck-base-girth", 130.0}};
  const Block block = drafted(input);
  const auto all = measures(block);
  EXPECT_NEAR(find_measure(all, "bust-girth")->value, 900.0, 0.01);
  EXPECT_NEAR(find_measure(all, "waist-girth")->value, 780.0, 0.01);
  EXPECT_NEAR(find_measure(all, "hem-girth")->value, 1000.0, 0.01);
  EXPECT_NEAR(find_measure(all, "upper-arm-girth")->value, 297.0, 0.01);
  EXPECT_NEAR(find_measure(all, "neckline-length")->value, 515.0, 0.01);
  EXPECT_EQ(joined(faults(block)), "");
}

TEST(KnitTop, StretchedBindingPassesTheHead) {
  for (const double stretch : {0.2, 0.3, 0.6, 1.0}) {
    DraftInput input = deckhand();
    input.fabric.stretch_across = stretch;
    const Block block = drafted(input);
    EXPECT_GE(edge_mm(block, "neck-binding", "opening") * (1.0 + stretch), 570.0) << stretch;
  }
}

TEST(KnitTop, ACapWithoutEase) {
  const Block block = drafted(deckhand());
  EXPECT_NEAR(edge_mm(block, "sleeve", "cap-front"), edge_mm(block, "front", "armhole"), 1e-6);
  EXPECT_NEAR(edge_mm(block, "sleeve", "cap-back"), edge_mm(block, "back", "armhole"), 1e-6);
}

TEST(KnitTop, EasesMoreForAFullerBust) {
  DraftInput flat = deckhand();
  flat.wearer.body["under-bust-girth"] = 840;
  DraftInput full = deckhand();
  full.wearer.body["under-bust-girth"] = 740;
  const auto extra = [](const Block& block) {
    return edge_mm(block, "front", "side") - edge_mm(block, "back", "side");
  };
  EXPECT_NEAR(extra(drafted(flat)), 6.0, 1e-6);
  EXPECT_NEAR(extra(drafted(full)), 12.0, 1e-6);
}

TEST(KnitTop, LooksLikeOne) {
  const Block block = drafted(deckhand());
  const auto all = measures(block);
  const Piece& front = *find_piece(block, "front");
  const Piece& back = *find_piece(block, "back");
  const auto neck_depth = [](const Piece& piece) {
    const Curve& line = find_edge(piece, "neckline")->curve;
    return line.start().y - line.end().y;
  };
  EXPECT_GT(neck_depth(front), 3.0 * neck_depth(back));
  EXPECT_NEAR(degrees(find_measure(all, "shoulder-slope")->value), 20.5, 0.1);
  EXPECT_LT(find_measure(all, "across-front-width")->value,
            find_measure(all, "across-back-width")->value);
  for (const Piece* piece : {&front, &back}) {
    EXPECT_EQ(inflections(find_edge(*piece, "armhole")->curve), 0);
    EXPECT_EQ(inflections(find_edge(*piece, "neckline")->curve), 0);
  }
  const Piece& sleeve = *find_piece(block, "sleeve");
  EXPECT_EQ(inflections(find_edge(sleeve, "cap-front")->curve), 1);
  EXPECT_EQ(inflections(find_edge(sleeve, "cap-back")->curve), 1);
}

TEST(KnitTop, SaysWhereItIsCutAndFolded) {
  const Block block = drafted(deckhand());
  for (const Piece& piece : block.pieces) {
    for (const Edge& edge : piece.edges) {
      const bool hem = edge.role == EdgeRole::hem || edge.role == EdgeRole::sleeve_hem;
      const bool fold = piece.fold && edge.id == *piece.fold;
      EXPECT_DOUBLE_EQ(edge.allowance.width_mm, fold ? 0.0 : hem ? 16.0 : 10.0) << edge.id;
      EXPECT_EQ(edge.allowance.kind, hem ? AllowanceKind::hem : AllowanceKind::plain) << edge.id;
    }
  }
  EXPECT_EQ(find_piece(block, "sleeve")->cut, (CutPlan{2, true}));
}

TEST(KnitTop, LowersTheUnderarmForALargeArm) {
  DraftInput usual = deckhand();
  DraftInput large = deckhand();
  large.wearer.body["upper-arm-girth"] = 440;
  const auto depth = [](const Block& block) {
    return find_measure(measures(block), "armhole-depth")->value;
  };
  const Block block = drafted(large);
  EXPECT_GT(depth(block), depth(drafted(usual)) + 5.0);
  const auto all = measures(block);
  EXPECT_GE(find_measure(all, "cap-height")->value,
            0.25 * find_measure(all, "upper-arm-girth")->value);
  EXPECT_EQ(joined(faults(block)), "");
}

TEST(KnitTop, SameInputSameBits) { EXPECT_EQ(drafted(deckhand()), drafted(deckhand())); }

}  // namespace
}  // namespace pinwright
