#include "knowledge/consultation.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/knowledge/shipped.h"

namespace pinwright::knowledge {
namespace {

using testing::advice;
using testing::bare;
using testing::seen;
using testing::shipped;
using testing::told;

Finding answered(const std::string& sign, FindingState state) {
  Finding f = seen(sign);
  f.state = state;
  return f;
}

bool has(const std::vector<std::string>& all, const std::string& one) {
  return std::find(all.begin(), all.end(), one) != all.end();
}

TEST(Consultation, AsksAtMostFiveAndNothingTwiceWhenNobodyCanTell) {
  TryOn tryon = told({seen("front-neckline-gapes")});
  std::set<std::string> asked;
  Advice now = advice(bare("knit-top"), tryon);
  while (now.question) {
    EXPECT_EQ(now.questions_left, kMostQuestions - asked.size());
    EXPECT_TRUE(now.stopped.empty());
    ASSERT_TRUE(asked.insert(now.question->sign).second) << now.question->sign;
    tryon.findings.push_back(answered(now.question->sign, FindingState::not_looked_at));
    tryon.asked.push_back(now.question->sign);
    now = advice(bare("knit-top"), tryon);
  }
  EXPECT_GE(asked.size(), 3u);
  EXPECT_LE(asked.size(), kMostQuestions);
  EXPECT_FALSE(now.settled);
  EXPECT_EQ(now.questions_left, 0u);
  EXPECT_FALSE(now.stopped.empty());
  EXPECT_NE(now.verdict.find("annot tell"), std::string::npos) << now.verdict;
}

TEST(Consultation, StopsOnceItIsSettled) {
  TryOn tryon = told({seen("front-neckline-gapes")});
  Advice now = advice(bare("knit-top"), tryon);
  ASSERT_TRUE(now.question.has_value());
  // The sewing room answers as it is with a neckline stretched in sewing.
  const Cause* truth = find_cause(shipped(), "neckline-stretched-in-sewing");
  ASSERT_NE(truth, nullptr);
  std::size_t asked = 0;
  while (now.question && ++asked <= kMostQuestions) {
    const std::string sign = now.question->sign;
    const bool made = std::any_of(truth->makes.begin(), truth->makes.end(), [&](const Makes& m) {
      return m.sign == sign && m.strength > 0.5;
    });
    tryon.findings.push_back(answered(sign, made ? FindingState::present : FindingState::absent));
    tryon.asked.push_back(sign);
    now = advice(bare("knit-top"), tryon);
  }
  EXPECT_TRUE(now.settled) << now.verdict;
  ASSERT_FALSE(now.causes.empty());
  EXPECT_EQ(now.causes[0].id, truth->id);
  EXPECT_NE(now.stopped.find("settled"), std::string::npos) << now.stopped;
}

TEST(Consultation, WhatWasAskedBeforeIsNotAskedAgain) {
  TryOn tryon = told({seen("front-neckline-gapes")});
  const Advice first = advice(bare("knit-top"), tryon);
  ASSERT_TRUE(first.question.has_value());
  tryon.asked = {first.question->sign};
  const Advice second = advice(bare("knit-top"), tryon);
  ASSERT_TRUE(second.question.has_value());
  EXPECT_NE(second.question->sign, first.question->sign);
  EXPECT_EQ(second.questions_left, first.questions_left - 1);
  tryon.asked.assign(2, first.question->sign);  // told twice, asked once
  EXPECT_EQ(advice(bare("knit-top"), tryon).questions_left, second.questions_left);
}

TEST(Consultation, AHedgedFindingIsWeakerThanASureOne) {
  Finding hedged = seen("front-neckline-gapes");
  hedged.sure = 0.6;
  const Advice sure = advice("knit-top", {seen("front-neckline-gapes")});
  const Advice soft = advice("knit-top", {hedged});
  ASSERT_FALSE(sure.causes.empty());
  ASSERT_FALSE(soft.causes.empty());
  EXPECT_LT(soft.causes[0].probability, sure.causes[0].probability);
  EXPECT_FALSE(soft.settled);
  ASSERT_FALSE(soft.causes[0].reasons_for.empty());
  EXPECT_NE(soft.causes[0].reasons_for[0].text.find("not told for sure"), std::string::npos);
  EXPECT_LT(soft.causes[0].reasons_for[0].log_odds, sure.causes[0].reasons_for[0].log_odds);
}

TEST(Explained, TwoCausesTogether) {
  const Advice both =
      advice("knit-top", {seen("front-neckline-gapes"), seen("upper-chest-slack-fold"),
                          seen("neck-binding-nearly-as-long-as-opening")});
  ASSERT_TRUE(both.explanation.has_value());
  EXPECT_TRUE(has(both.explanation->causes, "hollow-chest")) << both.explanation->text;
  EXPECT_TRUE(has(both.explanation->causes, "neck-binding-too-long")) << both.explanation->text;
  EXPECT_NE(both.explanation->text.find(" together explain"), std::string::npos)
      << both.explanation->text;
  EXPECT_NE(both.explanation->text.find("next best"), std::string::npos);
  EXPECT_GE(both.explanation->times_next, 1.0);
  EXPECT_NE(both.explanation->next, both.explanation->causes);
}

TEST(Explained, NothingSeenIsNotExplained) {
  EXPECT_FALSE(advice("knit-top", {testing::unseen("front-neckline-gapes")}).explanation);
}

}  // namespace
}  // namespace pinwright::knowledge
