// Whatever is asked for: a proved block, or a named refusal, and never anything between.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "engine/geometry/fairing.h"
#include "random_step.h"
#include "skerry_blocks.h"

namespace pinwright {
namespace {

int inflections_of(const Piece& piece, EdgeRole role) {
  int sum = 0;
  for (const Edge& e : piece.edges)
    if (e.role == role) sum += inflections(e.curve);
  return sum;
}

// A changed edge has no new change of curvature; where a dart parted or joined edges, the seam has
// none as a whole.
void expect_fair(const Block& before, const Block& after, const Proof& proof) {
  for (const Moved& m : proof.moved) {
    if (m.same_bits) continue;
    const Piece& was = *find_piece(before, m.piece);
    const Piece& is = *find_piece(after, m.piece);
    const Edge& edge = *find_edge(is, m.edge);
    if (const Edge* old = find_edge(was, m.edge)) {
      EXPECT_LE(inflections(edge.curve), inflections(old->curve)) << m.piece << "." << m.edge;
    } else {
      EXPECT_LE(inflections_of(is, edge.role), inflections_of(was, edge.role))
          << m.piece << "." << m.edge;
    }
  }
}

void run(const Block& start, unsigned seed, int sequences) {
  std::mt19937 rng(seed);
  int done = 0;
  for (int i = 0; i < sequences; ++i) {
    Block block = start;
    const int steps = 1 + static_cast<int>(rng() % 6);
    for (int k = 0; k < steps; ++k) {
      const Step s = random_step(rng);
      const Block before = block;
      Result<Altered> result = alter(block, {s});
      EXPECT_TRUE(block == before);
      if (!result) {
        for (const Problem& p : result.problems()) {
          EXPECT_FALSE(p.code.empty());
          EXPECT_EQ(p.place.rfind("/steps/0", 0), 0u) << p.place;
          EXPECT_FALSE(p.mend.empty()) << p.what;
        }
        continue;
      }
      const Proof proof = prove(result->block, &before);
      ASSERT_TRUE(proof.pass) << s.operation << " " << s.amount << " seed " << seed << " sequence "
                              << i << ": " << proof.failures.front().place << " "
                              << proof.failures.front().what;
      expect_fair(before, result->block, proof);
      ASSERT_TRUE(check_block(result->block).empty()) << check_block(result->block).front().what;
      block = std::move(result->block);
      ++done;
    }
  }
  EXPECT_GT(done, sequences);  // most steps are possible
}

TEST(RandomSteps, KnitTopStaysProved) { run(knit_top(), 11, 150); }
TEST(RandomSteps, WovenBodiceStaysProved) { run(woven_bodice(), 12, 150); }

}  // namespace
}  // namespace pinwright
