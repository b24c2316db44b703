// The limits of a remedy in a proposal: the smallest worth making, the largest before another way
// is better.

#include <gtest/gtest.h>

#include "knowledge/proposals.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;

Remedy remedy(const std::string& id, std::optional<double> smallest,
              std::optional<double> largest) {
  Remedy r;
  r.id = id;
  r.name = id;
  r.smallest_mm = smallest;
  r.largest_mm = largest;
  if (largest) r.beyond = "Cut the next size.";
  RemedyStep s;
  s.operation = "lengthen";
  s.options["piece"] = "body";
  s.amount = "found.top-too-short";
  s.text = "Lengthen by {amount}.";
  r.steps.push_back(s);
  return r;
}

std::vector<Proposal> proposed(const std::vector<Remedy>& remedies, double mm) {
  Cause c;
  c.id = "long-body";
  c.makes.push_back({"top-too-short", 0.8, "", {}});
  c.remedies = remedies;
  TryOn t;
  t.findings = {seen("top-too-short", whole(mm))};
  return proposals_for(shipped(), c, knit_top(), t, values_of(knit_top(), t));
}

TEST(RemedyLimits, WithinThemNothingIsSaid) {
  for (const double mm : {10.0, 25.0, 40.0}) {
    const auto all = proposed({remedy("a", 10.0, 40.0)}, mm);
    ASSERT_EQ(all.size(), 1u);
    EXPECT_TRUE(all[0].beyond.empty());
    EXPECT_TRUE(all[0].steps[0].worth_making);
    EXPECT_TRUE(all[0].steps[0].limit.empty()) << all[0].steps[0].limit;
  }
}

TEST(RemedyLimits, BelowTheSmallestIsNotWorthMaking) {
  const auto all = proposed({remedy("a", 10.0, 40.0)}, 8.0);
  EXPECT_FALSE(all[0].steps[0].worth_making);
  EXPECT_NE(all[0].steps[0].limit.find("less than the 10 mm"), std::string::npos)
      << all[0].steps[0].limit;
  EXPECT_DOUBLE_EQ(all[0].steps[0].step.amount, 8.0);
}

TEST(RemedyLimits, AboveTheLargestSaysWhatIsBetter) {
  const auto all = proposed({remedy("a", 10.0, 40.0)}, 45.0);
  EXPECT_EQ(all[0].beyond, "Cut the next size.");
  EXPECT_NE(all[0].steps[0].limit.find("more than the 40 mm"), std::string::npos);
  EXPECT_NE(all[0].steps[0].limit.find("cut the next size"), std::string::npos);
  EXPECT_TRUE(all[0].steps[0].worth_making);
}

TEST(RemedyLimits, TheNextOneThatSuitsIsOfferedFirst) {
  const std::vector<Remedy> three = {remedy("a", {}, 20.0), remedy("b", {}, 30.0),
                                     remedy("c", {}, {})};
  const auto order = [&](double mm) {
    std::string ids;
    for (const auto& p : proposed(three, mm)) ids += p.id;
    return ids;
  };
  EXPECT_EQ(order(15.0), "abc");
  EXPECT_EQ(order(25.0), "bca");
  EXPECT_EQ(order(35.0), "cab");
}

TEST(RemedyLimits, AWholeAmountIsHeldAsTheStepTakesIt) {
  Cause c;
  c.id = "full-bust";
  c.makes.push_back({"bust-drag-lines", 0.8, "", {}});
  Remedy r = remedy("fuller", {}, 20.0);
  r.steps[0].operation = "let-out-side";
  r.steps[0].options = {{"level", "all"}};
  r.steps[0].amount = "whole(found.bust-drag-lines)";
  c.remedies = {r};
  TryOn t;
  t.findings = {seen("bust-drag-lines", whole(38.0))};
  auto all = proposals_for(shipped(), c, woven_bodice(), t, values_of(woven_bodice(), t));
  EXPECT_TRUE(all[0].beyond.empty()) << "19 mm on the half pattern";
  t.findings = {seen("bust-drag-lines", whole(44.0))};
  all = proposals_for(shipped(), c, woven_bodice(), t, values_of(woven_bodice(), t));
  EXPECT_FALSE(all[0].beyond.empty()) << "22 mm on the half pattern";
}

}  // namespace
}  // namespace pinwright::knowledge
