// Exact inference held against two other ways to the same numbers, both in quadruple precision
// (113 bits): the definition, summed over every combination of up to 16 causes; and Quickscore, D.
// Heckerman, "A tractable inference algorithm for diagnosing multiple diseases" (UAI 1989), whose
// alternating sum over 2^findings terms loses 10 to 15 digits and so needs what a double has not.

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>
#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {
namespace {

__extension__ using Quad = __float128;

double uniform(std::mt19937_64& random) { return static_cast<double>(random() >> 11) * 0x1p-53; }

/// Signs of `least` to `most` causes each, as fitting knowledge has them.
Network random_network(std::mt19937_64& random, std::size_t causes, std::size_t signs,
                       std::size_t least, std::size_t most) {
  Network network;
  for (std::size_t c = 0; c < causes; ++c) {
    network.causes.push_back({"c" + std::to_string(c), 0.005 + 0.15 * uniform(random)});
  }
  for (std::size_t s = 0; s < signs; ++s) {
    network.signs.push_back({"s" + std::to_string(s), 0.005 + 0.05 * uniform(random)});
    std::set<std::size_t> mine;
    const std::size_t many = least + random() % (most - least + 1);
    while (mine.size() < many) mine.insert(random() % causes);
    for (const std::size_t c : mine) network.links.push_back({c, s, 0.05 + 0.9 * uniform(random)});
  }
  return network;
}

struct Reference {
  Quad evidence = 0;
  std::vector<Quad> cause;  ///< joint with the evidence
};

/// All combinations, one cause decided a level.
class Enumeration {
 public:
  Enumeration(const Network& network, const Evidence& evidence)
      : network_(network), evidence_(evidence), of_cause_(network.causes.size()) {
    for (const Link& link : network.links) of_cause_[link.cause].push_back(link);
    sums_.cause.assign(network.causes.size(), 0);
    std::vector<Quad> unseen;
    for (const SignNode& sign : network.signs) unseen.push_back(Quad(1) - Quad(sign.leak));
    decide(0, Quad(1), unseen);
  }
  const Reference& sums() const { return sums_; }

 private:
  void decide(std::size_t c, Quad p, const std::vector<Quad>& unseen) {
    if (c == network_.causes.size()) {
      for (std::size_t s = 0; s < unseen.size(); ++s) {
        p *= Quad(evidence_[s].if_seen) * (Quad(1) - unseen[s]) +
             Quad(evidence_[s].if_unseen) * unseen[s];
      }
      sums_.evidence += p;
      for (const std::size_t held : held_) sums_.cause[held] += p;
      return;
    }
    const Quad prior = Quad(network_.causes[c].prior);
    decide(c + 1, p * (Quad(1) - prior), unseen);
    std::vector<Quad> with = unseen;
    for (const Link& link : of_cause_[c]) with[link.sign] *= Quad(1) - Quad(link.strength);
    held_.push_back(c);
    decide(c + 1, p * prior, with);
    held_.pop_back();
  }

  const Network& network_;
  const Evidence& evidence_;
  std::vector<std::vector<Link>> of_cause_;
  std::vector<std::size_t> held_;
  Reference sums_;
};

/// A sign with likelihoods a (there) and b (not there) is a - (a - b) unseen: two terms a sign,
/// each a product over the causes.
class Quickscore {
 public:
  Quickscore(const Network& network, const Evidence& evidence)
      : network_(network), evidence_(evidence), of_sign_(network.signs.size()) {
    for (const Link& link : network.links) of_sign_[link.sign].push_back(link);
    sums_.cause.assign(network.causes.size(), 0);
    expand(0, Quad(1), std::vector<Quad>(network.causes.size(), Quad(1)));
  }
  const Reference& sums() const { return sums_; }

