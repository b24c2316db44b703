// Left and right told apart.
#include <gtest/gtest.h>

#include "knowledge/amounts_told.h"
#include "tests/knowledge/shipped.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;  // NOLINT: short try-ons read better

std::vector<ToldSide> of(const std::vector<Finding>& findings) {
  return amounts_told(shipped(), *find_cause(shipped(), "narrow-shoulders"), findings);
}
const char* const kSign = "shoulder-seam-past-shoulder-point";

TEST(ToldSides, NothingToldIsBoth) {
  ASSERT_EQ(of({}).size(), 1u);
  EXPECT_EQ(of({})[0].side, Side::both);
  EXPECT_FALSE(of({})[0].any.has_value());
}

TEST(ToldSides, OneSideOnly) {
  const auto t = of({seen(kSign, whole(10.0), Side::left)});
  ASSERT_EQ(t.size(), 1u);
  EXPECT_EQ(t[0].side, Side::left);
  EXPECT_DOUBLE_EQ(t[0].any->mm, 10.0);
}

TEST(ToldSides, TwoSidesOfOneAmountAreBoth) {
  const auto t = of({seen(kSign, whole(10.0), Side::left), seen(kSign, whole(10.0), Side::right)});
  ASSERT_EQ(t.size(), 1u);
  EXPECT_EQ(t[0].side, Side::both);
}

TEST(ToldSides, TwoAmountsGiveTwoSteps) {
  const Advice a = advice("woven-bodice", {seen(kSign, whole(10.0), Side::left),
                                           seen(kSign, whole(16.0), Side::right)});
  const Proposal* p = proposal(a, "recut-armhole-at-shoulder");
  ASSERT_NE(p, nullptr);
  ASSERT_EQ(p->steps.size(), 2u);
  EXPECT_EQ(p->steps[0].step.side, Side::left);
  EXPECT_DOUBLE_EQ(p->steps[0].step.amount, 10.0);
  EXPECT_EQ(p->steps[1].step.side, Side::right);
  EXPECT_DOUBLE_EQ(p->steps[1].step.amount, 16.0);
}

TEST(ToldSides, AbsentFindingsGiveNoAmount) {
  Finding f = seen(kSign, whole(10.0), Side::left);
  f.state = FindingState::absent;
  EXPECT_FALSE(of({f})[0].any.has_value());
}

}  // namespace
}  // namespace pinwright::knowledge
