// Many bodies, seeded: each gives a block that can be sewn, or a named refusal.
#include <gtest/gtest.h>

#include <random>

#include "engine/pattern/measurement.h"
#include "engine/pattern/size_range.h"
#include "engine/proof/proof.h"
#include "tests/engine/draft/sewn_checks.h"

namespace pinwright {
namespace {

using testing::faults;
using testing::joined;
using testing::measure_faults;

/// What the project's own proof and the check of blocks from outside say of it.
std::string unproved(const Block& block) {
  std::string all;
  for (const Problem& problem : check_block(block))
    all += problem.place + " " + problem.what + "\n";
  if (!all.empty()) return all;
  for (const Problem& problem : prove(block).failures) {
    all += problem.place + " " + problem.what + "\n";
  }
  return all;
}

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  /// Uniform, and the same on every machine.
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_()) / 4294967295.0);
  }

 private:
  std::mt19937 engine_;
};

/// A body with the bust given and the rest in our own proportion to it, give or take.
Measurements plausible(double bust, Dice& dice) {
  Measurements body;
  body["bust-girth"] = bust;
  body["waist-girth"] = bust * dice.between(0.74, 0.98);
  body["hip-girth"] = bust * dice.between(0.97, 1.15);
  body["neck-base-girth"] = 300.0 + 0.085 * bust + dice.between(-15.0, 15.0);
  body["head-girth"] = dice.between(540.0, 600.0);
  body["shoulder-length"] = dice.between(116.0, 138.0);
  body["shoulder-drop"] = body["shoulder-length"] * dice.between(0.26, 0.44);  // 15 to 26 degrees
  body["across-back-width"] = 180.0 + 0.185 * bust + dice.between(-12.0, 12.0);
  body["across-front-width"] = body["across-back-width"] - dice.between(5.0, 28.0);
  body["back-waist-length"] = dice.between(385.0, 435.0);
  // Longer over a fuller bust: a front that is hardly longer than the back has no room for it.
  body["front-waist-length"] =
      body["back-waist-length"] + dice.between(32.0, 65.0) + 0.06 * std::max(0.0, bust - 1000.0);
  body["neck-shoulder-point-to-bust-point"] = 125.0 + 0.155 * bust + dice.between(-10.0, 10.0);
  body["bust-point-width"] = 0.2 * bust + dice.between(-10.0, 10.0);
  body["scye-depth"] = 120.0 + 0.08 * bust + dice.between(-10.0, 12.0);
  body["upper-arm-girth"] = 0.31 * bust + dice.between(-20.0, 20.0);
  body["arm-length"] = dice.between(550.0, 630.0);
  body["hand-girth"] = dice.between(180.0, 220.0);
  return body;
}

class Grid : public ::testing::TestWithParam<const char*> {};

TEST_P(Grid, PlausibleBodiesGiveBlocksThatCanBeSewn) {
  Dice dice(20240917);
  DraftInput input;
  input.fabric =
      std::string(GetParam()) == "knit-top" ? testing::deckhand().fabric : testing::purser().fabric;
  std::optional<Block> first;
  for (double bust = 760.0; bust <= 1400.0; bust += 20.0) {
    for (int i = 0; i < 6; ++i) {
      input.wearer.body = plausible(bust, dice);
      const Result<Block> block = draft(GetParam(), input);
      ASSERT_TRUE(block.ok()) << bust << " " << i << ": " << block.problems()[0].what;
      EXPECT_EQ(joined(faults(*block)), "") << bust << " " << i;
      EXPECT_EQ(joined(measure_faults(*block)), "") << bust << " " << i;
      EXPECT_EQ(unproved(*block), "") << bust << " " << i;
      if (!first) first = *block;
      EXPECT_TRUE(topology_differences(*first, *block).empty());
      if (HasFailure()) return;
    }
  }
}

TEST_P(Grid, AnythingElseIsDraftedSoundOrRefusedByName) {
  Dice dice(7);
  int drafted = 0;
  int refused = 0;
  for (int i = 0; i < 240; ++i) {
    DraftInput input;
    input.fabric = std::string(GetParam()) == "knit-top" ? testing::deckhand().fabric
                                                         : testing::purser().fabric;
    input.wearer.body = plausible(dice.between(750.0, 1300.0), dice);
    // One to six measurements anywhere in the range that is accepted at all.
    const auto known = known_measurements();
    for (int j = 0; j < 1 + i % 6; ++j) {
      const auto which =
          static_cast<std::size_t>(dice.between(0.0, static_cast<double>(known.size()) - 0.001));
      input.wearer.body[std::string(known[which].id)] =
          dice.between(known[which].least_mm, known[which].most_mm);
    }
    const Result<Block> block = draft(GetParam(), input);
    if (block.ok()) {
      ++drafted;
      EXPECT_EQ(joined(faults(*block)), "") << i;
      EXPECT_EQ(joined(measure_faults(*block)), "") << i;
      EXPECT_EQ(unproved(*block), "") << i;
    } else {
      ++refused;
      for (const Problem& problem : block.problems()) {
        EXPECT_EQ(problem.code, "draft-impossible") << problem.place;
        EXPECT_FALSE(problem.what.empty());
        EXPECT_FALSE(problem.mend.empty());
      }
    }
    if (HasFailure()) return;
  }
  // Both happen, or the test would show nothing.
  EXPECT_GT(drafted, 40);
  EXPECT_GT(refused, 20);
}

INSTANTIATE_TEST_SUITE_P(Kinds, Grid, ::testing::Values("knit-top", "woven-bodice"),
                         [](const auto& kind) {
                           return kind.index == 0 ? std::string("KnitTop")
                                                  : std::string("WovenBodice");
                         });

}  // namespace
}  // namespace pinwright
