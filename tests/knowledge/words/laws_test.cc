// Laws of hearing that hold for any text: nothing is dropped, nothing is invented, nothing breaks.

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>

#include "knowledge/words/function_words.h"
#include "knowledge/words/text.h"
#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

const std::vector<std::string>& some_words() {
  static const std::vector<std::string> words = {"the",        "neckline",
                                                 "armhole",    "bust",
                                                 "gapes",      "tight",
                                                 "too",        "low",
                                                 "and",        ",",
                                                 ".",          "2 cm",
                                                 "not",        "left",
                                                 "right",      "each side",
                                                 "fold",       "shoulder",
                                                 "wide",       "pinch",
                                                 "size 12",    "but",
                                                 "or",         "loose",
                                                 "front",      "when I lean forward",
                                                 "zzz",        "fine",
                                                 "long",       "top",
                                                 "3/8\"",      "nor",
                                                 "no",         "gone",
                                                 "in all",     "green",
                                                 "(",          ")",
                                                 "isn't",      "which",
                                                 "½ in",       "back",
                                                 "drag lines", "two",
                                                 "it",         "is",
                                                 "neither",    "sleeve",
                                                 "cap",        "with arms raised",
                                                 "while",      "\n",
                                                 "-",          ";"};
  return words;
}

std::string random_text(std::mt19937& random) {
  std::string text;
  for (std::size_t i = 1 + random() % 25; i > 0; --i) {
    text += some_words()[random() % some_words().size()] + " ";
  }
  return text + "hem";
}

TEST(Laws, EveryContentWordIsInAFindingOrReported) {
  const Knowledge k = test::small_knowledge();
  const Listener listener(k, test::dictionary());
  std::mt19937 random(9);
  int heard = 0;
  for (int round = 0; round < 4000; ++round) {
    const std::string text = random_text(random);
    const Result<Understood> result = listener.hear(text, "");
    if (!result) continue;
    heard += static_cast<int>(result->findings.size());
    std::vector<std::string> told;
    for (const Finding& finding : result->findings) {
      ASSERT_NE(text.find(finding.words), std::string::npos) << text;
      told.push_back(finding.words);
    }
    std::size_t last = 0;
    for (const NotUnderstood& item : result->not_understood) {
      ASSERT_EQ(text.substr(item.at, item.words.size()), item.words) << text;
      ASSERT_GE(item.at, last) << text;
      last = item.at + item.words.size();
      ASSERT_LE(item.nearest.size(), 3u);
      told.push_back(item.words);
    }
    std::multiset<std::string> left;
    for (const std::string& words : told) {
      for (const Token& token : tokens(words)) left.insert(token.text);
    }
    for (const Token& token : tokens(text)) {
      if (token.kind != Token::Kind::word || load_of(token.text) != Load::content) continue;
      if (token.text == "no" || token.text == "but" || token.text == "while") continue;
      if (token.text == "right") continue;  // says nothing in "right in all"
      const auto one = left.find(token.text);
      ASSERT_TRUE(one != left.end()) << "'" << token.text << "' of: " << text;
      left.erase(one);
    }
  }
  EXPECT_GT(heard, 1200);
}

TEST(Laws, TheSameTextIsHeardTheSame) {
  const Knowledge k = test::small_knowledge();
  const Listener listener(k, test::dictionary());
  const Listener another(k, test::dictionary());
  std::mt19937 random(10);
  for (int round = 0; round < 200; ++round) {
    const std::string text = random_text(random);
    const Result<Understood> a = listener.hear(text, "");
    const Result<Understood> b = another.hear(text, "");
    ASSERT_EQ(a.ok(), b.ok());
    if (!a) continue;
    EXPECT_EQ(test::told(*a), test::told(*b));
  }
}

TEST(Laws, AnyBytesAreAnsweredOrRefused) {
  const Knowledge k = test::small_knowledge();
  const Listener listener(k, test::dictionary());
  std::mt19937 random(11);
  for (int round = 0; round < 3000; ++round) {
    std::string text = random_text(random);
    for (std::size_t i = random() % 6; i > 0; --i) {
      text[random() % text.size()] = static_cast<char>(random() % 256);
    }
    const Result<Understood> result = listener.hear(text, "knit-top");
    EXPECT_NE(result.ok(), !result.problems().empty());
  }
}

TEST(Laws, LongTextsWithoutEndAreRead) {
  const Knowledge k = test::small_knowledge();
  const Listener listener(k, test::dictionary());
  for (const char* part : {"neckline gapes and ", "neckline gapes bust tight ", "not ", "1) ",
                           "fold neck shoulder ", "2\" ", "pinch 2 cm, ", "a", "😀"}) {
    std::string text;
    while (text.size() + 32 < 65536) text += part;
    const Result<Understood> result = listener.hear(text, "");
    EXPECT_TRUE(result.ok()) << part;
  }
}

TEST(Laws, TheKindOfBlockNarrowsTheZones) {
  const Knowledge k = test::small_knowledge();
  const Listener listener(k, test::dictionary());
  EXPECT_EQ(listener.hear("the cap puckers", "woven-bodice")->findings.size(), 1u);
  EXPECT_EQ(listener.hear("the cap puckers", "")->findings.size(), 1u);
  const Result<Understood> knit = listener.hear("the cap puckers", "knit-top");
  ASSERT_TRUE(knit.ok());
  EXPECT_TRUE(knit->findings.empty());
  ASSERT_EQ(knit->not_understood.size(), 1u);
  EXPECT_TRUE(knit->not_understood[0].nearest.empty());
}

TEST(Laws, WhatWasNotUnderstoodNamesTheNearestSigns) {
  const Knowledge k = test::small_knowledge();
  const Listener listener(k, test::dictionary());
  const Result<Understood> shared = listener.hear("puckers at the shoulder", "");
  ASSERT_TRUE(shared.ok());
  ASSERT_EQ(shared->not_understood.size(), 1u);
  EXPECT_EQ(shared->not_understood[0].nearest.size(), 3u);
  const std::vector<std::string>& nearest = shared->not_understood[0].nearest;
  EXPECT_NE(std::find(nearest.begin(), nearest.end(), "cap-puckers"), nearest.end());
  const Result<Understood> misspelt = listener.hear("the puckrs there", "");
  ASSERT_TRUE(misspelt.ok());
  EXPECT_EQ(misspelt->not_understood[0].nearest, std::vector<std::string>{"cap-puckers"});
}

}  // namespace
}  // namespace pinwright::knowledge
