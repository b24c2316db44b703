// Every proposal that the shipped knowledge makes can be applied and proved on the room's blocks,
// or says why not.
#include "knowledge/tried_out.h"

#include <gtest/gtest.h>

#include "engine/alteration/alter.h"
#include "engine/pattern/sides.h"
#include "engine/proof/proof.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;  // NOLINT: short try-ons read better

bool complete(const Proposal& p) {
  for (const auto& s : p.steps) {
    const bool moves = find_operation(s.step.operation)->amount != AmountKind::none;
    if (moves && (!s.has_amount || s.step.amount == 0.0)) return false;
  }
  return p.on_pattern;
}

bool says_a_limit(const Proposal& p) {
  for (const auto& s : p.steps)
    if (!s.limit.empty()) return true;
  return false;
}

void every_proposal_of(const Block& block) {
  int applied = 0;
  for (const auto& sign : shipped().signs) {
    for (const auto& p : advice(block, told({seen(sign.id)})).proposals) {
      if (!complete(p)) continue;
      std::vector<Step> steps;
      for (const auto& s : p.steps) steps.push_back(s.step);
      const Result<Altered> result = alter(block, steps);
      if (!result) {
        EXPECT_TRUE(says_a_limit(p)) << p.id << ": " << result.problems().front().what;
        continue;
      }
      const Proof proof = prove(result->block, &block);
      EXPECT_TRUE(proof.pass) << p.id << ": " << proof.failures.front().what;
      EXPECT_TRUE(!(result->block == block) || says_a_limit(p)) << p.id << " moves nothing";
      ++applied;
    }
  }
  EXPECT_GT(applied, 20);
}

TEST(TriedOut, KnitTop) { every_proposal_of(knit_top()); }
TEST(TriedOut, WovenBodice) { every_proposal_of(woven_bodice()); }

TEST(TriedOut, OneSideIsAlteredAlone) {
  const Advice a = advice(knit_top(), told({seen("armhole-too-low", whole(10), Side::left)}));
  int applied = 0;
  for (const auto& p : a.proposals) {
    if (!complete(p) || !p.on_pattern) continue;
    std::vector<Step> steps;
    for (const auto& s : p.steps) {
      EXPECT_EQ(s.step.side, Side::left) << p.id;
      steps.push_back(s.step);
    }
    const Result<Altered> result = alter(knit_top(), steps);
    if (!result) continue;
    ++applied;
    EXPECT_TRUE(is_opened(result->block)) << p.id;
    EXPECT_TRUE(prove(result->block, &knit_top()).pass) << p.id;
    const auto right = half_block(result->block, Side::right);
    ASSERT_TRUE(right.ok());
    for (const char* piece : {"front", "back", "sleeve"}) {
      const Piece& was = *find_piece(knit_top(), piece);
      for (const Edge& edge : find_piece(*right, piece)->edges)
        EXPECT_TRUE(edge == *find_edge(was, edge.id)) << p.id << " " << piece << "." << edge.id;
    }
  }
  EXPECT_GT(applied, 0);
}

TEST(TriedOut, ARatioThatTheBlockHasAlready) {
  Proposal p;
  p.on_pattern = true;
  ProposedStep s;
  s.step.operation = "set-binding-ratio";
  s.step.amount = knit_top().bindings.front().ratio;
  s.has_amount = true;
  p.steps.push_back(s);
  try_out(knit_top(), p);
  EXPECT_NE(p.steps.front().limit.find("already"), std::string::npos);
}

}  // namespace
}  // namespace pinwright::knowledge
