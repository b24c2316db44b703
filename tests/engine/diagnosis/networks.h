#pragma once
// Networks for the tests, and the answers by going through every combination of causes.

#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright::test {

inline double uniform(std::mt19937_64& random) {
  return static_cast<double>(random() >> 11) * 0x1p-53;
}

struct NetworkShape {
  std::size_t causes = 0;
  std::size_t signs = 0;
  double density = 0.3;  ///< chance of each link
};

/// Leaks of 0 and strengths of 1 are among the figures.
inline Network random_network(std::mt19937_64& random, const NetworkShape& shape) {
  Network network;
  for (std::size_t c = 0; c < shape.causes; ++c) {
    network.causes.push_back({"c" + std::to_string(c), 0.001 + 0.6 * uniform(random)});
  }
  for (std::size_t s = 0; s < shape.signs; ++s) {
    network.signs.push_back(
        {"s" + std::to_string(s), random() % 4 == 0 ? 0.0 : 0.3 * uniform(random)});
  }
  for (std::size_t c = 0; c < shape.causes; ++c) {
    for (std::size_t s = 0; s < shape.signs; ++s) {
      if (uniform(random) >= shape.density) continue;
      const double strength = random() % 8 == 0 ? 1.0 : 0.01 + 0.98 * uniform(random);
      network.links.push_back({c, s, strength});
    }
  }
  return network;
}

inline Evidence random_evidence(std::mt19937_64& random, const Network& network) {
  Evidence evidence;
  for (std::size_t s = 0; s < network.signs.size(); ++s) {
    evidence.push_back(static_cast<Seen>(random() % 3));
  }
  return evidence;
}

/// Soft findings both ways among certain and unknown ones; some as good as certain.
inline Evidence random_soft_evidence(std::mt19937_64& random, const Network& network) {
  Evidence evidence = random_evidence(random, network);
  for (Likelihood& observed : evidence) {
    if (random() % 2 == 0) continue;
    observed = {uniform(random), uniform(random)};
    if (random() % 5 == 0) observed.if_unseen *= 1e-9;
    if (random() % 5 == 0) observed.if_seen *= 1e-9;
  }
  return evidence;
}

/// The joint by definition: sum over all 2^n combinations, in extended precision.
struct BruteForce {
  long double evidence = 0.0L;
  std::vector<long double> cause;  ///< joint with the evidence, not yet divided
  std::vector<long double> sign;   ///< the same
};

inline BruteForce brute_force(const Network& network, const Evidence& evidence) {
  const std::size_t n = network.causes.size();
  BruteForce sums;
  sums.cause.resize(n);
  sums.sign.resize(network.signs.size());
  for (std::uint64_t held = 0; held < (std::uint64_t{1} << n); ++held) {
    long double p = 1.0L;
    for (std::size_t c = 0; c < n; ++c) {
      const long double prior = network.causes[c].prior;
      p *= (held >> c & 1) ? prior : 1.0L - prior;
    }
    std::vector<long double> unseen;
    for (const SignNode& sign : network.signs) unseen.push_back(1.0L - sign.leak);
    for (const Link& link : network.links) {
      if (held >> link.cause & 1) unseen[link.sign] *= 1.0L - link.strength;
    }
    for (std::size_t s = 0; s < evidence.size(); ++s) {
      p *= evidence[s].if_seen * (1.0L - unseen[s]) + evidence[s].if_unseen * unseen[s];
    }
    sums.evidence += p;
    for (std::size_t c = 0; c < n; ++c) {
      if (held >> c & 1) sums.cause[c] += p;
    }
    for (std::size_t s = 0; s < evidence.size(); ++s) {
      const long double seen = evidence[s].if_seen * (1.0L - unseen[s]);
      const long double all = seen + evidence[s].if_unseen * unseen[s];
      if (all > 0.0L) sums.sign[s] += p * seen / all;
    }
  }
  return sums;
}

/// Agreement to 1e-12 of the wanted value.
inline bool close(double found, long double wanted) {
  return std::abs(static_cast<long double>(found) - wanted) <= 1e-12L * std::abs(wanted);
}

/// Two causes that compete for one sign and each have one of their own.
inline Network rivals() {
  Network network;
  network.causes = {{"hollow-chest", 0.1}, {"stretched-edge", 0.2, CauseKind::sewing}};
  network.signs = {{"neckline-gapes", 0.01}, {"chest-flat", 0.05}, {"edge-ripples", 0.05}};
  network.links = {{0, 0, 0.8}, {1, 0, 0.7}, {0, 1, 0.6}, {1, 2, 0.9}};
  return network;
}

}  // namespace pinwright::test
