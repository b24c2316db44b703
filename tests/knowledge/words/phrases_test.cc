#include "knowledge/words/phrases.h"

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

std::string code(std::string_view phrase) {
  const Result<Phrase> result = parse_phrase(phrase);
  return result ? "" : result.problems().front().code;
}

TEST(ParsePhrase, ItemsInTheirOrder) {
  const Result<Phrase> phrase = parse_phrase("= Stands ... off (the <neckline>) centre-front");
  ASSERT_TRUE(phrase.ok());
  EXPECT_TRUE(phrase->ordered);
  ASSERT_EQ(phrase->items.size(), 7u);
  EXPECT_EQ(phrase->items[0].text, "stands");
  EXPECT_EQ(phrase->items[1].kind, PhraseItem::Kind::gap);
  EXPECT_EQ(phrase->items[3].option, 1);
  EXPECT_EQ(phrase->items[4].kind, PhraseItem::Kind::word_class);
  EXPECT_EQ(phrase->items[4].text, "neckline");
  EXPECT_EQ(phrase->items[6].text, "front");
}

TEST(ParsePhrase, RefusesWhatItCannotRead) {
  EXPECT_EQ(code("(front neckline"), "phrase-syntax");
  EXPECT_EQ(code("front) neckline"), "phrase-syntax");
  EXPECT_EQ(code("((front)) neckline"), "phrase-syntax");
  EXPECT_EQ(code("<neckline gapes"), "phrase-syntax");
  EXPECT_EQ(code("<> gapes"), "phrase-syntax");
  EXPECT_EQ(code("neckline = gapes"), "phrase-syntax");
  EXPECT_EQ(code("neckline * gapes"), "phrase-syntax");
  EXPECT_EQ(code(""), "phrase-empty");
  EXPECT_EQ(code("(front)"), "phrase-empty");
  EXPECT_EQ(code("= ..."), "phrase-empty");
}

TEST(CheckPhrases, TheSmallKnowledgeIsSound) {
  EXPECT_TRUE(check_phrases(test::small_knowledge()).empty());
}

TEST(CheckPhrases, NamesEveryFaultWithItsPlace) {
  Knowledge k = test::small_knowledge();
  k.signs[0].place = {"neck.yaml", 12};
  k.signs[0].phrases.push_back("(oops");
  k.signs[0].denied_by.push_back("<nothing> fine");
  k.signs[1].phrases.push_back("<gape> <neckline>");  // belongs to sign 0, order does not count
  k.words[0].words.clear();
  const Problems problems = check_phrases(k);
  ASSERT_EQ(problems.size(), 4u);
  EXPECT_EQ(problems[0].code, "class-empty");
  EXPECT_EQ(problems[1].code, "phrase-syntax");
  EXPECT_EQ(problems[1].place, "neck.yaml:12");
  EXPECT_EQ(problems[2].code, "phrase-class-unknown");
  EXPECT_EQ(problems[3].code, "phrase-twice");
}

/// What one phrase alone hears in a text.
bool hears(const std::string& phrase, const std::string& text) {
  Knowledge k = test::small_knowledge();
  k.signs = {test::make_sign("s", "bust", Counts::none, Of::whole, false, {phrase})};
  const Result<Understood> result = Listener(k, test::dictionary()).hear(text, "");
  return result.ok() && result->findings.size() == 1 && result->findings[0].sure == 1.0;
}

TEST(Phrases, AnyOrderUnlessTheySayOtherwise) {
  EXPECT_TRUE(hears("seam twists", "twisting seams"));
  EXPECT_TRUE(hears("= seam twists", "the seam is twisted"));
  EXPECT_FALSE(hears("= seam twists", "twisting seams"));
  EXPECT_FALSE(hears("= seam twists", "the seam slowly twists"));
  EXPECT_TRUE(hears("= seam ... twists", "the seam slowly badly twists"));
  EXPECT_FALSE(hears("= seam ... twists", "the seam one1 two2 three3 four4 five5 twists"));
}

TEST(Phrases, BracketsMayBeMissing) {
  EXPECT_TRUE(hears("(side) seam twists", "the seam twists"));
  EXPECT_TRUE(hears("(side) seam twists", "the side seam twists"));
  EXPECT_TRUE(hears("= (side) seam (at hem) twists", "side seam twists"));
  EXPECT_TRUE(hears("= (side) seam (at hem) twists", "the seam at the hem twists"));
}

TEST(Phrases, WithinOneClause) {
  EXPECT_FALSE(hears("seam twists", "the seam is new. something twists"));
  EXPECT_FALSE(hears("seam twists", "the seam is new but something twists"));
}

TEST(Phrases, OneWordOrTwo) {
  EXPECT_TRUE(hears("armhole rolls", "the arm hole rolls"));
  EXPECT_TRUE(hears("armhole rolls", "the arm-hole rolls"));
  EXPECT_TRUE(hears("<upper-arm> rolls", "the upperarm rolls"));
  EXPECT_TRUE(hears("centre puckers", "puckering at the center"));
}

}  // namespace
}  // namespace pinwright::knowledge
