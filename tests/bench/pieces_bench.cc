// How the cost of a change grows with the number of pieces.
#include <benchmark/benchmark.h>

#include "../engine/alteration/skerry_blocks.h"

namespace pinwright {
namespace {

// The block and `more` further sets of its pieces, each sewn as the first: a block with many parts.
Block with_sets(const Block& block, int sets) {
  Block all = block;
  for (int k = 1; k < sets; ++k) {
    const std::string tail = "-" + std::to_string(k);
    for (Piece piece : block.pieces) {
      piece.id += tail;
      all.pieces.push_back(std::move(piece));
    }
    for (Seam seam : block.seams) {
      seam.id += tail;
      for (auto* run : {&seam.a, &seam.b})
        for (RunPart& part : *run) part.piece += tail;
      all.seams.push_back(std::move(seam));
    }
    for (Join join : block.joins) {
      join.id += tail;
      for (CornerRef& c : join.corners) c.piece += tail;
      all.joins.push_back(std::move(join));
    }
    for (Binding binding : block.bindings) {
      binding.id += tail;
      binding.piece += tail;
      for (RunPart& part : binding.opening) part.piece += tail;
      all.bindings.push_back(std::move(binding));
    }
  }
  return all;
}

void pieces(benchmark::State& state) {
  // A woven block: no opening that would have to pass a head with all its sets at once.
  const Block block = with_sets(woven_bodice(), static_cast<int>(state.range(0)));
  const Step change = step("swing-shoulder", 8.0);
  for (auto _ : state) {
    const Result<Altered> altered = alter(block, {change});
    if (!altered) {
      state.SkipWithError(altered.problems().front().what.c_str());
      break;
    }
    benchmark::DoNotOptimize(prove(altered->block, &block));
  }
  state.counters["pieces"] = static_cast<double>(block.pieces.size());
  state.SetComplexityN(state.range(0));
}
BENCHMARK(pieces)->RangeMultiplier(2)->Range(1, 32)->Unit(benchmark::kMicrosecond)->Complexity();

}  // namespace
}  // namespace pinwright
