#include <gtest/gtest.h>

#include <limits>

#include "tests/knowledge/words/small_knowledge.h"

namespace pinwright::knowledge {
namespace {

Finding picked(std::string sign, std::string zone) {
  Finding finding;
  finding.sign = std::move(sign);
  finding.zone = std::move(zone);
  return finding;
}

TEST(CheckFindings, SoundOnesPass) {
  Finding finding = picked("bust-too-tight", "bust");
  finding.amount = FoundAmount{300.0, Of::whole, Taken::gap};
  EXPECT_TRUE(check_findings(test::small_knowledge(), {finding}, "/findings").empty());
  EXPECT_TRUE(check_findings(test::small_knowledge(), {picked("bust-too-tight", "")}, "").empty());
}

TEST(CheckFindings, AllFaultsOfAllFindingsInOnePass) {
  std::vector<Finding> findings = {
      picked("bust-to-tight", "bust"), picked("bust-too-tight", "armhole"),
      picked("bust-too-tight", "bost"), picked("drag-lines-to-bust", "bust"),
      picked("top-too-long", "length")};
  findings[3].amount = FoundAmount{20.0};
  findings[4].amount = FoundAmount{400.0};
  const Problems problems = check_findings(test::small_knowledge(), findings, "/findings");
  ASSERT_EQ(problems.size(), 5u);
  EXPECT_EQ(problems[0].code, "sign-unknown");
  EXPECT_EQ(problems[0].place, "/findings/0/sign");
  EXPECT_EQ(problems[0].mend, "Nearest: bust-too-tight.");
  EXPECT_EQ(problems[1].code, "zone-of-another-sign");
  EXPECT_EQ(problems[1].place, "/findings/1/zone");
  EXPECT_EQ(problems[2].code, "zone-unknown");
  EXPECT_EQ(problems[2].mend, "Nearest: bust.");
  EXPECT_EQ(problems[3].code, "amount-not-counted");
  EXPECT_EQ(problems[4].code, "amount-range");
}

TEST(CheckFindings, AmountsThatAreNone) {
  for (const double mm : {0.0, -2.0, 300.1, std::numeric_limits<double>::infinity(),
                          std::numeric_limits<double>::quiet_NaN()}) {
    Finding finding = picked("bust-too-tight", "bust");
    finding.amount = FoundAmount{mm};
    const Problems problems = check_findings(test::small_knowledge(), {finding}, "");
    ASSERT_EQ(problems.size(), 1u) << mm;
    EXPECT_EQ(problems[0].code, "amount-range");
    EXPECT_EQ(problems[0].place, "/0/amount/mm");
  }
}

}  // namespace
}  // namespace pinwright::knowledge
