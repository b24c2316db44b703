#include "engine/pattern/size_range.h"

#include <gtest/gtest.h>

#include "tests/engine/pattern/shapes.h"

namespace pinwright {
namespace {

Block sized(const char* label) {
  Block block;
  block.id = "top";
  block.size = label;
  Piece front = testing::half("front", EdgeRole::centre_front, 90.0);
  front.notches = {{"notch", "side", 100.0}};
  front.landmarks = {{"bust-point", {80.0, 200.0}}};
  block.pieces = {front, testing::half("back", EdgeRole::centre_back, 20.0)};
  block.seams = {{"side", "Side", {{"front", "side"}}, {{"back", "side"}}, {{"", "", 0.0}}}};
  block.joins = {{"hem", "Hem", {{"front", "hem", "side"}, {"back", "hem", "side"}}, 3.14}};
  block.bindings = {{"b", "strip", {{"front", "neckline"}}, 2, 0.9, 10.0}};
  return block;
}

TEST(Topology, OtherLengthsAreTheSameTopology) {
  Block larger = sized("2");
  larger.pieces[0].notches[0].at_mm = 120.0;
  larger.pieces[0].edges[0].curve = straight_curve({0.0, 0.0}, {210.0, 0.0});
  larger.seams[0].sections[0].ease_mm = 4.0;
  larger.bindings[0].ratio = 0.85;
  EXPECT_TRUE(topology_differences(sized("1"), larger).empty());
}

TEST(Topology, EveryKindOfDifferenceIsTold) {
  const Block a = sized("1");
  const auto differs = [&](auto change) {
    Block b = sized("2");
    change(b);
    const Problems problems = topology_differences(a, b);
    for (const Problem& problem : problems) EXPECT_EQ(problem.code, "topology-differs");
    return problems.size();
  };
  EXPECT_EQ(differs([](Block& b) { b.pieces.pop_back(); }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].edges[1].id = "flank"; }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].edges[1].role = EdgeRole::hem; }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].edges[1].straight = false; }), 1u);
  EXPECT_EQ(differs([](Block& b) {
              Curve& curve = b.pieces[0].edges[1].curve;
              curve = joined(curve, straight_curve(curve.end(), curve.end()));
            }),
            1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].notches[0].edge = "hem"; }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].notches.clear(); }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].landmarks.clear(); }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].darts = {{"d", "hem", "side", ""}}; }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.pieces[0].fold.reset(); }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.seams[0].b[0].reversed = true; }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.seams[0].sections[0].notch_a = "n"; }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.joins.clear(); }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.joins[0].corners.pop_back(); }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.bindings[0].copies = 1; }), 1u);
  EXPECT_EQ(differs([](Block& b) { b.linings = {{"l", "front"}}; }), 1u);
  EXPECT_EQ(differs([](Block& b) {
              b.pieces[0].fold.reset();
              b.joins.clear();
            }),
            2u);
}

TEST(SizeRange, LabelsOnceAndOneTopology) {
  SizeRange range{"tops", {sized("36"), sized("38"), sized("40")}};
  EXPECT_TRUE(check(range).empty());
  range.sizes[2].size = "38";
  range.sizes[1].joins.clear();
  const Problems problems = check(range);
  ASSERT_EQ(problems.size(), 2u);
  EXPECT_EQ(problems[0].code, "topology-differs");
  EXPECT_EQ(problems[0].place.rfind("size 38", 0), 0u);
  EXPECT_EQ(problems[1].code, "size-twice");
}

TEST(SizeRange, AnEmptyOneIsSound) { EXPECT_TRUE(check(SizeRange{}).empty()); }

}  // namespace
}  // namespace pinwright
