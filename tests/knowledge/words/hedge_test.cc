// Hedges, exceptions and what was only tried.

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

Understood hear_hedged(const std::string& text) {
  static const Knowledge k = test::small_knowledge();
  static const Listener listener(k, test::dictionary());
  return *listener.hear(text, "");
}

double sure_of(const std::string& text) {
  const Understood told = hear_hedged(text);
  EXPECT_EQ(told.findings.size(), 1u) << text;
  return told.findings.empty() ? 0.0 : told.findings[0].sure;
}

TEST(Hedges, MakeLessSureAndAreKept) {
  const double plain = sure_of("the neckline gapes");
  const double bit = sure_of("the neckline gapes a bit");
  const double think = sure_of("I think the neckline gapes");
  const double maybe = sure_of("maybe the neckline gapes");
  const double whether = sure_of("not sure if the neckline gapes");
  EXPECT_EQ(plain, 1.0);
  EXPECT_LT(bit, plain);
  EXPECT_LT(think, bit);
  EXPECT_LT(maybe, think);
  EXPECT_LT(whether, maybe);
  EXPECT_GT(whether, 0.0);
  EXPECT_EQ(hear_hedged("not sure if the neckline gapes").findings[0].state, FindingState::present);
}

TEST(Hedges, OfAnAmountLeaveTheFindingSure) {
  EXPECT_EQ(sure_of("the neckline gapes maybe 2 cm"), 1.0);
  EXPECT_EQ(sure_of("the neckline gapes by 2 cm I think"), 1.0);
}

TEST(Exceptions, DoNotShareWhatIsSaidOfTheRest) {
  test::expect_told({{"the bust is fine apart from the neckline",
                      {"bust-too-tight not \"bust is fine\"", "bust-too-loose not \"bust is fine\"",
                       "? the neckline"}},
                     {"the bust is fine except the shoulder is too wide",
                      {"bust-too-tight not \"bust is fine\"", "bust-too-loose not \"bust is fine\"",
                       "shoulder-too-wide \"shoulder is too wide\""}}});
}

TEST(Tests, WhatLiesFineWhenPinnedSaysNothingOfHowItLies) {
  const Understood told = hear_hedged("if I pinch the shoulder the neckline is fine");
  for (const Finding& finding : told.findings) EXPECT_NE(finding.state, FindingState::absent);
}

TEST(Tests, WhatGoesWhenPinnedWasThere) {
  const Understood told = hear_hedged("when I lift the shoulder the neckline does not gape");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_EQ(told.findings[0].sign, "front-neckline-gapes");
  EXPECT_EQ(told.findings[0].state, FindingState::present);
  EXPECT_LT(told.findings[0].sure, 1.0);
}

TEST(Tests, APostureIsNone) {
  const Understood told = hear_hedged("when I raise my arms the neckline does not gape");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_EQ(told.findings[0].state, FindingState::absent);
}

}  // namespace
}  // namespace pinwright::knowledge
