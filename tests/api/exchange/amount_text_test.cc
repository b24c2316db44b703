#include "api/exchange/amount_text.h"

#include <gtest/gtest.h>

namespace pinwright::api {
namespace {

struct Case {
  const char* text;
  double mm;
};

TEST(AmountText, ReadsWhatASewingRoomWrites) {
  const Case cases[] = {
      {"15mm", 15.0},     {"2 cm", 20.0},   {"2,5 cm", 25.0},      {"2.5cm", 25.0},
      {"3/8 in", 9.525},  {"3/8\"", 9.525}, {"1 1/2 in", 38.1},    {"1-1/2 inches", 38.1},
      {"1 1/2\"", 38.1},  {"½ in", 12.7},   {"1½″", 38.1},         {"1 ½ inch", 38.1},
      {"2 INCHES", 50.8}, {" 7 mm ", 7.0},  {"-3 mm", -3.0},       {"+3 mm", 3.0},
      {"1.2 m", 1200.0},  {"0 mm", 0.0},    {"36 1/4 in", 920.75}, {"12 Millimetres", 12.0},
  };
  for (const Case& c : cases) {
    const auto read = read_amount(c.text, "/amount");
    ASSERT_TRUE(read.ok()) << c.text << ": " << read.problems()[0].what;
    EXPECT_DOUBLE_EQ(read.value(), c.mm) << c.text;
  }
}

TEST(AmountText, ABareNumberIsNoLength) {
  for (const char* text : {"15", "1 1/2", "3/8", "2,5", " 12 ", "½"}) {
    const auto read = read_amount(text, "/findings/0/amount");
    ASSERT_FALSE(read.ok()) << text;
    EXPECT_EQ(read.problems()[0].code, "amount-without-unit") << text;
    EXPECT_EQ(read.problems()[0].place, "/findings/0/amount");
  }
}

TEST(AmountText, RefusesWhatCannotBeRead) {
  for (const char* text :
       {"", "mm", "two cm", "1/0 in", "1 1/0 in", "1//2 in", "3 furlongs", "5 mm 3", "1.2.3 cm",
        "1e3 mm", "nan mm", "inf cm", "--3 mm", "1/ in", "1 2 in", "1.5/2 in"}) {
    const auto read = read_amount(text, "");
    ASSERT_FALSE(read.ok()) << text;
    EXPECT_EQ(read.problems()[0].code, "amount-not-readable") << text;
  }
  EXPECT_EQ(read_amount("10001 mm", "").problems()[0].code, "amount-range");
  EXPECT_EQ(read_amount(std::string(100, '9') + " mm", "").problems()[0].code,
            "amount-not-readable");
  EXPECT_EQ(read_amount(std::string(40, '9') + " mm", "").problems()[0].code, "amount-range");
}

}  // namespace
}  // namespace pinwright::api
