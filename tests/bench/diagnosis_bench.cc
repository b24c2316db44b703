// Exact inference on random networks and on the shipped knowledge with its most entangled signs.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <random>
#include <set>

#include "engine/diagnosis/explanation.h"
#include "engine/diagnosis/question.h"
#include "engine/diagnosis/reasons.h"
#include "knowledge/load.h"
#include "knowledge/network_of.h"

namespace pinwright {
namespace {

double uniform(std::mt19937_64& random) { return static_cast<double>(random() >> 11) * 0x1p-53; }

/// `signs` signs of 2 to 5 causes each.
Network random_network(std::size_t causes, std::size_t signs, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  Network network;
  for (std::size_t c = 0; c < causes; ++c) {
    network.causes.push_back({"c" + std::to_string(c), 0.01 + 0.1 * uniform(random)});
  }
  for (std::size_t s = 0; s < signs; ++s) {
    network.signs.push_back({"s" + std::to_string(s), 0.02});
    std::set<std::size_t> mine;
    const std::size_t many = 2 + random() % 4;
    while (mine.size() < many) mine.insert(random() % causes);
    for (const std::size_t c : mine) {
      network.links.push_back({c, s, 0.2 + 0.75 * uniform(random)});
    }
  }
  return network;
}

/// The knowledge of the source tree, or of the folder that PINWRIGHT_KNOWLEDGE names.
const knowledge::Knowledge& shipped() {
  static const knowledge::Knowledge k = [] {
    const char* other = std::getenv("PINWRIGHT_KNOWLEDGE");
    return knowledge::load(
               {other != nullptr ? other : std::string(PINWRIGHT_SOURCE_DIR) + "/knowledge/data"})
        .value();
  }();
  return k;
}

/// The sign of most causes, then again and again the one that shares most with those taken.
Evidence entangled(const Network& network, std::size_t present) {
  std::vector<std::set<std::size_t>> causes(network.signs.size());
  for (const Link& link : network.links) causes[link.sign].insert(link.cause);
  std::set<std::size_t> tied;
  Evidence evidence(network.signs.size(), Seen::unknown);
  for (std::size_t n = 0; n < present; ++n) {
    std::size_t best = network.signs.size();
    std::pair<std::size_t, std::size_t> most;
    for (std::size_t s = 0; s < network.signs.size(); ++s) {
      if (evidence[s] != Seen::unknown) continue;
      const auto shared = static_cast<std::size_t>(std::count_if(
          causes[s].begin(), causes[s].end(), [&](std::size_t c) { return tied.contains(c); }));
      const std::pair key{shared, causes[s].size()};
      if (best == network.signs.size() || key > most) best = s, most = key;
    }
    evidence[best] = Seen::present;
    tied.insert(causes[best].begin(), causes[best].end());
  }
  return evidence;
}

void BM_random(benchmark::State& state) {
  const auto causes = static_cast<std::size_t>(state.range(0));
  const auto present = static_cast<std::size_t>(state.range(1));
  const Network network = random_network(causes, 170, static_cast<std::uint64_t>(state.range(2)));
  Evidence evidence(170, Seen::unknown);
  std::fill_n(evidence.begin(), present, Seen::present);
  for (auto _ : state) benchmark::DoNotOptimize(posterior(network, evidence).ok());
}
BENCHMARK(BM_random)
    ->ArgsProduct({{60, 150}, {10, 16, 20}, {1, 2, 3}})
    ->Unit(benchmark::kMicrosecond);

/// All signs of the findings share their causes as much as signs of the network can.
void BM_random_entangled(benchmark::State& state) {
  const auto causes = static_cast<std::size_t>(state.range(0));
  const Network network = random_network(causes, 170, static_cast<std::uint64_t>(state.range(2)));
  const Evidence evidence = entangled(network, static_cast<std::size_t>(state.range(1)));
  for (auto _ : state) benchmark::DoNotOptimize(posterior(network, evidence).ok());
}
BENCHMARK(BM_random_entangled)
    ->ArgsProduct({{60, 150}, {10, 16, 20}, {1, 2, 3}})
    ->Unit(benchmark::kMicrosecond);

/// All features: as many signs and causes at once as there can be.
struct Shipped {
  knowledge::KindNetwork kind = knowledge::network_of(shipped(), "knit-top");
  Evidence evidence;
  explicit Shipped(std::int64_t present)
      : evidence(entangled(kind.network, static_cast<std::size_t>(present))) {}
};

void BM_shipped_posterior(benchmark::State& state) {
  const Shipped shipped(state.range(0));
  for (auto _ : state) {
    benchmark::DoNotOptimize(posterior(shipped.kind.network, shipped.evidence).ok());
  }
}
BENCHMARK(BM_shipped_posterior)->Arg(5)->Arg(10)->Arg(16)->Arg(20)->Unit(benchmark::kMicrosecond);

void BM_shipped_reasons_of_ten_causes(benchmark::State& state) {
  const Shipped shipped(state.range(0));
  std::vector<std::size_t> ten(10);
  for (std::size_t i = 0; i < ten.size(); ++i) ten[i] = i;
  for (auto _ : state) {
    benchmark::DoNotOptimize(reasons(shipped.kind.network, shipped.evidence, ten).ok());
  }
}
BENCHMARK(BM_shipped_reasons_of_ten_causes)->Arg(10)->Arg(20)->Unit(benchmark::kMicrosecond);

void BM_shipped_explanation(benchmark::State& state) {
  const Shipped shipped(state.range(0));
  for (auto _ : state) {
    benchmark::DoNotOptimize(best_explanation(shipped.kind.network, shipped.evidence).ok());
  }
}
BENCHMARK(BM_shipped_explanation)->Arg(10)->Arg(20)->Unit(benchmark::kMicrosecond);

/// Every sign that is not known yet is weighed.
void BM_shipped_next_question(benchmark::State& state) {
  const Shipped shipped(state.range(0));
  QuestionOptions options;
  options.cost.assign(shipped.evidence.size(), 1.0);
  options.may_ask.assign(shipped.evidence.size(), true);
  options.settled = 1.0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(next_question(shipped.kind.network, shipped.evidence, options).ok());
  }
}
BENCHMARK(BM_shipped_next_question)->Arg(10)->Arg(20)->Unit(benchmark::kMicrosecond);

/// Signs drawn by chance, but of one garment: the median of many try-ons.
void BM_shipped_posterior_of_random_findings(benchmark::State& state) {
  const knowledge::KindNetwork kind = knowledge::network_of(shipped(), "knit-top");
  std::mt19937_64 random(static_cast<std::uint64_t>(state.range(1)));
  Evidence evidence(kind.signs.size(), Seen::unknown);
  for (std::int64_t n = 0; n < state.range(0); ++n) {
    evidence[random() % evidence.size()] = Seen::present;
  }
  for (auto _ : state) benchmark::DoNotOptimize(posterior(kind.network, evidence).ok());
}
BENCHMARK(BM_shipped_posterior_of_random_findings)
    ->ArgsProduct({{10, 20}, {1, 2, 3}})
    ->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace pinwright
