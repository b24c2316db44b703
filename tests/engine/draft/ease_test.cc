#include "engine/draft/ease.h"

#include <gtest/gtest.h>

#include "engine/base/units.h"
#include "tests/engine/draft/sewn_checks.h"

namespace pinwright::drafting {
namespace {

TEST(Ease, LessBustEaseTheMoreItStretches) {
  DraftInput input = testing::deckhand();
  const Body body(input.wearer.body);
  double last = 1e9;
  for (const double stretch : {0.2, 0.3, 0.6, 1.0}) {
    input.fabric.stretch_across = stretch;
    const double ease = knit_ease(body, input).at("bust-girth");
    EXPECT_LT(ease, last);
    last = ease;
  }
}

TEST(Ease, TheHeadRulesTheNecklineOfAStableKnit) {
  DraftInput input = testing::deckhand();
  const Body body(input.wearer.body);
  input.fabric.stretch_across = 0.2;
  // 0.9 x neckline x 1.2 = 570 + 10
  EXPECT_NEAR(knit_ease(body, input).at("neck-base-girth"), 580.0 / 1.08 - 385.0, 1e-9);
  input.fabric.stretch_across = 1.0;
  EXPECT_DOUBLE_EQ(knit_ease(body, input).at("neck-base-girth"), 90.0);
}

TEST(Ease, NoSideIsTakenInOver25) {
  DraftInput input = testing::deckhand();
  input.wearer.body["waist-girth"] = 640;
  const EaseMap ease = knit_ease(Body(input.wearer.body), input);
  EXPECT_DOUBLE_EQ(640 + ease.at("waist-girth"), 940 + ease.at("bust-girth") - 100.0);
}

TEST(Ease, WovenKeepsToThePublishedRanges) {
  const EaseMap ease = woven_ease(testing::purser());
  // 3 to 4 in at the bust: New Mexico State University, Guide C-228.
  EXPECT_GE(ease.at("bust-girth"), 3.0 * kMmPerInch);
  EXPECT_LE(ease.at("bust-girth"), 4.0 * kMmPerInch);
  // 3/4 to 1 in at the waist: Central Washington University, costume textbook on line, ch. 16.
  EXPECT_GE(ease.at("waist-girth"), 0.75 * kMmPerInch);
  EXPECT_LE(ease.at("waist-girth"), 1.0 * kMmPerInch);
  // At least 2 in at the upper arm: Threads, Set-in sleeve solutions, 2021-09-27.
  EXPECT_GE(ease.at("upper-arm-girth"), 2.0 * kMmPerInch);
}

}  // namespace
}  // namespace pinwright::drafting
