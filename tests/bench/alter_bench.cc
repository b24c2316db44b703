// What a change costs: apply, restore, prove. Run: pinwright_bench (see DEVELOPERS.md).
#include <benchmark/benchmark.h>

#include "../engine/alteration/skerry_blocks.h"
#include "engine/draft/draft.h"

namespace pinwright {
namespace {

Step one(const char* operation, double amount, std::map<std::string, std::string> options = {}) {
  Step s;
  s.operation = operation;
  s.amount = amount;
  s.options = std::move(options);
  return s;
}

void alter_and_prove(benchmark::State& state, const Block& block, const Step& s) {
  for (auto _ : state) {
    const Result<Altered> altered = alter(block, {s});
    if (!altered) state.SkipWithError("refused");
    benchmark::DoNotOptimize(prove(altered->block, &block));
  }
}

void lower_the_neckline(benchmark::State& state) {
  alter_and_prove(state, knit_top(), one("lower-neckline", 8));
}
BENCHMARK(lower_the_neckline)->Unit(benchmark::kMicrosecond);

void swing_the_shoulder(benchmark::State& state) {
  alter_and_prove(state, woven_bodice(), one("swing-shoulder", 8));
}
BENCHMARK(swing_the_shoulder)->Unit(benchmark::kMicrosecond);

void spread_over_the_bust(benchmark::State& state) {
  alter_and_prove(state, woven_bodice(), one("full-bust", 12));
}
BENCHMARK(spread_over_the_bust)->Unit(benchmark::kMicrosecond);

void let_out_the_side(benchmark::State& state) {
  alter_and_prove(state, knit_top(), one("let-out-side", 10));
}
BENCHMARK(let_out_the_side)->Unit(benchmark::kMicrosecond);

void prove_alone(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(prove(woven_bodice()));
}
BENCHMARK(prove_alone)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace pinwright

BENCHMARK_MAIN();
