// Style, what is no matter for a pattern, what is asked back, what contradicts itself.

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

Understood hear_remarks(const std::string& text) {
  static const Knowledge k = [] {
    Knowledge with = test::small_knowledge();
    with.words.push_back({"style-sleeveless", {"sleeveless", "no sleeves", "without sleeves"}, {}});
    with.words.push_back({"style-collar", {"collar"}, {}});
    with.words.push_back({"style-sleeve", {"cap sleeves"}, {}});
    with.features = {{"sleeveless", "no sleeves", {}, {"sleeve"}}, {"sleeve", "sleeves", {}, {}}};
    with.words.push_back({"beyond-pain", {"hurts", "pain"}, {}});
    with.words.push_back({"beyond-sudden", {"suddenly"}, {}});
    with.signs.push_back(
        test::make_sign("folds-at-waist", "bust", Counts::none, Of::whole, false, {"folds waist"}));
    with.signs.push_back(test::make_sign("slack-folds-at-waist", "bust", Counts::none, Of::whole,
                                         false, {"slack folds waist"}));
    with.signs.push_back(test::make_sign("tight-folds-at-waist", "bust", Counts::none, Of::whole,
                                         false, {"tight folds waist"}));
    with.signs[with.signs.size() - 1].kind_of = "folds-at-waist";
    with.signs[with.signs.size() - 2].kind_of = "folds-at-waist";
    return with;
  }();
  static const Listener listener(k, test::dictionary());
  const Result<Understood> result = listener.hear(text, "");
  EXPECT_TRUE(result.ok()) << text;
  return result ? *result : Understood{};
}

using Texts = std::vector<std::string>;

TEST(Style, IsToldBesideWhatIsSeen) {
  const Understood told = hear_remarks("It is a sleeveless top and the neckline gapes");
  EXPECT_EQ(told.style, Texts{"sleeveless"});
  ASSERT_EQ(told.findings.size(), 1u);
  for (const NotUnderstood& run : told.not_understood) {
    EXPECT_EQ(run.words.find("sleeveless"), std::string::npos) << run.words;
  }
}

TEST(Style, AMemberMayHoldItsOwnNo) {
  EXPECT_EQ(hear_remarks("it has no sleeves").style, Texts{"sleeveless"});
  EXPECT_TRUE(hear_remarks("it has no collar").style.empty());
  EXPECT_EQ(hear_remarks("it has a collar").style, Texts{"collar"});
}

TEST(Style, TheFirstOfTwoThatRuleEachOtherOut) {
  EXPECT_EQ(hear_remarks("sleeveless, though it looks like cap sleeves").style,
            Texts{"sleeveless"});
}

TEST(BeyondPattern, PainIsNotedWithItsPlace) {
  const std::string text = "The armhole is too tight and it hurts";
  const Understood told = hear_remarks(text);
  ASSERT_EQ(told.beyond_pattern.size(), 1u);
  EXPECT_EQ(told.beyond_pattern[0].words, "hurts");
  EXPECT_EQ(text.substr(told.beyond_pattern[0].at, 5), "hurts");
  EXPECT_FALSE(told.beyond_pattern[0].note.empty());
  EXPECT_EQ(told.findings.size(), 1u);
  EXPECT_TRUE(hear_remarks("The armhole is too tight but there is no pain").beyond_pattern.empty());
}

TEST(BeyondPattern, SuddenMattersOnOneSide) {
  EXPECT_EQ(hear_remarks("suddenly the left shoulder sits lower").beyond_pattern.size(), 1u);
  EXPECT_TRUE(hear_remarks("suddenly the neckline gapes").beyond_pattern.empty());
}

TEST(AskBack, HowAnAmountWasTaken) {
  const Understood told = hear_remarks("the neckline gapes 2 cm in all");
  ASSERT_EQ(told.ask_back.size(), 1u);
  EXPECT_EQ(told.ask_back[0].finding, 0u);
  ASSERT_EQ(told.ask_back[0].answers.size(), 2u);
  EXPECT_EQ(told.ask_back[0].answers[0].finding.amount->cloth_mm(), 20.0);
  EXPECT_EQ(told.ask_back[0].answers[1].finding.amount->cloth_mm(), 40.0);
}

TEST(AskBack, EachSideOrInAll) {
  const Understood told = hear_remarks("the neckline gapes, pinched 2 cm");
  ASSERT_EQ(told.ask_back.size(), 1u);
  EXPECT_EQ(told.ask_back[0].answers[0].finding.amount->of, Of::half);
  EXPECT_EQ(told.ask_back[0].answers[1].finding.amount->of, Of::whole);
}

TEST(AskBack, NothingWhenAllIsSaid) {
  EXPECT_TRUE(hear_remarks("the neckline gapes, pinched 2 cm each side").ask_back.empty());
  EXPECT_TRUE(hear_remarks("the neckline gapes").ask_back.empty());
}

TEST(AskBack, TheEndsOfARange) {
  const Understood told = hear_remarks("the neckline gapes, pinched 1-2 cm each side");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_EQ(told.findings[0].amount->mm, 15.0);
  ASSERT_EQ(told.ask_back.size(), 1u);
  EXPECT_EQ(told.ask_back[0].answers[0].finding.amount->mm, 10.0);
  EXPECT_EQ(told.ask_back[0].answers[1].finding.amount->mm, 20.0);
}

TEST(AskBack, AFingerIsNoLength) {
  const Understood told = hear_remarks("the neckline gapes by a finger's width");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_FALSE(told.findings[0].amount.has_value());
  ASSERT_EQ(told.ask_back.size(), 1u);
  EXPECT_NE(told.ask_back[0].question.find("finger"), std::string::npos);
  EXPECT_TRUE(told.not_understood.empty());
}

TEST(AskBack, WhichKindOfAPlainSign) {
  const Understood told = hear_remarks("there are folds at the waist");
  ASSERT_EQ(told.findings.size(), 1u);
  EXPECT_EQ(told.findings[0].sign, "folds-at-waist");
  ASSERT_EQ(told.ask_back.size(), 1u);
  ASSERT_EQ(told.ask_back[0].answers.size(), 3u);
  EXPECT_EQ(told.ask_back[0].answers[0].finding.sign, "slack-folds-at-waist");
  EXPECT_TRUE(hear_remarks("there are slack folds at the waist").ask_back.empty());
}

TEST(Contradictions, AreToldAndNeitherIsSure) {
  const Understood told = hear_remarks("The neckline gapes. The neckline does not gape.");
  ASSERT_EQ(told.findings.size(), 2u);
  ASSERT_EQ(told.contradictions.size(), 1u);
  EXPECT_EQ(told.findings[told.contradictions[0].present].state, FindingState::present);
  EXPECT_EQ(told.findings[told.contradictions[0].absent].state, FindingState::absent);
  for (const Finding& finding : told.findings) EXPECT_LE(finding.sure, 0.5);
}

TEST(Contradictions, NotBetweenSidesOrPostures) {
  EXPECT_TRUE(hear_remarks("The left armhole gapes, the right armhole does not gape")
                  .contradictions.empty());
  EXPECT_TRUE(
      hear_remarks("The neckline gapes when I lean forward. The neckline does not gape standing.")
          .contradictions.empty());
}

}  // namespace
}  // namespace pinwright::knowledge
