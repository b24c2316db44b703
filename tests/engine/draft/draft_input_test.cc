#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "tests/engine/draft/sewn_checks.h"

namespace pinwright {
namespace {

using testing::deckhand;
using testing::purser;

bool told(const Problems& problems, const std::string& code, const std::string& place) {
  return std::any_of(problems.begin(), problems.end(), [&](const Problem& problem) {
    return problem.code == code && problem.place == place && !problem.mend.empty();
  });
}

TEST(DraftInput, UnknownKind) {
  const Result<Block> block = draft("sou'wester", deckhand());
  ASSERT_FALSE(block.ok());
  EXPECT_TRUE(told(block.problems(), "draft-kind-unknown", "/kind"));
  EXPECT_TRUE(required_measurements("sou'wester").empty());
}

TEST(DraftInput, KindsByName) {
  EXPECT_EQ(*draft("knit-top", deckhand()), *draft_knit_top(deckhand()));
  EXPECT_EQ(*draft("woven-bodice", purser()), *draft_woven_bodice(purser()));
}

TEST(DraftInput, EveryMissingMeasurementIsNamed) {
  for (const char* kind : {"knit-top", "woven-bodice"}) {
    const Result<Block> block = draft(kind, DraftInput{});
    ASSERT_FALSE(block.ok());
    const auto needs = required_measurements(kind);
    EXPECT_EQ(block.problems().size(), needs.size());
    for (const std::string_view id : needs) {
      EXPECT_TRUE(told(block.problems(), "measurement-missing", "/wearer/body/" + std::string(id)));
    }
  }
}

TEST(DraftInput, AllWrongInOnePass) {
  DraftInput input = deckhand();
  input.wearer.body["bust-girth"] = 94.0;  // centimetres
  input.wearer.body["waist-girth"] = std::nan("");
  input.wearer.body["bust-girht"] = 940.0;
  input.wearer.body.erase("head-girth");
  input.ease = {{"bust-girth", std::numeric_limits<double>::infinity()}, {"scye-depth", 5.0}};
  input.fabric.stretch_across = -0.2;
  const Result<Block> block = draft_knit_top(input);
  ASSERT_FALSE(block.ok());
  const Problems& problems = block.problems();
  EXPECT_TRUE(told(problems, "measurement-range", "/wearer/body/bust-girth"));
  EXPECT_TRUE(told(problems, "measurement-range", "/wearer/body/waist-girth"));
  EXPECT_TRUE(told(problems, "measurement-unknown", "/wearer/body/bust-girht"));
  EXPECT_TRUE(told(problems, "measurement-missing", "/wearer/body/head-girth"));
  EXPECT_TRUE(told(problems, "ease-range", "/ease/bust-girth"));
  EXPECT_TRUE(told(problems, "ease-unknown", "/ease/scye-depth"));
  EXPECT_TRUE(told(problems, "fabric-stretch", "/fabric"));
  EXPECT_EQ(problems.size(), 7u);
}

TEST(DraftInput, AKnitTopNeedsAKnit) {
  DraftInput input = deckhand();
  input.fabric = purser().fabric;
  const Result<Block> block = draft_knit_top(input);
  ASSERT_FALSE(block.ok());
  EXPECT_TRUE(told(block.problems(), "draft-impossible", "/fabric"));
}

TEST(DraftInput, ANecklineThatDoesNotPassTheHeadIsRefused) {
  DraftInput input = deckhand();
  input.ease = {{"neck-base-girth", 20.0}};
  const Result<Block> block = draft_knit_top(input);
  ASSERT_FALSE(block.ok());
  EXPECT_TRUE(told(block.problems(), "draft-impossible", "/wearer/body/head-girth"));
}

TEST(DraftInput, AFabricThatHardlyStretchesIsRefused) {
  DraftInput input = deckhand();
  input.fabric.stretch_across = 0.0;
  const Result<Block> block = draft_knit_top(input);
  ASSERT_FALSE(block.ok());
  EXPECT_TRUE(told(block.problems(), "draft-impossible", "/wearer/body/head-girth"));
}

TEST(DraftInput, WhatWasAskedForIsCarriedAlong) {
  const Block block = *draft_knit_top(deckhand());
  EXPECT_EQ(block.id, "deck-top");
  EXPECT_EQ(block.name, "Knit top");
  EXPECT_EQ(block.kind, "knit-top");
  EXPECT_EQ(block.size, "deckhand 3");
  EXPECT_EQ(block.fabric, deckhand().fabric);
  EXPECT_EQ(block.drafted_for, deckhand().wearer);
}

}  // namespace
}  // namespace pinwright
