#include "engine/diagnosis/question.h"

#include <gtest/gtest.h>

#include "tests/engine/diagnosis/networks.h"

namespace pinwright {
namespace {

QuestionOptions all_looks(std::size_t signs) {
  return {std::vector<double>(signs, 1.0), std::vector<bool>(signs, true)};
}

long double entropy(long double p) {
  return p <= 0.0L || p >= 1.0L ? 0.0L : -p * std::log2(p) - (1.0L - p) * std::log2(1.0L - p);
}

/// Mutual information by its definition, from the enumeration.
long double gain_by_enumeration(const Network& network, Evidence evidence, std::size_t sign) {
  const test::BruteForce before = test::brute_force(network, evidence);
  long double bits = 0.0L;
  for (const long double joint : before.cause) bits += entropy(joint / before.evidence);
  for (const Seen answer : {Seen::present, Seen::absent}) {
    evidence[sign] = answer;
    const test::BruteForce after = test::brute_force(network, evidence);
    if (after.evidence < 1e-18L) continue;
    for (const long double joint : after.cause) {
      bits -= after.evidence / before.evidence * entropy(joint / after.evidence);
    }
  }
  return bits;
}

TEST(NextQuestion, HasTheGreatestInformationOnRandomNetworks) {
  std::mt19937_64 random(11);
  int asked = 0;
  for (int round = 0; round < 60; ++round) {
    Network network = test::random_network(random, {7, 6, 0.5});
    for (SignNode& sign : network.signs) sign.leak = 0.02;
    Evidence evidence = test::random_evidence(random, network);
    evidence[0] = evidence[1] = Seen::unknown;
    QuestionOptions options = all_looks(6);
    options.settled = 1.0;
    const auto found = next_question(network, evidence, options);
    if (test::brute_force(network, evidence).evidence < 1e-18L) continue;
    ASSERT_TRUE(found.ok());
    if (!*found) continue;
    ++asked;
    const Question& question = **found;
    EXPECT_NEAR(question.gain,
                static_cast<double>(gain_by_enumeration(network, evidence, question.sign)), 1e-9);
    for (std::size_t s = 0; s < 6; ++s) {
      if (evidence[s] != Seen::unknown) continue;
      EXPECT_LE(static_cast<double>(gain_by_enumeration(network, evidence, s)),
                question.gain + 1e-9);
    }
  }
  EXPECT_GT(asked, 40);
}

TEST(NextQuestion, CountsTheCostIn) {
  const Network network = test::rivals();
  const Evidence evidence = {Seen::present, Seen::unknown, Seen::unknown};
  QuestionOptions options = all_looks(3);
  const auto cheap = next_question(network, evidence, options);
  ASSERT_TRUE(cheap.ok() && *cheap);
  EXPECT_EQ((*cheap)->sign, 2u);
  options.cost[2] = 5.0;
  const auto dear = next_question(network, evidence, options);
  ASSERT_TRUE(dear.ok() && *dear);
  EXPECT_EQ((*dear)->sign, 1u);
  EXPECT_DOUBLE_EQ((*dear)->value, (*dear)->gain);
}

TEST(NextQuestion, AsksOnlyWhatMayBeAskedAndIsNotKnown) {
  const Network network = test::rivals();
  QuestionOptions options = all_looks(3);
  options.may_ask[2] = false;
  const auto found = next_question(network, {Seen::present, Seen::absent, Seen::unknown}, options);
  ASSERT_TRUE(found.ok());
  EXPECT_FALSE(found->has_value());
}

TEST(NextQuestion, NothingWhenSettled) {
  Network network = test::rivals();
  network.signs[2].leak = 0.0;
  const Evidence evidence = {Seen::present, Seen::unknown, Seen::present};
  QuestionOptions options = all_looks(3);
  options.settled = 0.7;  // stretched edge certain, hollow chest below 0.3
  const auto settled = next_question(network, evidence, options);
  ASSERT_TRUE(settled.ok());
  EXPECT_FALSE(settled->has_value());
  options.settled = 0.999;
  const auto open = next_question(network, evidence, options);
  ASSERT_TRUE(open.ok());
  EXPECT_TRUE(open->has_value());
}

TEST(NextQuestion, NothingThatTellsTooLittle) {
  const Network network = test::rivals();
  QuestionOptions options = all_looks(3);
  options.least_gain_bits = 2.0;
  const auto found = next_question(network, {Seen::present, Seen::unknown, Seen::unknown}, options);
  ASSERT_TRUE(found.ok());
  EXPECT_FALSE(found->has_value());
}

TEST(NextQuestion, RefusesOptionsThatDoNotFit) {
  QuestionOptions options = all_looks(2);
  options.cost[0] = 0.0;
  const auto found =
      next_question(test::rivals(), {Seen::present, Seen::unknown, Seen::unknown}, options);
  ASSERT_FALSE(found.ok());
  ASSERT_EQ(found.problems().size(), 2u);
  EXPECT_EQ(found.problems()[0].code, "options-size");
  EXPECT_EQ(found.problems()[1].code, "cost-range");
}

}  // namespace
}  // namespace pinwright
