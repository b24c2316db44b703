#include "engine/alteration/catalogue.h"

#include <gtest/gtest.h>

#include <limits>
#include <set>

#include "skerry_blocks.h"

namespace pinwright {
namespace {

std::string first_code(const Step& s) {
  const Problems problems = check_step(s, "/steps/0");
  return problems.empty() ? "" : problems.front().code;
}

TEST(Catalogue, EveryOperationSaysWhatItDoes) {
  std::set<std::string_view> ids;
  for (const OperationInfo& info : operation_catalogue()) {
    EXPECT_TRUE(ids.insert(info.id).second) << info.id;
    EXPECT_FALSE(info.does.empty()) << info.id;
    EXPECT_FALSE(info.positive.empty()) << info.id;
    EXPECT_LE(info.least, info.most) << info.id;
    for (const OptionInfo& o : info.options) EXPECT_FALSE(o.values.empty()) << info.id;
  }
}

TEST(Catalogue, NamesTheNearestOperation) {
  const Problems problems = check_step(step("swing-sholder", 5), "/steps/0");
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].code, "operation-unknown");
  EXPECT_EQ(problems[0].place, "/steps/0/operation");
  EXPECT_NE(problems[0].mend.find("swing-shoulder"), std::string::npos);
}

TEST(Catalogue, RefusesAbsurdAmounts) {
  EXPECT_EQ(first_code(step("lower-underarm", 400)), "amount-range");
  EXPECT_EQ(first_code(step("lower-underarm", 0)), "amount-range");
  EXPECT_EQ(first_code(step("lower-underarm", std::numeric_limits<double>::quiet_NaN())),
            "amount-not-a-number");
  EXPECT_EQ(first_code(step("lower-underarm", std::numeric_limits<double>::infinity())),
            "amount-not-a-number");
  EXPECT_EQ(first_code(step("set-binding-ratio", 9)), "amount-range");
  EXPECT_EQ(first_code(step("lower-underarm", 10)), "");
}

TEST(Catalogue, RefusesOptionsItDoesNotKnow) {
  EXPECT_EQ(first_code(step("close-wedge", 9, {{"edge", "hem"}, {"hinge", "bust-point"}})),
            "option-value");
  EXPECT_EQ(first_code(step("close-wedge", 9, {{"hinge", "bust-point"}})), "option-missing");
  EXPECT_EQ(first_code(step("full-bust", 9, {{"colour", "blue"}})), "option-unknown");
}

TEST(Catalogue, TellsAllFaultsInOnePass) {
  const Problems problems =
      check_step(step("close-wedge", 500, {{"edge", "hem"}, {"colour", "blue"}}), "/steps/2");
  EXPECT_EQ(problems.size(), 4u);  // edge, colour, missing hinge, amount
  for (const Problem& p : problems) {
    EXPECT_EQ(p.place.rfind("/steps/2/", 0), 0u) << p.place;
    EXPECT_FALSE(p.mend.empty());
  }
}

}  // namespace
}  // namespace pinwright
