// What no phrase says: supposed with a mark, or offered, never certain.

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

Understood hear_with_tellings(const std::string& text) {
  static const Knowledge k = [] {
    Knowledge with = test::small_knowledge();
    with.tellings = {{"cap-puckers", {"little dimples all along the crown of the sleeve"}, {}},
                     {"armhole-too-low", {"my bra band shows under the arm"}, {}}};
    return with;
  }();
  static const Listener listener(k, test::dictionary());
  const Result<Understood> result = listener.hear(text, "");
  EXPECT_TRUE(result.ok()) << text;
  return result ? *result : Understood{};
}

TEST(Supposed, ATellingInOtherWordsIsMarked) {
  const Understood told = hear_with_tellings("dimples along the sleeve crown");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_EQ(told.findings[0].sign, "cap-puckers");
  EXPECT_LT(told.findings[0].sure, 1.0);
  EXPECT_GT(told.findings[0].sure, 0.0);
  EXPECT_EQ(told.findings[0].words, "dimples along the sleeve crown");
}

TEST(Supposed, WhatAPhraseSaysIsCertain) {
  const Understood told = hear_with_tellings("the neckline gapes");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_EQ(told.findings[0].sure, 1.0);
}

TEST(Supposed, ANotMakesItAbsent) {
  const Understood told = hear_with_tellings("no dimples along the sleeve crown");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_EQ(told.findings[0].state, FindingState::absent);
  EXPECT_LT(told.findings[0].sure, 1.0);
}

TEST(Supposed, OtherThingsAreReportedOnceAClause) {
  const Understood told =
      hear_with_tellings("I love the colour. I wore it on the ferry to the mainland.");
  EXPECT_TRUE(told.findings.empty());
  EXPECT_EQ(told.not_understood.size(), 2u);
}

TEST(Supposed, WordsPointIntoTheText) {
  const std::string text = "Well, the neckline gapes and my bra band shows under the arm.";
  for (const Finding& finding : hear_with_tellings(text).findings) {
    EXPECT_EQ(text.substr(finding.begin, finding.end - finding.begin), finding.words);
  }
}

TEST(Supposed, WhatIsUnclearIsOffered) {
  const Understood told = hear_with_tellings("something with the crown");
  EXPECT_TRUE(told.findings.empty());
  ASSERT_EQ(told.not_understood.size(), 1u);
  ASSERT_FALSE(told.not_understood[0].nearest.empty());
  EXPECT_EQ(told.not_understood[0].nearest[0], "cap-puckers");
}

}  // namespace
}  // namespace pinwright::knowledge
