// Laws that inference must keep on any network.

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "engine/diagnosis/inference.h"
#include "tests/engine/diagnosis/networks.h"

namespace pinwright {
namespace {

TEST(Laws, NoEvidenceGivesThePriorsToTheLastBit) {
  std::mt19937_64 random(1);
  for (int round = 0; round < 50; ++round) {
    const Network network = test::random_network(random, {12, 10, 0.4});
    const auto found = posterior(network, Evidence(10, Seen::unknown));
    ASSERT_TRUE(found.ok());
    for (std::size_t c = 0; c < 12; ++c) EXPECT_EQ(found->cause[c], network.causes[c].prior);
    EXPECT_EQ(found->evidence, 1.0);
  }
}

TEST(Laws, APresentSignRaisesItsCausesAndAnAbsentOneLowersThem) {
  std::mt19937_64 random(2);
  for (int round = 0; round < 100; ++round) {
    Network network = test::random_network(random, {10, 6, 0.5});
    for (SignNode& sign : network.signs) sign.leak = 0.05;
    for (Link& link : network.links) link.strength = std::min(link.strength, 0.95);
    Evidence evidence(6, Seen::unknown);
    const std::size_t sign = random() % 6;
    evidence[sign] = Seen::present;
    const auto present = posterior(network, evidence);
    evidence[sign] = Seen::absent;
    const auto absent = posterior(network, evidence);
    ASSERT_TRUE(present.ok() && absent.ok());
    for (const Link& link : network.links) {
      if (link.sign != sign) continue;
      EXPECT_GT(present->cause[link.cause], network.causes[link.cause].prior);
      EXPECT_LT(absent->cause[link.cause], network.causes[link.cause].prior);
    }
  }
}

TEST(Laws, OneCauseExplainsTheOtherAway) {
  const Network network = test::rivals();
  const auto gapes = posterior(network, {Seen::present, Seen::unknown, Seen::unknown});
  const auto ripples = posterior(network, {Seen::present, Seen::unknown, Seen::present});
  ASSERT_TRUE(gapes.ok() && ripples.ok());
  EXPECT_GT(ripples->cause[1], gapes->cause[1]);
  EXPECT_LT(ripples->cause[0], gapes->cause[0]);
  EXPECT_GT(ripples->cause[0], network.causes[0].prior);
}

TEST(Laws, ACauseWithoutPresentSignsKeepsItsPriorAgainstItsAbsentOnes) {
  Network network = test::rivals();
  network.causes.push_back({"short-back", 0.25});
  network.signs.push_back({"back-rides-up", 0.1});
  network.links.push_back({2, 3, 0.6});
  const auto found =
      posterior(network, {Seen::present, Seen::unknown, Seen::unknown, Seen::absent});
  ASSERT_TRUE(found.ok());
  EXPECT_NEAR(found->cause[2], 0.25 * 0.4 / (0.25 * 0.4 + 0.75), 1e-15);
}

TEST(Laws, TheNumberingOfNodesDoesNotMatter) {
  std::mt19937_64 random(3);
  for (int round = 0; round < 100; ++round) {
    const Network network = test::random_network(random, {11, 9, 0.4});
    const Evidence evidence = test::random_evidence(random, network);
    std::vector<std::size_t> causes(11);
    std::vector<std::size_t> signs(9);
    std::iota(causes.begin(), causes.end(), std::size_t{0});
    std::iota(signs.begin(), signs.end(), std::size_t{0});
    std::shuffle(causes.begin(), causes.end(), random);
    std::shuffle(signs.begin(), signs.end(), random);
    Network moved = network;  // node i of the network is node causes[i] of the moved one
    Evidence moved_evidence = evidence;
    for (std::size_t c = 0; c < 11; ++c) moved.causes[causes[c]] = network.causes[c];
    for (std::size_t s = 0; s < 9; ++s) {
      moved.signs[signs[s]] = network.signs[s];
      moved_evidence[signs[s]] = evidence[s];
    }
    for (Link& link : moved.links) link = {causes[link.cause], signs[link.sign], link.strength};
    std::shuffle(moved.links.begin(), moved.links.end(), random);
    const auto a = posterior(network, evidence);
    const auto b = posterior(moved, moved_evidence);
    ASSERT_EQ(a.ok(), b.ok());
    if (!a) continue;
    EXPECT_TRUE(test::close(a->evidence, b->evidence));
    for (std::size_t c = 0; c < 11; ++c) {
      EXPECT_TRUE(test::close(a->cause[c], b->cause[causes[c]])) << a->cause[c];
    }
  }
}

TEST(Laws, TheSameQuestionGetsTheSameBits) {
  std::mt19937_64 random(4);
  Network network = test::random_network(random, {40, 16, 0.2});
  for (SignNode& sign : network.signs) sign.leak = 0.02;
  const Evidence evidence(16, Seen::present);
  const auto a = posterior(network, evidence);
  const auto b = posterior(network, evidence);
  ASSERT_TRUE(a.ok() && b.ok());
  EXPECT_EQ(a->cause, b->cause);
  EXPECT_EQ(a->evidence, b->evidence);
}

TEST(Laws, PresentAndAbsentShareOut) {
  std::mt19937_64 random(6);
  const Network network = test::random_network(random, {9, 7, 0.4});
  Evidence evidence(7, Seen::unknown);
  const double before = posterior(network, evidence)->evidence;
  evidence[3] = Seen::present;
  const double present = posterior(network, evidence)->evidence;
  evidence[3] = Seen::absent;
  const double absent = posterior(network, evidence)->evidence;
  EXPECT_NEAR(present + absent, before, 1e-14);
}

}  // namespace
}  // namespace pinwright
