#include "knowledge/measure_of.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

#include "engine/alteration/alter.h"
#include "engine/pattern/measures.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

std::vector<Step> every_step() {
  std::vector<Step> all;
  for (const OperationInfo& info : operation_catalogue()) {
    if (info.amount == AmountKind::none) continue;
    std::vector<Step> here(1);
    here[0].operation = info.id;
    here[0].amount = info.amount == AmountKind::ratio ? 0.9 : 4.0;
    for (const OptionInfo& o : info.options) {
      std::vector<Step> more;
      for (const Step& step : here) {
        for (const std::string_view value : o.values) {
          more.push_back(step);
          more.back().options[std::string(o.key)] = std::string(value);
        }
      }
      here = std::move(more);
    }
    all.insert(all.end(), here.begin(), here.end());
  }
  return all;
}

std::string said(const Step& step) {
  std::string out = step.operation;
  for (const auto& [key, value] : step.options) out += " " + key + "=" + value;
  return out;
}

const std::vector<Block>& blocks() {
  static const std::vector<Block> both = {
      *draft("knit-top", testing::skerry_input("knit-top")),
      *draft("woven-bodice", testing::skerry_input("woven-bodice"))};
  return both;
}

/// What the step alone changes of a measure: mm, an angle in mm at 100 mm from its corner.
double change(const Block& before, const Block& after, const std::string& id) {
  const auto was = measures(before);
  const auto is = measures(after);
  const GarmentMeasure* a = find_measure(was, id);
  const GarmentMeasure* b = find_measure(is, id);
  if (a == nullptr || b == nullptr) return 0.0;
  return (b->value - a->value) * (a->kind == MeasureKind::angle ? 100.0 : 1.0);
}

TEST(MeasureOf, EveryOperationThatMovesALineHasARow) {
  for (const Step& step : every_step()) EXPECT_TRUE(knows_measure_of(step)) << said(step);
  Step sewn;
  sewn.operation = "sew";
  EXPECT_FALSE(knows_measure_of(sewn));
  EXPECT_EQ(measure_of(blocks()[0], sewn), "");
}

// A step of 4 mm changes the measure that it is for by at least 2 mm, and each operation that has a
// measure is tried on one of the blocks at least.
TEST(MeasureOf, TheStepAloneMovesIt) {
  std::set<std::string> counted;
  std::set<std::string> tried;
  for (const Block& block : blocks()) {
    for (Step step : every_step()) {
      const std::string measure = measure_of(block, step);
      if (measure.empty()) continue;
      counted.insert(step.operation);
      auto done = alter(block, {step});
      if (!done) {  // the neckline of the knit can only get longer
        step.amount = -step.amount;
        done = alter(block, {step});
      }
      if (!done) continue;
      tried.insert(step.operation);
      EXPECT_GT(std::abs(change(block, done->block, measure)), 2.0)
          << block.kind << ": " << said(step) << " is to move " << measure;
    }
  }
  EXPECT_EQ(counted, tried);
  EXPECT_GE(tried.size(), 15U);
}

// What a row says is carried along is really changed by the step on some block.
TEST(MeasureOf, WhatIsCarriedIsMoved) {
  std::map<std::string, bool> carried;
  for (const Block& block : blocks()) {
    for (const Step& step : every_step()) {
      const auto done = alter(block, {step});
      if (!done) continue;
      for (const GarmentMeasure& m : measures(block)) {
        if (!carries(step, m.id)) continue;
        bool& moved = carried[step.operation + " " + m.id];
        moved = moved || std::abs(change(block, done->block, m.id)) > 1.0;
      }
    }
  }
  EXPECT_GE(carried.size(), 10U);
  for (const auto& [what, moved] : carried) EXPECT_TRUE(moved) << what;
}

TEST(MeasureOf, DefaultsAreReadFromTheCatalogue) {
  Step step;
  step.operation = "lower-neckline";
  EXPECT_EQ(measure_of(blocks()[0], step), "front-neck-depth");
  step.options["piece"] = "back";
  EXPECT_EQ(measure_of(blocks()[0], step), "back-neck-depth");
}

TEST(MeasureOf, AOneSidedStepHasItsSidesMeasureOrNone) {
  Step step;
  step.operation = "swing-shoulder";
  EXPECT_EQ(measure_of(blocks()[0], step), "shoulder-slope");
  step.side = Side::left;
  EXPECT_EQ(measure_of(blocks()[0], step), "") << "both sides of this block are alike";
}

TEST(MeasureOf, NothingOnABlockWithoutTheMeasure) {
  Step step;
  step.operation = "widen-upper-arm";
  Block sleeveless = blocks()[0];
  std::erase_if(sleeveless.pieces, [](const Piece& p) { return p.id == "sleeve"; });
  EXPECT_EQ(measure_of(sleeveless, step), "");
}

}  // namespace
}  // namespace pinwright::knowledge
