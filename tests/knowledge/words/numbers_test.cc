#include <gtest/gtest.h>

#include "knowledge/words/amounts.h"

namespace pinwright::knowledge {
namespace {

struct Said {
  std::string text;
  double value = 0.0;
  bool has_unit = true;
};

std::vector<SaidNumber> numbers(const std::string& text) {
  return find_numbers(text, tokens(text));
}

TEST(Numbers, AllWaysToSayAnAmount) {
  const std::vector<Said> cases = {
      {"1 1/2 inches", 38.1},
      {"1-1/2\"", 38.1},
      {"1½ in", 38.1},
      {"1 ½ in", 38.1},
      {"3/8\"", 9.525},
      {"3/8 of an inch", 9.525},
      {"15mm", 15.0},
      {"15 mm", 15.0},
      {"2 cm", 20.0},
      {"2cm.", 20.0},
      {"1.5cm", 15.0},
      {"1,5 cm", 15.0},
      {".5 cm", 5.0},
      {"2-cm", 20.0},
      {"two centimetres", 20.0},
      {"two centimeters", 20.0},
      {"a centimetre", 10.0},
      {"an inch", 25.4},
      {"half an inch", 12.7},
      {"half inch", 12.7},
      {"a half inch", 12.7},
      {"a quarter inch", 6.35},
      {"a quarter of an inch", 6.35},
      {"quarter-inch", 6.35},
      {"three eighths of an inch", 9.525},
      {"three-quarter inch", 19.05},
      {"an inch and a half", 38.1},
      {"an inch and 1/4", 31.75},
      {"one and a half inches", 38.1},
      {"2 and a half cm", 25.0},
      {"a couple of centimetres", 20.0},
      {"a good inch", 25.4},
      {"2-3 cm", 25.0},
      {"2 - 3 cm", 25.0},
      {"2–3 cm", 25.0},
      {"2 to 3 cm", 25.0},
      {"2 cm to 3 cm", 25.0},
      {"2 or 3 cm", 25.0},
      {"1/4-1/2 in", 9.525},
      {"2''", 50.8},
      {"2″", 50.8},
      {"0.1 m", 100.0},
      {"1 ft", 304.8},
      {"-2 cm", -20.0},
      {"−2 cm", -20.0},
      {"minus 2 cm", -20.0},
      {"1,000 mm", 1000.0},
      {"⅞ in", 22.225},
      {"2", 2.0, false},
      {"3/8", 0.375, false},
      {"two", 2.0, false},
      {"2 in the front", 2.0, false},
      {"2 in all", 2.0, false},
      {"2 fingers", 2.0, false},
  };
  for (const Said& said : cases) {
    const std::vector<SaidNumber> found = numbers(said.text);
    ASSERT_EQ(found.size(), 1u) << said.text;
    EXPECT_NEAR(found[0].value, said.value, 1e-12) << said.text;
    EXPECT_EQ(found[0].has_unit, said.has_unit) << said.text;
  }
}

TEST(Numbers, BetweenTwoAmountsIsTheMiddle) {
  const std::vector<SaidNumber> found = numbers("between 2 and 3 cm");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_DOUBLE_EQ(found[0].value, 25.0);
}

TEST(Numbers, WhatIsNoNumber) {
  for (const char* text : {"a", "an armhole", "2nd", "3x", "B3", "30%", "30 %", "12/05/2026",
                           "2026-05-12", "1.2.3", "10:30", "in", "half-way"}) {
    for (const SaidNumber& said : numbers(text)) EXPECT_FALSE(said.has_unit) << text;
  }
  for (const char* text : {"a", "2nd", "3x", "B3", "30%", "12/05/2026", "2026-05-12", "10:30"}) {
    EXPECT_TRUE(numbers(text).empty()) << text;
  }
}

TEST(Numbers, DivisionByZeroIsNoFraction) {
  for (const SaidNumber& said : numbers("1/0 in")) EXPECT_TRUE(said.value < 1e9);
}

}  // namespace
}  // namespace pinwright::knowledge
