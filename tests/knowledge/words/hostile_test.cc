// Words that were not meant to be read: other languages, numbers, floods.

#include <gtest/gtest.h>

#include "tests/knowledge/shipped.h"
#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

class Hostile : public ::testing::Test {
 protected:
  static Result<Understood> hear(const std::string& text) {
    static const Knowledge& k = testing::shipped();
    static const Listener listener(k, test::dictionary());
    return listener.hear(text, "");
  }
};

TEST_F(Hostile, EmptyAndTooLongAreRefused) {
  EXPECT_EQ(hear("").problems().at(0).code, "words-empty");
  EXPECT_EQ(hear(" \n\t ").problems().at(0).code, "words-empty");
  EXPECT_EQ(hear(std::string(1U << 20U, 'a')).problems().at(0).code, "words-too-long");
}

TEST_F(Hostile, ControlCharactersAreRefused) {
  EXPECT_EQ(hear(std::string("the neckline\0 gapes", 19)).problems().at(0).code, "words-not-text");
  EXPECT_EQ(hear("the neckline \x1b[31mgapes").problems().at(0).code, "words-not-text");
}

TEST_F(Hostile, OtherLanguagesGiveNoFindings) {
  for (const char* text :
       {"Der Ausschnitt steht vorne ab und die Schulter ist zu breit, am Arm spannt es.",
        "Le col bâille devant et l'emmanchure est trop basse, les épaules tombent.",
        "El escote queda muy abierto por delante y la manga es corta.",
        "前の首回りが浮いています。袖ぐりがきついです。",
        "فتحة الرقبة واسعة من الأمام والكم ضيق"}) {
    const Result<Understood> told = hear(text);
    ASSERT_TRUE(told.ok()) << text;
    EXPECT_TRUE(told->findings.empty()) << text << ": " << told->findings[0].sign;
    EXPECT_FALSE(told->not_understood.empty()) << text;
  }
}

TEST_F(Hostile, OnlyNumbersGiveNoFindings) {
  for (const char* text : {"12 34 56", "1 2 3 4 5 6 7 8 9", "3.14159", "88-66-92", "2 cm"}) {
    const Result<Understood> told = hear(text);
    EXPECT_TRUE(!told || told->findings.empty()) << text;
  }
}

TEST_F(Hostile, ARepeatedWordIsNotManyFindings) {
  const Result<Understood> told = hear("gapes gapes gapes gapes neckline neckline neckline");
  ASSERT_TRUE(told.ok());
  EXPECT_LE(told->findings.size(), 2u);
}

TEST_F(Hostile, FloodsAreReadToTheEnd) {
  for (const std::string part :
       {"the neckline gapes and ", "fold ", "maybe not ", "if I pin it "}) {
    std::string text;
    while (text.size() + part.size() < 65536) text += part;
    const Result<Understood> told = hear(text);
    EXPECT_TRUE(told.ok() || !told.problems().empty()) << part;
  }
}

}  // namespace
}  // namespace pinwright::knowledge
