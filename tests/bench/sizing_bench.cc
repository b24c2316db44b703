// What it costs to size four complaints together, on both blocks.
#include <benchmark/benchmark.h>

#include "../engine/alteration/skerry_blocks.h"
#include "engine/sizing/sizing.h"

namespace pinwright {
namespace {

Cure cure(const char* operation, std::map<std::string, std::string> options = {}) {
  return {step(operation, 0.0, std::move(options)), "", {}, {}};
}

// Tight over the bust, a gaping neckline, sloping shoulders, a tight upper arm.
SizingInput four_complaints(const Block& block) {
  SizingInput input;
  input.cures = {
      cure("full-bust"),
      cure("close-wedge", {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "bust-point"}}),
      cure("swing-shoulder"), cure("widen-upper-arm")};
  const std::pair<const char*, double> changes[] = {{"bust-girth", 18.0},
                                                    {"neckline-length", -10.0},
                                                    {"shoulder-slope", 0.05},
                                                    {"upper-arm-girth", 12.0}};
  const std::vector<GarmentMeasure> now = measures(block);
  for (const auto& [id, by] : changes)
    input.targets.push_back({id, find_measure(now, id)->value + by, 1.0, ""});
  return input;
}

void size_four(benchmark::State& state, const Block& block) {
  const SizingInput input = four_complaints(block);
  int alterations = 0;
  for (auto _ : state) {
    const Result<Sizing> sizing = size_jointly(block, input);
    if (!sizing || !sizing->met) state.SkipWithError("not met");
    if (sizing) alterations = sizing->alterations;
    benchmark::DoNotOptimize(sizing);
  }
  state.counters["steps_tried"] = alterations;
}

void size_four_complaints_knit(benchmark::State& state) { size_four(state, knit_top()); }
BENCHMARK(size_four_complaints_knit)->Unit(benchmark::kMicrosecond);

void size_four_complaints_woven(benchmark::State& state) { size_four(state, woven_bodice()); }
BENCHMARK(size_four_complaints_woven)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace pinwright
