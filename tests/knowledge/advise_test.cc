#include "knowledge/advise.h"

#include <gtest/gtest.h>

#include "engine/alteration/catalogue.h"
#include "tests/knowledge/shipped.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;  // NOLINT: short try-ons read better

TEST(Advise, NothingToldIsNoVerdict) {
  const Advice a = advice("knit-top", {});
  EXPECT_FALSE(a.settled);
  EXPECT_TRUE(a.causes.empty());
  EXPECT_TRUE(a.proposals.empty());
  EXPECT_NE(a.verdict.find("cannot tell yet"), std::string::npos) << a.verdict;
}

TEST(Advise, OnlyAbsentFindingsProposeNothing) {
  const Advice a = advice("knit-top", {unseen("front-neckline-gapes")});
  EXPECT_TRUE(a.causes.empty());
  EXPECT_TRUE(a.proposals.empty());
}

TEST(Advise, CausesComeInOrderWithReasons) {
  const Advice a = advice("woven-bodice", {seen("front-neckline-gapes", whole(25.4)),
                                           unseen("neck-edge-longer-than-pattern")});
  ASSERT_GE(a.causes.size(), 2u);
  for (std::size_t i = 1; i < a.causes.size(); ++i)
    EXPECT_GE(a.causes[i - 1].probability, a.causes[i].probability);
  for (const auto& c : a.causes) EXPECT_GE(c.probability, 0.02);
  ASSERT_FALSE(a.causes[0].reasons_for.empty());
  EXPECT_EQ(a.causes[0].reasons_for[0].sign, "front-neckline-gapes");
  EXPECT_EQ(a.causes[0].reasons_for[0].text,
            "front neckline stands off the chest - 25.4 mm (1 in) on the whole garment");
  EXPECT_GT(a.causes[0].reasons_for[0].log_odds, 0.0);
  for (const auto& c : a.causes) {
    EXPECT_FALSE(c.sources.empty());
    EXPECT_FALSE(c.check.empty());
  }
}

TEST(Advise, AbsentSpeaksAgainstAndSaysSo) {
  const Advice a = advice("woven-bodice", {seen("bust-drag-lines"), unseen("tight-all-round")});
  bool against = false;
  for (const auto& c : a.causes)
    if (c.id == "size-too-small")
      for (const auto& r : c.reasons_against)
        against = against || r.text == "not found: top is tight right round";
  EXPECT_TRUE(against);
}

TEST(Advise, SettledHasNoQuestionAndTheSewingLeavesThePatternAlone) {
  const Advice a =
      advice("woven-bodice",
             {seen("front-neckline-gapes"), seen("neck-edge-longer-than-pattern"),
              unseen("neck-fold-ends-above-bust"), unseen("neck-fold-points-at-bust-point")});
  EXPECT_TRUE(a.settled) << a.verdict;
  EXPECT_FALSE(a.question.has_value());
  EXPECT_NE(a.verdict.find("the pattern stays as it is"), std::string::npos) << a.verdict;
  ASSERT_FALSE(a.proposals.empty());
  EXPECT_EQ(a.proposals[0].cause, "neckline-stretched-in-sewing");
  EXPECT_FALSE(a.proposals[0].on_pattern);
}

TEST(Advise, TwoComplaintsCanBothBeSettled) {
  const Advice a =
      advice("woven-bodice", {seen("top-too-long"), seen("waist-sits-low"),
                              seen("slack-folds-neck-to-armhole"), seen("folds-go-with-a-pad"),
                              unseen("pattern-drawn-for-a-pad"), unseen("loose-all-round")});
  EXPECT_GT(probability(a, "short-body"), 0.8);
  EXPECT_GT(probability(a, "sloping-shoulders"), 0.8);
  EXPECT_TRUE(a.settled) << a.verdict;
  EXPECT_NE(proposal(a, "shorten-body"), nullptr);
  EXPECT_NE(proposal(a, "lower-shoulder-point"), nullptr);
}

TEST(Advise, RemediesThatDisagreeStandSideBySide) {
  const Advice a =
      advice("woven-bodice", {seen("slack-folds-neck-to-armhole"), seen("folds-go-with-a-pad")});
  for (const char* id :
       {"lower-shoulder-point", "pad-under-shoulder", "add-at-neck-for-long-neck"}) {
    const Proposal* p = proposal(a, id);
    ASSERT_NE(p, nullptr) << id;
    EXPECT_FALSE(p->suits.empty());
    EXPECT_FALSE(p->sources.empty());
  }
}

TEST(Advise, UsualAmountIsMarkedAssumed) {
  const Advice a = advice("woven-bodice", {seen("armhole-too-low"), seen("body-lifts-with-arm")});
  const Proposal* p = proposal(a, "raise-underarm");
  ASSERT_NE(p, nullptr);
  EXPECT_TRUE(p->steps[0].assumed);
  EXPECT_TRUE(p->steps[0].has_amount);
  EXPECT_DOUBLE_EQ(p->steps[0].step.amount, -10.0);
}

