// Everything that must hold, on the demo blocks.
#include "engine/constraint/standing.h"

#include <gtest/gtest.h>

#include <cmath>

#include "../alteration/skerry_blocks.h"
#include "engine/constraint/residuals.h"
#include "engine/constraint/solve.h"
#include "engine/geometry/arc_length.h"
#include "engine/proof/proof.h"

namespace pinwright {
namespace {

std::vector<EdgeAt> every_edge(const Block& block) {
  std::vector<EdgeAt> all;
  for (std::size_t p = 0; p < block.pieces.size(); ++p)
    for (std::size_t e = 0; e < block.pieces[p].edges.size(); ++e)
      if (!block.pieces[p].edges[e].straight) all.push_back({p, e});
  return all;
}

TEST(Standing, ADraftedBlockHoldsAllOfItAndNothingMoves) {
  for (const Block* block : {&knit_top(), &woven_bodice()}) {
    const System system = standing_system(*block, every_edge(*block), {});
    EXPECT_GE(system.lengths.size(), 3u);
    EXPECT_GE(system.angles.size(), 8u);
    const Result<Redrawn> redrawn = redraw(*block, system);
    ASSERT_TRUE(redrawn.ok()) << redrawn.problems().front().place;
    EXPECT_LT(redrawn->report.most_moved_mm, 1e-3);
  }
}

TEST(Standing, BringsBackWhatWasPulledOutOfTrue) {
  for (const Block* good : {&knit_top(), &woven_bodice()}) {
    Block bent = *good;
    // The front armhole is pulled out of shape, and the cap no longer fits it.
    Piece& front = *find_piece(bent, "front");
    Curve& armhole = front.edges[edge_index(front, "armhole")].curve;
    armhole.points[1] += Vec2{2.0, -1.5};
    armhole.points[armhole.points.size() - 2] += Vec2{-1.0, 2.0};
    ASSERT_FALSE(prove(bent).pass);
    std::vector<EdgeAt> free;
    for (const EdgeAt e : every_edge(bent)) {
      const EdgeRole role = bent.pieces[e.piece].edges[e.edge].role;
      if (role == EdgeRole::armhole || role == EdgeRole::cap) free.push_back(e);
    }
    ASSERT_TRUE(solve(bent, standing_system(bent, free, {})).ok());
    for (const SeamProof& seam : prove(bent).seams)
      EXPECT_NEAR(seam.ease_found, seam.ease_wanted, 1e-5) << seam.name;
    for (const JoinProof& join : prove(bent).joins)
      EXPECT_NEAR(join.deviation_deg, 0.0, 1e-5) << join.name;
  }
}

TEST(Standing, FindsEverySeamAndJoin) {
  const Block& block = woven_bodice();
  const Standing standing(block);
  ASSERT_EQ(standing.seams().size(), block.seams.size());
  ASSERT_EQ(standing.joins().size(), block.joins.size());
  int caps = 0;
  for (const SeamAt& seam : standing.seams()) {
    caps += seam.cap ? 1 : 0;
    double ease = 0.0;
    for (const EdgeAt e : seam.a) ease += length(block.pieces[e.piece].edges[e.edge].curve);
    for (const EdgeAt e : seam.b) ease -= length(block.pieces[e.piece].edges[e.edge].curve);
    EXPECT_NEAR(ease, stated_ease(block.seams[seam.seam]), 1e-6) << block.seams[seam.seam].name;
  }
  EXPECT_EQ(caps, 2);
  for (const JoinAt& join : standing.joins())
    EXPECT_NEAR(join_residual(block, join), 0.0, 1e-9) << block.joins[join.join].name;
}

}  // namespace
}  // namespace pinwright
