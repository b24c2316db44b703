#include "engine/diagnosis/explanation.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/engine/diagnosis/networks.h"

namespace pinwright {
namespace {

/// ln P(exactly these causes hold, evidence), by definition.
double log_joint(const Network& network, const Evidence& evidence, std::uint64_t held) {
  long double p = 0.0L;
  for (std::size_t c = 0; c < network.causes.size(); ++c) {
    const long double prior = network.causes[c].prior;
    p += std::log((held >> c & 1) ? prior : 1.0L - prior);
  }
  std::vector<long double> unseen;
  for (const SignNode& sign : network.signs) unseen.push_back(1.0L - sign.leak);
  for (const Link& link : network.links) {
    if (held >> link.cause & 1) unseen[link.sign] *= 1.0L - link.strength;
  }
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    p += std::log(evidence[s].if_seen * (1.0L - unseen[s]) + evidence[s].if_unseen * unseen[s]);
  }
  return static_cast<double>(p);
}

std::uint64_t mask_of(const std::vector<std::size_t>& causes) {
  std::uint64_t held = 0;
  for (const std::size_t c : causes) held |= std::uint64_t{1} << c;
  return held;
}

std::uint64_t mask_in_play(const Network& network, const Evidence& evidence) {
  std::uint64_t in = 0;
  for (const Link& link : network.links) {
    if (evidence[link.sign].leans() == Seen::present) in |= std::uint64_t{1} << link.cause;
  }
  return in;
}

void agrees_with_enumeration(std::uint64_t seed, bool soft, int wanted) {
  std::mt19937_64 random(seed);
  int possible = 0;
  for (int round = 0; round < 250; ++round) {
    Network network = test::random_network(
        random, {1 + random() % 11, 1 + random() % 11, 0.1 + 0.6 * test::uniform(random)});
    for (CauseNode& cause : network.causes) cause.prior *= 0.8;  // below a half, as causes are
    const Evidence evidence =
        soft ? test::random_soft_evidence(random, network) : test::random_evidence(random, network);
    if (test::brute_force(network, evidence).evidence < 1e-15L) continue;
    ++possible;
    const auto found = best_explanation(network, evidence);
    ASSERT_TRUE(found.ok());
    const std::uint64_t in = mask_in_play(network, evidence);
    double best = -HUGE_VAL;
    double next = -HUGE_VAL;
    for (std::uint64_t held = 0; held < (std::uint64_t{1} << network.causes.size()); ++held) {
      const double p = log_joint(network, evidence, held);
      if (p > best) {
        if ((held & ~in) == 0) next = best;
        best = p;
      } else if ((held & ~in) == 0 && p > next) {
        next = p;
      }
    }
    EXPECT_NEAR(found->best.log_joint, best, 1e-9) << "round " << round;
    EXPECT_NEAR(log_joint(network, evidence, mask_of(found->best.causes)), best, 1e-9);
    if (!found->next) {
      EXPECT_EQ(next, -HUGE_VAL) << "round " << round;
      continue;
    }
    EXPECT_NE(found->next->causes, found->best.causes);
    if (next < -600.0) continue;  // impossible: kept as very improbable
    EXPECT_NEAR(found->next->log_joint, next, 1e-9) << "round " << round;
    EXPECT_NEAR(log_joint(network, evidence, mask_of(found->next->causes)), next, 1e-9);
    EXPECT_NEAR(std::log(found->times_next), best - next, 1e-9);
  }
  EXPECT_GT(possible, wanted);
}

TEST(Explanation, AgreesWithEnumeration) { agrees_with_enumeration(31, false, 150); }
TEST(Explanation, AgreesWithEnumerationOnSoftEvidence) { agrees_with_enumeration(32, true, 150); }

TEST(Explanation, TwoFindingsOfTwoCausesAreExplainedByBoth) {
  const Network network = test::rivals();
  const auto found = best_explanation(network, {Seen::present, Seen::present, Seen::present});
  ASSERT_TRUE(found.ok());
  EXPECT_EQ(found->best.causes, (std::vector<std::size_t>{0, 1}));
  EXPECT_GT(found->times_next, 1.0);
}

TEST(Explanation, OfTwoRivalsOneIsTaken) {
  const Network network = test::rivals();
  const auto found = best_explanation(network, {Seen::present, Seen::unknown, Seen::unknown});
  ASSERT_TRUE(found.ok());
  EXPECT_EQ(found->best.causes, std::vector<std::size_t>{1});
  ASSERT_TRUE(found->next.has_value());
  EXPECT_EQ(found->next->causes, std::vector<std::size_t>{0});
  // 0.2 * 0.9 * made by the second, against 0.1 * 0.8 * made by the first.
  const double wanted = 0.2 * 0.9 * (1.0 - 0.99 * 0.3) / (0.1 * 0.8 * (1.0 - 0.99 * 0.2));
  EXPECT_NEAR(found->times_next, wanted, 1e-12);
}

TEST(Explanation, NothingSeenNothingExplained) {
  const auto found = best_explanation(test::rivals(), {Seen::unknown, Seen::absent, Seen::unknown});
  ASSERT_TRUE(found.ok());
  EXPECT_TRUE(found->best.causes.empty());
  EXPECT_FALSE(found->next.has_value());
}

TEST(Explanation, LargeNetworksAgreeWithClimbingFromManyStarts) {
  // Climbing from many starts cannot find better than the best; it mostly finds it.
  std::mt19937_64 random(33);
  int reached = 0;
  for (int round = 0; round < 6; ++round) {
    Network network = test::random_network(random, {60, 20, 0.06});
    for (CauseNode& cause : network.causes) cause.prior = 0.01 + 0.1 * test::uniform(random);
    for (SignNode& sign : network.signs) sign.leak = 0.02;
    const Evidence evidence(20, stated(Seen::present, 0.9));
    const auto found = best_explanation(network, evidence);
    ASSERT_TRUE(found.ok());
    double climbed = -HUGE_VAL;
    for (int start = 0; start < 12; ++start) {
      std::uint64_t held = 0;
      for (std::size_t c = 0; c < 60; ++c) held |= std::uint64_t{random() % 8 == 0} << c;
      double now = log_joint(network, evidence, held);
      for (bool better = true; better;) {
        better = false;
        for (std::size_t c = 0; c < 60; ++c) {
          const double then = log_joint(network, evidence, held ^ std::uint64_t{1} << c);
          if (then <= now) continue;
          now = then;
          held ^= std::uint64_t{1} << c;
          better = true;
        }
      }
      climbed = std::max(climbed, now);
    }
    EXPECT_LE(climbed, found->best.log_joint + 1e-9);
    reached += climbed > found->best.log_joint - 1e-9 ? 1 : 0;
  }
  EXPECT_GE(reached, 2);
}

TEST(Explanation, RefusesWhatPosteriorRefuses) {
  EXPECT_FALSE(best_explanation(test::rivals(), {Seen::present}).ok());
}

}  // namespace
}  // namespace pinwright
