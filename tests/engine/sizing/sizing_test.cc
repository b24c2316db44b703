#include "engine/sizing/sizing.h"
#include "engine/sizing/measure_limits.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "skerry_blocks.h"

namespace pinwright {
namespace {

Cure cure(const std::string& operation, const std::string& asked_by,
          std::map<std::string, std::string> options = {}) {
  return {step(operation, 0.0, std::move(options)), asked_by, {}, {}};
}

Target shifted(const Block& block, const std::string& measure, double by,
               const std::string& asked_by = "") {
  return {measure, garment(block, measure) + by, 1.0, asked_by};
}

Sizing sized(const Block& block, const SizingInput& input) {
  Result<Sizing> result = size_jointly(block, input);
  if (!result) {
    ADD_FAILURE() << result.problems().front().place << ": " << result.problems().front().what;
    return {};
  }
  return std::move(*result);
}

TEST(SizeJointly, FindsOneAmount) {
  const Sizing s = sized(woven_bodice(), {{cure("lower-neckline", "chokes", {{"piece", "front"}})},
                                          {shifted(woven_bodice(), "front-neck-depth", 9.0)},
                                          {},
                                          {}});
  ASSERT_EQ(s.steps.size(), 1u);
  EXPECT_TRUE(s.met);
  EXPECT_NEAR(s.steps[0].amount, 9.0, 0.11);
  EXPECT_NEAR(garment(s.block, "front-neck-depth"), garment(woven_bodice(), "front-neck-depth") + 9,
              0.1);
  EXPECT_TRUE(prove(s.block).pass);
  EXPECT_TRUE(s.conflicts.empty());
}

// A full bust and a gaping neckline both want the neckline: it is sized once.
TEST(SizeJointly, OverlappingCuresAreSizedOnceAndTheSharesSum) {
  for (const Block* block : {&knit_top(), &woven_bodice()}) {
    const SizingInput input{
        {cure("full-bust", "tight over the bust"),
         cure("close-wedge", "the neckline gapes",
              {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "bust-point"}})},
        {shifted(*block, "bust-girth", 16.0, "tight over the bust"),
         shifted(*block, "neckline-length", -12.0, "the neckline gapes")},
        {},
        {}};
    const Sizing s = sized(*block, input);
    ASSERT_EQ(s.targets.size(), 2u);
    EXPECT_TRUE(s.met) << block->kind;
    for (const SizedMeasure& t : s.targets) {
      EXPECT_LT(std::abs(t.left_over), 0.1) << t.measure;
      double sum = 0.0;
      for (const Share& share : t.shares) sum += share.change;
      EXPECT_NEAR(sum, t.after - t.before, 0.11) << t.measure;
    }
    EXPECT_TRUE(prove(s.block).pass);
    // The steps, done again by alter(), give the same block.
    const Result<Altered> again = alter(*block, s.steps);
    ASSERT_TRUE(again.ok());
    EXPECT_TRUE(again->block == s.block);
  }
}

double drift(const Sizing& s) {
  double sum = 0.0;
  for (const SizedMeasure& h : s.held)
    if (h.kind != MeasureKind::angle) sum += (h.after - h.before) * (h.after - h.before);
  return std::sqrt(sum);
}

// Of the ways to meet a target the one is taken that leaves the other measures nearest to where
// they were: a lower neck is a longer neckline, unless it is also filled in.
TEST(SizeJointly, LeavesWhatNobodyComplainedOfNearestToWhereItWas) {
  const Cure lower = cure("lower-neckline", "chokes", {{"piece", "front"}});
  const std::vector<Target> targets = {shifted(woven_bodice(), "front-neck-depth", 10.0)};
  const Sizing alone = sized(woven_bodice(), {{lower}, targets, {}, {}});
  const Sizing more =
      sized(woven_bodice(),
            {{lower, cure("widen-neckline", ""), cure("move-shoulder-tip", "")}, targets, {}, {}});
  EXPECT_TRUE(alone.met);
  EXPECT_TRUE(more.met);
  EXPECT_LT(drift(more), 0.7 * drift(alone));
  // Measures that may go where they will leave more to the others.
  const Cure widen = cure("widen-neckline", "");
  const Sizing all = sized(woven_bodice(), {{lower, widen}, targets, {}, {}});
  const Sizing free =
      sized(woven_bodice(), {{lower, widen}, targets, {"neckline-length", "shoulder-length"}, {}});
  EXPECT_TRUE(free.met);
  ASSERT_EQ(free.held.size() + 2, all.held.size());
  const auto others = [](const Sizing& s) {
    double sum = 0.0;
    for (const SizedMeasure& h : s.held)
      if (h.measure != "neckline-length" && h.measure != "shoulder-length" &&
          h.kind != MeasureKind::angle)
        sum += (h.after - h.before) * (h.after - h.before);
    return sum;
  };
  EXPECT_LT(others(free), others(all));
}

TEST(SizeJointly, TheSameOperationAskedForTwiceIsOneStep) {
  Cure first = cure("let-out-side", "tight at the bust");
  Cure second = cure("let-out-side", "tight at the waist", {{"level", "all"}});
  first.most = 20.0;
  second.most = 15.0;
  const Sizing s =
      sized(knit_top(), {{first, second}, {shifted(knit_top(), "bust-girth", 20.0)}, {}, {}});
  ASSERT_EQ(s.cures.size(), 1u);
  EXPECT_EQ(s.cures[0].asked_by,
            (std::vector<std::string>{"tight at the bust", "tight at the waist"}));
  EXPECT_EQ(s.cures[0].most, 15.0);
  EXPECT_TRUE(s.met);
}

TEST(SizeJointly, ABoundThatHoldsIsReportedWithWhatIsLeftOver) {
  Cure c = cure("lower-neckline", "chokes", {{"piece", "front"}});
  c.most = 6.0;
  const Sizing s =
      sized(woven_bodice(), {{c}, {shifted(woven_bodice(), "front-neck-depth", 10.0)}, {}, {}});
  EXPECT_FALSE(s.met);
  EXPECT_TRUE(s.cures[0].at_most);
  EXPECT_NEAR(s.targets[0].left_over, 4.0, 0.2);
  ASSERT_EQ(s.conflicts.size(), 1u);
  ASSERT_EQ(s.conflicts[0].members.size(), 2u);
  EXPECT_EQ(s.conflicts[0].members[1].kind, ConflictMember::Kind::bound);
  EXPECT_NEAR(*s.conflicts[0].members[1].would_do, 9.0, 0.2);  // within 1 mm of 10
  EXPECT_NEAR(*s.conflicts[0].members[0].would_do, garment(woven_bodice(), "front-neck-depth") + 6,
              0.2);
}

// The neckline that is to shrink by more than the head allows.
TEST(SizeJointly, ALimitIsKeptAndTheConflictNamed) {
  const Block& top = knit_top();
  Measurements body = top.drafted_for.body;
  body["head-girth"] = 570.0;
  const std::vector<MeasureLimit> limits = measure_limits(top, body, top.fabric);
  ASSERT_FALSE(limits.empty());
  ASSERT_EQ(limits[0].terms[0].measure, "neckline-length");
  const double least = 570.0 / (top.bindings[0].ratio * (1.0 + top.fabric.stretch_across));
  EXPECT_NEAR(*limits[0].at_least, least, 0.01);
  const SizingInput input{
      {cure("widen-neckline", "neckline too wide"),
       cure("lower-neckline", "neckline too low", {{"piece", "front"}})},
      {shifted(top, "neckline-length", -40.0, "the neckline stands off 20 mm a side")},
      {},
      limits};
  const Sizing s = sized(top, input);
  EXPECT_FALSE(s.met);
  EXPECT_NEAR(s.targets[0].after, least, 0.05);
  ASSERT_EQ(s.conflicts.size(), 1u);
  ASSERT_EQ(s.conflicts[0].members.size(), 2u);
  EXPECT_EQ(s.conflicts[0].members[0].kind, ConflictMember::Kind::target);
  EXPECT_EQ(s.conflicts[0].members[1].kind, ConflictMember::Kind::limit);
  EXPECT_NEAR(*s.conflicts[0].members[0].would_do, least, 0.05);
  const std::string& text = s.conflicts[0].text;
  EXPECT_NE(text.find("40 mm less"), std::string::npos) << text;
  EXPECT_NE(text.find("passes a head of 570 mm"), std::string::npos) << text;
  EXPECT_NE(text.find("or take a cloth that stretches more"), std::string::npos) << text;
}

// Each member of a conflict is needed: with it gone, the rest can be met.
TEST(SizeJointly, EveryMemberOfAConflictIsNeeded) {
  Cure lower = cure("lower-neckline", "chokes", {{"piece", "front"}});
  lower.most = 5.0;
  Cure widen = cure("widen-neckline", "too tight");
  widen.most = 4.0;
  const SizingInput input{{lower, widen},
                          {shifted(woven_bodice(), "neckline-length", 40.0, "too tight"),
                           shifted(woven_bodice(), "shoulder-length", 0.0, "shoulder as it is")},
                          {},
                          {}};
  const Sizing s = sized(woven_bodice(), input);
  ASSERT_FALSE(s.met);
  ASSERT_EQ(s.conflicts.size(), 1u);
  for (std::size_t left_out = 0; left_out < s.conflicts[0].members.size(); ++left_out) {
    SizingInput rest = input;
    rest.targets.clear();
    for (Cure& c : rest.cures) c.least = -200.0, c.most = 200.0;
    for (std::size_t k = 0; k < s.conflicts[0].members.size(); ++k) {
      if (k == left_out) continue;
      const ConflictMember& m = s.conflicts[0].members[k];
      if (m.kind == ConflictMember::Kind::target) rest.targets.push_back(input.targets[m.index]);
      if (m.kind == ConflictMember::Kind::bound)
        rest.cures[m.index].most = input.cures[m.index].most;
    }
    if (rest.targets.empty()) continue;
    const Result<Sizing> r = size_jointly(woven_bodice(), rest);
    ASSERT_TRUE(r.ok());
    // On the block itself the change may be refused for other reasons; they are then told.
    EXPECT_TRUE(r->met || !r->conflicts.empty());
    const bool refused = std::any_of(r->cures.begin(), r->cures.end(),
                                     [](const SizedCure& c) { return !c.bound_reason.empty(); });
    EXPECT_TRUE(r->met || refused) << left_out;
  }
}

TEST(SizeJointly, ATargetThatNoStepMovesIsItsOwnConflict) {
  const Sizing s = sized(knit_top(), {{cure("lower-neckline", "", {{"piece", "front"}})},
                                      {shifted(knit_top(), "upper-arm-girth", 12.0)},
                                      {},
                                      {}});
  EXPECT_FALSE(s.met);
  EXPECT_TRUE(s.steps.empty());
  EXPECT_TRUE(s.block == knit_top());
  ASSERT_EQ(s.conflicts.size(), 1u);
}

TEST(SizeJointly, AWishThePatternRefusesStopsShortOfIt) {
  Cure c = cure("full-bust", "small bust");
  const Sizing s = sized(knit_top(), {{c}, {shifted(knit_top(), "bust-girth", -70.0)}, {}, {}});
  EXPECT_FALSE(s.met);
  EXPECT_TRUE(s.cures[0].at_least);
  EXPECT_FALSE(s.cures[0].bound_reason.empty());
  EXPECT_TRUE(prove(s.block).pass);
}

TEST(SizeJointly, EveryWrongInputIsNamed) {
  SizingInput input{{cure("lower-neckline", "", {{"piece", "sleeve"}}), cure("sew", "")},
                    {{"bust-girht", 1.0, 1.0, ""}, {"bust-girth", NAN, -1.0, ""}},
                    {"nothing-such"},
                    {{"empty", {}, 1.0, {}, ""}}};
  const Result<Sizing> r = size_jointly(knit_top(), input);
  ASSERT_FALSE(r.ok());
  std::vector<std::string> codes;
  for (const Problem& p : r.problems()) codes.push_back(p.code);
  EXPECT_EQ(codes, (std::vector<std::string>{"measure-unknown", "target-not-a-number",
                                             "tolerance-range", "limit-empty", "measure-unknown",
                                             "option-value", "operation-not-here"}));
  EXPECT_FALSE(size_jointly(knit_top(), {}).ok());
}

TEST(SizeJointly, TheSameInputGivesTheSameBits) {
  const SizingInput input{
      {cure("full-bust", "a"), cure("widen-neckline", "b")},
      {shifted(knit_top(), "bust-girth", 18.0), shifted(knit_top(), "neckline-length", 9.0)},
      {},
      {}};
  EXPECT_TRUE(sized(knit_top(), input).block == sized(knit_top(), input).block);
}

}  // namespace
}  // namespace pinwright