 private:
  void expand(std::size_t s, Quad factor, const std::vector<Quad>& kept) {
    while (s < evidence_.size() && evidence_[s] == Seen::unknown) ++s;
    if (s == evidence_.size()) {
      add(factor, kept);
      return;
    }
    const Likelihood& seen = evidence_[s];
    if (seen.if_seen != 0.0) expand(s + 1, factor * Quad(seen.if_seen), kept);
    std::vector<Quad> more = kept;
    for (const Link& link : of_sign_[s]) more[link.cause] *= Quad(1) - Quad(link.strength);
    const Quad unseen =
        (Quad(seen.if_unseen) - Quad(seen.if_seen)) * (Quad(1) - Quad(network_.signs[s].leak));
    expand(s + 1, factor * unseen, more);
  }

  void add(Quad factor, const std::vector<Quad>& kept) {
    for (std::size_t c = 0; c < kept.size(); ++c) {
      const Quad prior = Quad(network_.causes[c].prior);
      factor *= Quad(1) - prior + prior * kept[c];
    }
    sums_.evidence += factor;
    for (std::size_t c = 0; c < kept.size(); ++c) {
      const Quad on = Quad(network_.causes[c].prior) * kept[c];
      const Quad off = Quad(1) - Quad(network_.causes[c].prior);
      sums_.cause[c] += factor * on / (on + off);
    }
  }

  const Network& network_;
  const Evidence& evidence_;
  std::vector<std::vector<Link>> of_sign_;
  Reference sums_;
};

void expect_agrees(const Network& network, const Evidence& evidence, const Reference& wanted) {
  const Result<Posterior> found = posterior(network, evidence);
  ASSERT_TRUE(found.ok());
  EXPECT_NEAR(found->evidence / static_cast<double>(wanted.evidence), 1.0, 1e-11);
  for (std::size_t c = 0; c < network.causes.size(); ++c) {
    EXPECT_NEAR(found->cause[c], static_cast<double>(wanted.cause[c] / wanted.evidence), 1e-12);
  }
}

/// `present` signs seen, every fourth of them softly; of the others some absent.
Evidence observed(std::mt19937_64& random, std::size_t signs, std::size_t present) {
  Evidence evidence(signs, Seen::unknown);
  for (std::size_t s = 0; s < signs; ++s) {
    if (s < present) {
      evidence[s] = s % 4 == 3 ? stated(Seen::present, 0.2 + 0.7 * uniform(random)) : Seen::present;
    } else if (random() % 3 == 0) {
      evidence[s] = Seen::absent;
    }
  }
  return evidence;
}

TEST(NoisyOr, EnumerationOfSixteenCauses) {
  std::mt19937_64 random(1601);
  for (int round = 0; round < 3; ++round) {
    const Network network = random_network(random, 16, 10, 2, 5);
    const Evidence evidence = observed(random, 10, 8);
    expect_agrees(network, evidence, Enumeration(network, evidence).sums());
  }
}

TEST(NoisyOr, EnumerationOfTenEntangledCauses) {
  std::mt19937_64 random(1001);
  for (int round = 0; round < 10; ++round) {
    const Network network = random_network(random, 10, 14, 2, 8);
    Evidence evidence = observed(random, 14, 12);
    evidence[5] = stated(Seen::absent, 0.7);
    expect_agrees(network, evidence, Enumeration(network, evidence).sums());
  }
}

TEST(NoisyOr, QuickscoreOfSixtyAndAHundredAndFiftyCauses) {
  std::mt19937_64 random(60150);
  for (const std::size_t causes : {60u, 150u}) {
    const Network network = random_network(random, causes, 60, 2, 5);
    const Evidence evidence = observed(random, 60, 10);
    expect_agrees(network, evidence, Quickscore(network, evidence).sums());
  }
}

TEST(NoisyOr, QuickscoreOfFourteenFindingsThatShareTwentyCauses) {
  std::mt19937_64 random(1420);
  const Network network = random_network(random, 20, 14, 3, 6);
  const Evidence evidence = observed(random, 14, 14);
  expect_agrees(network, evidence, Quickscore(network, evidence).sums());
}

}  // namespace
}  // namespace pinwright
