// The solver against Ceres on the same systems, in the same run.
#include <benchmark/benchmark.h>

#include <chrono>

#include "../engine/constraint/ceres_system.h"
#include "../engine/constraint/real_systems.h"
#include "engine/constraint/solve.h"

namespace pinwright {
namespace {

constexpr double kWeight = 1e4;  // one round of a penalty: what Ceres has for equalities

const std::vector<RealSystem>& systems() {
  static const std::vector<RealSystem> all = real_systems();
  return all;
}

void solve_ours(benchmark::State& state) {
  const RealSystem& real = systems()[static_cast<std::size_t>(state.range(0))];
  state.SetLabel(real.name);
  for (auto _ : state) benchmark::DoNotOptimize(redraw(real.block, real.system));
}
BENCHMARK(solve_ours)->DenseRange(0, 7)->Unit(benchmark::kMicrosecond);

// Both by turns: the counter says how many times longer Ceres takes.
void solve_against_ceres(benchmark::State& state) {
  using Clock = std::chrono::steady_clock;
  const RealSystem& real = systems()[static_cast<std::size_t>(state.range(0))];
  state.SetLabel(real.name);
  Clock::duration ours{};
  Clock::duration theirs{};
  double left = 0.0;
  for (auto _ : state) {
    const auto start = Clock::now();
    benchmark::DoNotOptimize(redraw(real.block, real.system));
    const auto middle = Clock::now();
    Block block = real.block;
    left = ceres_solve(block, real.system, kWeight, 1);
    theirs += Clock::now() - middle;
    ours += middle - start;
  }
  state.counters["ceres_over_ours"] =
      std::chrono::duration<double>(theirs).count() / std::chrono::duration<double>(ours).count();
  state.counters["ceres_left_mm"] = left;
}
BENCHMARK(solve_against_ceres)->DenseRange(0, 7)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace pinwright