TEST(Advise, RemedyMeetsTheSignThatWasSeen) {
  const Advice armhole = advice("woven-bodice", {seen("front-armhole-gapes", half(12.0)),
                                                 seen("armhole-fold-points-at-bust-point")});
  ASSERT_NE(proposal(armhole, "armhole-excess-into-bust-dart"), nullptr);
  EXPECT_DOUBLE_EQ(proposal(armhole, "armhole-excess-into-bust-dart")->steps[0].step.amount, 12.0);
  EXPECT_EQ(proposal(armhole, "neckline-excess-into-bust-dart"), nullptr);
  const Advice neck = advice("woven-bodice", {seen("front-neckline-gapes", whole(24.0)),
                                              seen("neck-fold-points-at-bust-point")});
  EXPECT_NE(proposal(neck, "neckline-excess-into-bust-dart"), nullptr);
  EXPECT_EQ(proposal(neck, "armhole-excess-into-bust-dart"), nullptr);
}

TEST(Advise, TooLittleAndTooMuchAreSaid) {
  const Advice little =
      advice("woven-bodice", {seen("top-too-short", whole(2.0)), seen("waist-sits-high")});
  const Proposal* p = proposal(little, "lengthen-body");
  ASSERT_NE(p, nullptr);
  EXPECT_FALSE(p->steps[0].worth_making);
  EXPECT_FALSE(p->steps[0].limit.empty());
  const Advice much =
      advice("woven-bodice", {seen("top-too-short", whole(250.0)), seen("waist-sits-high")});
  p = proposal(much, "lengthen-body");
  ASSERT_NE(p, nullptr);
  EXPECT_DOUBLE_EQ(p->steps[0].step.amount, find_operation("lengthen")->most);
  EXPECT_NE(p->steps[0].limit.find("250 mm"), std::string::npos) << p->steps[0].limit;
}

TEST(Advise, EveryStepOfEveryRemedyIsReadyForThePattern) {
  for (const auto& kind : shipped().kinds)
    for (const auto& s : shipped().signs) {
      const Advice a = advice(kind, {seen(s.id)});
      for (const auto& p : a.proposals)
        for (const auto& step : p.steps) {
          const bool sound = check_step(step.step, "").empty();
          EXPECT_TRUE(sound || !step.has_amount) << p.id;
          EXPECT_EQ(step.text.find('{'), std::string::npos) << step.text;
          EXPECT_FALSE(step.text.empty()) << p.id;
          const bool counts = find_operation(step.step.operation)->amount != AmountKind::none;
          EXPECT_TRUE(step.has_amount || !counts || !step.limit.empty()) << p.id;
        }
    }
}

TEST(Advise, SignOfAnotherBlockKindIsLeftOutAndSaid) {
  const Advice a = advice("woven-bodice", {seen("neck-binding-waves"), seen("top-too-short")});
  bool said = false;
  for (const auto& c : a.cautions) said = said || c.find("neck binding waves") != std::string::npos;
  EXPECT_TRUE(said);
}

TEST(Advise, EverythingAtOnceIsAnsweredOrRefused) {
  std::vector<Finding> all;
  for (const auto& s : shipped().signs) all.push_back(seen(s.id, std::nullopt));
  const auto a = advise(shipped(), bare("knit-top"), told(all), {});
  if (a.ok()) {
    EXPECT_GT(a->causes.size(), 10u);
    EXPECT_LE(a->proposals.size(), 25u);
  } else {
    EXPECT_EQ(a.problems()[0].code, "evidence-too-wide");
  }
}

TEST(Advise, BadInputIsRefused) {
  Finding unknown = seen("front-neckline-gapes");
  unknown.sign = "front-neckline-gaps";
  auto r = advise(shipped(), bare("knit-top"), told({unknown}), {});
  ASSERT_FALSE(r.ok());
  EXPECT_EQ(r.problems()[0].code, "sign-unknown");
  r = advise(shipped(), bare("tent"), told({seen("top-too-short")}), {});
  ASSERT_FALSE(r.ok());
  EXPECT_EQ(r.problems()[0].code, "block-kind-unknown");
  TryOn t = told({seen("top-too-short")});
  t.wearer = Wearer{"deckhand-3", {{"bust-girth", 9.0}}, {}};
  r = advise(shipped(), bare("knit-top"), t, {});
  ASSERT_FALSE(r.ok());
  EXPECT_EQ(r.problems()[0].code, "measurement-range");
}

TEST(Advise, SameInputSameAnswer) {
  const std::vector<Finding> f{seen("front-neckline-gapes", whole(20.0)), seen("top-too-short")};
  const Advice a = advice("knit-top", f);
  const Advice b = advice("knit-top", f);
  ASSERT_EQ(a.causes.size(), b.causes.size());
  for (std::size_t i = 0; i < a.causes.size(); ++i) {
    EXPECT_EQ(a.causes[i].id, b.causes[i].id);
    EXPECT_EQ(a.causes[i].probability, b.causes[i].probability);
  }
  EXPECT_EQ(a.verdict, b.verdict);
}

}  // namespace
}  // namespace pinwright::knowledge
