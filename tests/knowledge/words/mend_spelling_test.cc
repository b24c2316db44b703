#include "knowledge/words/mend_spelling.h"

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

std::string mended(const std::string& text) {
  static const Knowledge k = test::small_knowledge();
  static const Stemmer stemmer;
  static const SpellingMender mender(k, stemmer, test::dictionary());
  std::vector<Token> words = tokens(text);
  mender.mend(words, stemmer);
  std::string out;
  for (const Token& word : words) out += (out.empty() ? "" : " ") + word.text;
  return out;
}

TEST(SlipDistance, NeighboursThatChangedPlacesAreOneSlip) {
  EXPECT_EQ(slip_distance("tigth", "tight", 2), 1u);
  EXPECT_EQ(slip_distance("sholder", "shoulder", 2), 1u);
  EXPECT_EQ(slip_distance("abcd", "abcd", 2), 0u);
  EXPECT_EQ(slip_distance("abcd", "wxyz", 2), 3u);
  EXPECT_EQ(slip_distance("", "abc", 2), 3u);
}

TEST(SpellingMender, WordsOfTheTradeAreMended) {
  EXPECT_EQ(mended("nekline"), "neckline");
  EXPECT_EQ(mended("sholder"), "shoulder");
  EXPECT_EQ(mended("armhloe"), "armhole");
  EXPECT_EQ(mended("slevve"), "sleeve");
  EXPECT_EQ(mended("gaepes"), "gapes");
  EXPECT_EQ(mended("tigth"), "tight");
}

TEST(SpellingMender, RealWordsStayThoughTheyAreNear) {
  for (const char* word : {"slave", "grape", "chess", "light", "waste", "bustle", "colour",
                           "tuesday", "lose", "fright"}) {
    EXPECT_EQ(mended(word), one_spelling(word)) << word;
  }
}

TEST(SpellingMender, WhatIsNearNothingStays) {
  EXPECT_EQ(mended("qwrtzu"), "qwrtzu");
  EXPECT_EQ(mended("zz9"), mended("zz9"));
}

TEST(SpellingMender, ToBeforeADegreeIsToo) {
  EXPECT_EQ(mended("to tight"), "too tight");
  EXPECT_EQ(mended("to the neck"), "to the neck");
}

TEST(SpellingMender, TheWordsOfAFindingStayAsWritten) {
  test::expect_told({{"the nekline is gapeing", {"front-neckline-gapes \"nekline is gapeing\""}}});
}

}  // namespace
}  // namespace pinwright::knowledge
