#include "engine/diagnosis/inference.h"

#include <gtest/gtest.h>

#include "tests/engine/diagnosis/networks.h"

namespace pinwright {
namespace {

using test::brute_force;
using test::BruteForce;
using test::close;

TEST(Posterior, AgreesWithEnumerationOnRandomNetworks) {
  std::mt19937_64 random(20260101);
  int possible = 0;
  for (int round = 0; round < 400; ++round) {
    const test::NetworkShape shape{1 + random() % 14, 1 + random() % 12,
                                   0.1 + 0.7 * test::uniform(random)};
    const Network network = test::random_network(random, shape);
    const Evidence evidence = test::random_evidence(random, network);
    const BruteForce wanted = brute_force(network, evidence);
    const Result<Posterior> found = posterior(network, evidence);
    if (wanted.evidence < 1e-18L) {  // 1 - unseen in the enumeration is rounding there
      EXPECT_TRUE(found.ok() || found.problems().front().code == "evidence-impossible");
      continue;
    }
    ++possible;
    ASSERT_TRUE(found.ok()) << "round " << round;
    EXPECT_TRUE(close(found->evidence, wanted.evidence)) << "round " << round;
    for (std::size_t c = 0; c < network.causes.size(); ++c) {
      EXPECT_TRUE(close(found->cause[c], wanted.cause[c] / wanted.evidence))
          << "round " << round << " cause " << c << ": " << found->cause[c];
    }
  }
  EXPECT_GT(possible, 250);
}

TEST(PredictSigns, AgreesWithEnumerationOnRandomNetworks) {
  std::mt19937_64 random(77);
  int possible = 0;
  for (int round = 0; round < 200; ++round) {
    const Network network = test::random_network(random, {1 + random() % 9, 1 + random() % 8, 0.4});
    const Evidence evidence = test::random_evidence(random, network);
    const BruteForce wanted = brute_force(network, evidence);
    const Result<std::vector<double>> found = predict_signs(network, evidence);
    if (wanted.evidence < 1e-18L) continue;
    ++possible;
    ASSERT_TRUE(found.ok());
    for (std::size_t s = 0; s < evidence.size(); ++s) {
      if (evidence[s] == Seen::unknown) {
        EXPECT_TRUE(close((*found)[s], wanted.sign[s] / wanted.evidence)) << round << " " << s;
      } else {
        EXPECT_EQ((*found)[s], evidence[s] == Seen::present ? 1.0 : 0.0);
      }
    }
  }
  EXPECT_GT(possible, 120);
}

TEST(Posterior, SoftEvidenceAgreesWithEnumerationOnRandomNetworks) {
  std::mt19937_64 random(20260102);
  int possible = 0;
  for (int round = 0; round < 300; ++round) {
    const test::NetworkShape shape{1 + random() % 12, 1 + random() % 12,
                                   0.1 + 0.7 * test::uniform(random)};
    const Network network = test::random_network(random, shape);
    const Evidence evidence = test::random_soft_evidence(random, network);
    const BruteForce wanted = brute_force(network, evidence);
    if (wanted.evidence < 1e-18L) continue;
    ++possible;
    const Result<Posterior> found = posterior(network, evidence);
    const Result<std::vector<double>> signs = predict_signs(network, evidence);
    ASSERT_TRUE(found.ok() && signs.ok()) << "round " << round;
    EXPECT_TRUE(close(found->evidence, wanted.evidence)) << "round " << round;
    for (std::size_t c = 0; c < network.causes.size(); ++c) {
      EXPECT_TRUE(close(found->cause[c], wanted.cause[c] / wanted.evidence)) << round << " " << c;
    }
    for (std::size_t s = 0; s < evidence.size(); ++s) {
      EXPECT_TRUE(close((*signs)[s], wanted.sign[s] / wanted.evidence)) << round << " " << s;
    }
  }
  EXPECT_GT(possible, 200);
}

TEST(Posterior, SoftEvidenceLiesBetweenUnknownAndCertain) {
  const Network network = test::rivals();
  double before = posterior(network, Evidence(3, Seen::unknown))->cause[0];
  for (const double sure : {0.01, 0.3, 0.6, 0.9, 0.999, 1.0}) {
    const auto found =
        posterior(network, {stated(Seen::present, sure), Seen::unknown, Seen::unknown});
    ASSERT_TRUE(found.ok());
    EXPECT_GT(found->cause[0], before);
    before = found->cause[0];
  }
  EXPECT_EQ(before, posterior(network, {Seen::present, Seen::unknown, Seen::unknown})->cause[0]);
}

TEST(Stated, IsThereAsSureAsItWasMeantOrElseAsUsual) {
  for (const double sure : {0.1, 0.5, 0.8, 0.95}) {
    const Likelihood present = stated(Seen::present, sure);
    const double there = kUsual * present.if_seen;
    const double not_there = (1.0 - kUsual) * present.if_unseen;
    EXPECT_NEAR(there / (there + not_there), sure + (1.0 - sure) * kUsual, 1e-15);
    const Likelihood absent = stated(Seen::absent, sure);
    const double still_there = kUsual * absent.if_seen;
    const double gone = (1.0 - kUsual) * absent.if_unseen;
    EXPECT_NEAR(gone / (still_there + gone), sure + (1.0 - sure) * (1.0 - kUsual), 1e-15);
  }
  EXPECT_EQ(stated(Seen::present, 1.0), Likelihood(Seen::present));
  EXPECT_EQ(stated(Seen::absent, 7.0), Likelihood(Seen::absent));
  EXPECT_EQ(stated(Seen::present, 0.0), Likelihood(Seen::unknown));
  EXPECT_EQ(stated(Seen::absent, std::nan("")), Likelihood(Seen::unknown));
}

TEST(Posterior, RefusesALikelihoodThatIsNone) {
  for (const double wrong : {-0.1, std::nan(""), HUGE_VAL}) {
    const auto found =
        posterior(test::rivals(), {Likelihood{0.5, wrong}, Seen::unknown, Seen::unknown});
    ASSERT_FALSE(found.ok());
    EXPECT_EQ(found.problems().front().code, "likelihood-range");
  }
  const auto never =
      posterior(test::rivals(), {Likelihood{0.0, 0.0}, Seen::unknown, Seen::unknown});
  ASSERT_FALSE(never.ok());
  EXPECT_EQ(never.problems().front().code, "evidence-impossible");
}

TEST(Posterior, SmallChancesKeepTheirDigits) {
  // Alternating sums lose everything here: 1 - (1 - 1e-12)(1 - 2e-12) and the like.
  Network network;
  network.causes = {{"a", 1e-9}, {"b", 3e-9}};
  network.signs = {{"s", 0.0}, {"t", 0.0}};
  network.links = {{0, 0, 1e-12}, {1, 0, 2e-12}, {0, 1, 1e-12}, {1, 1, 5e-12}};
  const Result<Posterior> found = posterior(network, {Seen::present, Seen::present});
  ASSERT_TRUE(found.ok());
  // With one cause: 1e-9 * 1e-24 against 3e-9 * 1e-23; both together 3e-18 * (3e-12 * 6e-12).
  const double a = 1e-9 * (1.0 - 3e-9) * 1e-24;
  const double b = 3e-9 * (1.0 - 1e-9) * 1e-23;
  const double both = 3e-18 * 3e-12 * 6e-12;
  EXPECT_NEAR(found->cause[0], (a + both) / (a + b + both), 1e-11 * found->cause[0]);
  EXPECT_NEAR(found->evidence / (a + b + both), 1.0, 1e-11);
}

TEST(Posterior, SixtyCausesAndTwentyPresentSigns) {
  std::mt19937_64 random(5);
  Network network = test::random_network(random, {60, 20, 0.12});
  for (SignNode& sign : network.signs) sign.leak = 0.02;
  const Evidence evidence(20, Seen::present);
  const Result<Posterior> found = posterior(network, evidence);
  ASSERT_TRUE(found.ok());
  EXPECT_GT(found->evidence, 0.0);
  for (std::size_t c = 0; c < 60; ++c) {
    EXPECT_GE(found->cause[c], 0.0);
    EXPECT_LE(found->cause[c], 1.0);
    EXPECT_GE(found->cause[c], network.causes[c].prior * (1.0 - 1e-12)) << c;
  }
}

TEST(Posterior, HundredsOfRareSignsDoNotUnderflow) {
  Network network;
  Evidence evidence;
  for (std::size_t i = 0; i < 300; ++i) {
    const std::string number = std::to_string(i);
    network.causes.push_back({"c" + number, 1e-4});
    network.signs.push_back({"s" + number, 1e-6});
    network.links.push_back({i, i, 0.5});
    if (i > 0) network.links.push_back({i - 1, i, 0.25});
    evidence.push_back(Seen::present);
  }
  const Result<Posterior> found = posterior(network, evidence);
  ASSERT_TRUE(found.ok());
  for (double p : found->cause) EXPECT_TRUE(p > 0.0 && p <= 1.0) << p;
}

TEST(Posterior, FortySignsOfThreeCausesAreHeldByTheCauses) {
  std::mt19937_64 random(41);
  Network network;
  for (std::size_t c = 0; c < 3; ++c) network.causes.push_back({"c" + std::to_string(c), 0.1});
  for (std::size_t s = 0; s < 40; ++s) {
    network.signs.push_back({"s" + std::to_string(s), 0.1});
    for (std::size_t c = 0; c < 3; ++c) {
      network.links.push_back({c, s, 0.1 + 0.4 * test::uniform(random)});
    }
  }
  const Evidence evidence(40, Seen::present);
  const Result<Posterior> found = posterior(network, evidence);
  ASSERT_TRUE(found.ok());
  const BruteForce wanted = brute_force(network, evidence);
  for (std::size_t c = 0; c < 3; ++c) {
    EXPECT_TRUE(close(found->cause[c], wanted.cause[c] / wanted.evidence)) << found->cause[c];
  }
}

TEST(Posterior, FortyCausesOfThreeSignsAreHeldByTheSigns) {
  Network network;
  for (std::size_t s = 0; s < 3; ++s) network.signs.push_back({"s" + std::to_string(s), 0.1});
  for (std::size_t c = 0; c < 40; ++c) {
    network.causes.push_back({"c" + std::to_string(c), 0.1});
    for (std::size_t s = 0; s < 3; ++s) network.links.push_back({c, s, 0.3});
  }
  const Result<Posterior> found = posterior(network, Evidence(3, Seen::present));
  ASSERT_TRUE(found.ok());
  for (double p : found->cause) EXPECT_NEAR(p, found->cause[0], 1e-13);  // all alike
  // Inclusion and exclusion over the three signs; few terms, so few digits lost.
  const auto unseen = [](int k) {
    return std::pow(0.9, k) * std::pow(0.9 + 0.1 * std::pow(0.7, k), 40);
  };
  EXPECT_NEAR(found->evidence, 1.0 - 3.0 * unseen(1) + 3.0 * unseen(2) - unseen(3), 1e-13);
}

TEST(Posterior, WhatIsTooEntangledIsSaidNotTried) {
  Network network;
  for (std::size_t i = 0; i < 40; ++i) {
    network.causes.push_back({"c" + std::to_string(i), 0.1});
    network.signs.push_back({"s" + std::to_string(i), 0.1});
    for (std::size_t c = 0; c <= i; ++c) network.links.push_back({c, i, 0.5});
    for (std::size_t s = 0; s < i; ++s) network.links.push_back({i, s, 0.5});
  }
  const Result<Posterior> found = posterior(network, Evidence(40, Seen::present));
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(found.problems().front().code, "evidence-too-wide");
}

TEST(Posterior, ImpossibleEvidence) {
  Network network = test::rivals();
  network.signs[1].leak = 0.0;
  network.links[1].strength = 1.0;
  network.links[0].strength = 1.0;
  // The chest looks flat, which only a hollow chest makes; but that would surely make a gape.
  const Result<Posterior> found = posterior(network, {Seen::absent, Seen::present, Seen::unknown});
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(found.problems().front().code, "evidence-impossible");
  EXPECT_FALSE(predict_signs(network, {Seen::absent, Seen::present, Seen::unknown}).ok());
}

TEST(Posterior, SharedSignsThatContradictAreImpossible) {
  // Signs s and t share the causes a and b; u rules out both.
  Network network;
  network.causes = {{"a", 0.3}, {"b", 0.3}};
  network.signs = {{"s", 0.0}, {"t", 0.0}, {"u", 0.0}};
  network.links = {{0, 0, 0.5}, {1, 0, 0.5}, {0, 1, 0.5}, {1, 1, 0.5}, {0, 2, 1.0}, {1, 2, 1.0}};
  const auto found = posterior(network, {Seen::present, Seen::present, Seen::absent});
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(found.problems().front().code, "evidence-impossible");
}

TEST(Posterior, RefusesUnsoundInput) {
  Network network = test::rivals();
  network.causes[0].prior = 1.5;
  const auto found = posterior(network, {Seen::present});
  ASSERT_FALSE(found.ok());
  ASSERT_EQ(found.problems().size(), 2u);
  EXPECT_EQ(found.problems()[0].code, "probability-range");
  EXPECT_EQ(found.problems()[1].code, "evidence-size");
}

TEST(Posterior, EmptyNetwork) {
  const auto found = posterior({}, {});
  ASSERT_TRUE(found.ok());
  EXPECT_TRUE(found->cause.empty());
  EXPECT_EQ(found->evidence, 1.0);
}

}  // namespace
}  // namespace pinwright
