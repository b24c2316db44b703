#include "api/exchange/finding_json.h"

#include <gtest/gtest.h>

namespace pinwright::api {
namespace {

TEST(FindingJson, ReadsBackWhatItWrites) {
  const std::vector<Finding> findings = {
      {"neckline-gapes", "front-neckline", Side::left,
       FoundAmount{9.525, Of::half, Taken::fold_depth}, FindingState::present, "leaning forward",
       "the neck stands off \"3/8\" in"},
      {"bust-drag-lines", "bust", Side::both, std::nullopt, FindingState::not_looked_at, "", ""},
  };
  Problems problems;
  EXPECT_EQ(read_findings(to_json(findings), "/findings", problems), findings);
  EXPECT_TRUE(problems.empty());
  EXPECT_FALSE(to_json(findings)[1].contains("amount_mm"));
}

TEST(FindingJson, OnlyTheSignIsNeeded) {
  Problems problems;
  const Finding f = read_finding(Json::parse(R"({"sign": "bust-drag-lines"})"), "", problems);
  EXPECT_TRUE(problems.empty());
  EXPECT_EQ(f.state, FindingState::present);
  EXPECT_EQ(f.side, Side::both);
  EXPECT_FALSE(f.amount);
}

TEST(FindingJson, AmountsMayCarryTheirUnit) {
  Problems problems;
  const Finding f = read_finding(
      Json::parse(R"({"sign": "x", "amount": "1 1/2 in", "of": "whole", "taken": "cloth"})"), "",
      problems);
  ASSERT_TRUE(problems.empty());
  ASSERT_TRUE(f.amount);
  EXPECT_DOUBLE_EQ(f.amount->mm, 38.1);
  EXPECT_EQ(f.amount->of, Of::whole);
  EXPECT_EQ(f.amount->taken, Taken::cloth);
}

struct Bad {
  const char* text;
  const char* code;
  const char* place;
};

TEST(FindingJson, EveryFaultIsTold) {
  const Bad cases[] = {
      {R"({"zone": "bust"})", "field-missing", "/findings/0/sign"},
      {R"({"sign": "x", "amount": "15", "of": "whole"})", "amount-without-unit",
       "/findings/0/amount"},
      {R"({"sign": "x", "amount": 15, "of": "whole"})", "amount-without-unit",
       "/findings/0/amount"},
      {R"({"sign": "x", "amount_mm": 15})", "of-missing", "/findings/0/of"},
      {R"({"sign": "x", "amount_mm": 15, "of": "each"})", "value-unknown", "/findings/0/of"},
      {R"({"sign": "x", "amount_mm": 15, "of": 1})", "type-wrong", "/findings/0/of"},
      {R"({"sign": "x", "amount_mm": true, "of": "half"})", "type-wrong", "/findings/0/amount_mm"},
      {R"({"sign": "x", "amount_mm": 1, "amount": "1 mm", "of": "half"})", "amount-twice",
       "/findings/0/amount"},
      {R"({"sign": "x", "state": "maybe"})", "value-unknown", "/findings/0/state"},
      {R"({"sign": "x", "side": "front"})", "value-unknown", "/findings/0/side"},
      {R"({"sign": "x", "taken": "by-eye"})", "value-unknown", "/findings/0/taken"},
      {R"({"sign": "x", "zones": "bust"})", "field-unknown", "/findings/0/zones"},
      {R"({"sign": ""})", "text-size", "/findings/0/sign"},
      {R"("x")", "type-wrong", "/findings/0"},
  };
  for (const Bad& bad : cases) {
    Problems problems;
    read_finding(Json::parse(bad.text), "/findings/0", problems);
    ASSERT_EQ(problems.size(), 1u) << bad.text;
    EXPECT_EQ(problems[0].code, bad.code) << bad.text;
    EXPECT_EQ(problems[0].place, bad.place) << bad.text;
    EXPECT_FALSE(problems[0].mend.empty());
  }
}

TEST(FindingJson, AListThatIsNoneIsTold) {
  Problems problems;
  EXPECT_TRUE(read_findings(Json::parse("{}"), "/findings", problems).empty());
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].place, "/findings");
}

}  // namespace
}  // namespace pinwright::api
