#include "engine/diagnosis/reasons.h"

#include <gtest/gtest.h>

#include "tests/engine/diagnosis/networks.h"

namespace pinwright {
namespace {

TEST(Reasons, AreTheDifferenceThatAFindingMakes) {
  const Network network = test::rivals();
  const Evidence evidence = {Seen::present, Seen::present, Seen::absent};
  const auto found = reasons(network, evidence, 0);
  ASSERT_TRUE(found.ok());
  ASSERT_EQ(found->size(), 3u);
  const auto log_odds = [&](Evidence some) {
    const double p = posterior(network, some)->cause[0];
    return std::log(p / (1.0 - p));
  };
  for (const Reason& reason : *found) {
    Evidence without = evidence;
    without[reason.sign] = Seen::unknown;
    EXPECT_NEAR(reason.log_odds, log_odds(evidence) - log_odds(without), 1e-12);
  }
}

TEST(Reasons, StrongestFirstAndSignedForAndAgainst) {
  const Network network = test::rivals();
  const auto found = reasons(network, {Seen::present, Seen::absent, Seen::absent}, 0);
  ASSERT_TRUE(found.ok());
  for (std::size_t i = 1; i < found->size(); ++i) {
    EXPECT_GE(std::abs((*found)[i - 1].log_odds), std::abs((*found)[i].log_odds));
  }
  for (const Reason& reason : *found) {
    // Sign 2 speaks for the cause because its rival's own sign is missing.
    EXPECT_EQ(reason.log_odds > 0.0, reason.sign != 1) << reason.sign;
  }
}

TEST(Reasons, UnknownAndUnconnectedFindingsAreNoReasons) {
  Network network = test::rivals();
  network.signs.push_back({"hem-dips", 0.1});
  const auto found =
      reasons(network, {Seen::present, Seen::unknown, Seen::unknown, Seen::present}, 0);
  ASSERT_TRUE(found.ok());
  ASSERT_EQ(found->size(), 1u);
  EXPECT_EQ(found->front().sign, 0u);
}

TEST(Reasons, CertaintyStaysANumber) {
  Network network = test::rivals();
  network.signs[1].leak = 0.0;  // only a hollow chest makes the chest look flat
  const auto found = reasons(network, {Seen::unknown, Seen::present, Seen::unknown}, 0);
  ASSERT_TRUE(found.ok());
  ASSERT_EQ(found->size(), 1u);
  EXPECT_NEAR(found->front().log_odds, 50.0 - std::log(0.1 / 0.9), 1e-12);
}

TEST(Reasons, RefusesACauseThatIsNotThere) {
  const auto found = reasons(test::rivals(), {Seen::unknown, Seen::unknown, Seen::unknown}, 9);
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(found.problems().front().code, "cause-index");
}

}  // namespace
}  // namespace pinwright
