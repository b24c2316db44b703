// Several complaints of one try-on become one set of amounts.
#include "knowledge/joint.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/pattern/measures.h"
#include "engine/proof/proof.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;  // NOLINT: short try-ons read better

Finding said(const std::string& sign, const std::string& words,
             std::optional<FoundAmount> amount = std::nullopt) {
  Finding f = seen(sign, amount);
  f.words = words;
  return f;
}

double value(const Block& block, const std::string& id) {
  const auto all = measures(block);
  const GarmentMeasure* m = find_measure(all, id);
  return m == nullptr ? NAN : m->value;
}

const SizedMeasure& target(const Joint& joint, const std::string& id) {
  for (const SizedMeasure& m : joint.sizing.targets)
    if (m.measure == id) return m;
  ADD_FAILURE() << "no target " << id;
  static const SizedMeasure none;
  return none;
}

double share_sum(const SizedMeasure& m) {
  double sum = 0.0;
  for (const Share& share : m.shares) sum += share.change;
  return sum;
}

Result<Joint> together(const Block& block, const std::vector<Finding>& findings,
                       const JointWish& wish = {}) {
  const TryOn tryon = told(findings);
  return size_together(shipped(), block, tryon, advice(block, tryon), wish);
}

/// An advice of steps made by hand, one proposal and cause each, each asked for by its own finding.
struct ByHand {
  Advice advice;
  void add(const std::string& id, const std::string& operation,
           const std::map<std::string, std::string>& options, double amount,
           Side side = Side::both) {
    ProposedStep step;
    step.step.operation = operation;
    step.step.options = options;
    step.step.amount = amount;
    step.step.side = side;
    step.has_amount = operation != "sew";
    step.text = id;
    Proposal proposal;
    proposal.id = id;
    proposal.cause = "cause-of-" + id;
    proposal.name = id;
    proposal.on_pattern = operation != "sew";
    proposal.steps = {step};
    advice.proposals.push_back(proposal);
    CauseFound cause;
    cause.id = proposal.cause;
    cause.name = proposal.cause;
    cause.probability = 0.5;
    cause.reasons_for = {{"sign-of-" + id, "", 1.0}};
    advice.causes.push_back(cause);
    Finding f;
    f.sign = "sign-of-" + id;
    f.words = "told: " + id;
    advice.findings.push_back(f);
  }
  Result<Joint> size(const Block& block, const JointWish& wish = {}) const {
    return size_together(shipped(), block, TryOn{}, advice, wish);
  }
};

std::string codes(const Result<Joint>& joint) {
  std::string all;
  for (const Problem& p : joint.problems()) all += p.code + " @ " + p.place + "\n";
  return all;
}

// Filling in the neckline at the shoulders shortens its front as well: the wedge has that much less
// to close. One after the other would close it too far.
TEST(Joint, TwoComplaintsOfOneNeckline) {
  const std::vector<Finding> findings = {
      said("front-neckline-gapes", "front neckline gapes 2 cm", whole(20.0)),
      said("neck-fold-ends-above-bust", "fold ends above the bust"),
      said("neckline-slides-off-shoulders", "slides off the shoulders by 1 cm", whole(10.0)),
      unseen("neck-edge-longer-than-pattern")};
  const auto joint = together(woven_bodice(), findings);
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_TRUE(joint->sizing.met);
  ASSERT_EQ(joint->input.proposals.size(), 2U);
  ASSERT_EQ(joint->steps.size(), 2U);
  const SizedMeasure& neckline = target(*joint, "front-neckline-length");
  EXPECT_NEAR(neckline.wanted, neckline.before - 20.0, 0.1);
  EXPECT_NEAR(neckline.after, neckline.wanted, 0.1);
  ASSERT_EQ(neckline.shares.size(), 2U) << "both steps have their part in it";
  EXPECT_NEAR(share_sum(neckline), neckline.after - neckline.before, 0.1);
  EXPECT_LT(std::abs(neckline.shares[0].change), 19.0);
  EXPECT_NE(neckline.asked_by.find("gapes 2 cm"), std::string::npos) << neckline.asked_by;

  std::vector<Step> one_by_one;
  for (const JointStep& step : joint->input.steps) one_by_one.push_back(step.proposed.step);
  const auto undone = alter(woven_bodice(), one_by_one);
  ASSERT_TRUE(undone.ok());
  EXPECT_LT(value(undone->block, "front-neckline-length"), neckline.wanted - 3.0)
      << "the case does not overlap at all";

  const auto done = alter(woven_bodice(), joint->steps);
  ASSERT_TRUE(done.ok());
  EXPECT_EQ(done->block, joint->sizing.block) << "the steps give the very block";
  EXPECT_TRUE(prove(done->block, &woven_bodice()).pass);
}

// A wedge closed down to the hem takes width out of the front: the spread over the bust makes up
// for it.
TEST(Joint, AFullBustAndAWedge) {
  JointWish wish;
  wish.proposals = {"spread-over-bust", "close-neckline-to-hem"};
  const auto joint = together(woven_bodice(),
                              {said("front-neckline-gapes", "gapes", whole(20.0)),
                               said("bust-drag-lines", "tight across the bust", whole(30.0))},
                              wish);
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_TRUE(joint->sizing.met);
  const SizedCure& bust = sized_cure(*joint, joint->input.steps[0]);
  EXPECT_EQ(bust.step.operation, "full-bust");
  EXPECT_EQ(bust.asked_by, std::vector<std::string>{"tight across the bust"});
  EXPECT_GT(bust.step.amount, joint->input.steps[0].proposed.step.amount + 2.0);
  EXPECT_NEAR(target(*joint, "front-bust-width").left_over, 0.0, 0.1);
  EXPECT_NEAR(target(*joint, "front-neckline-length").left_over, 0.0, 0.1);
}

TEST(Joint, TheHeadMustStillPass) {
  const auto joint = together(knit_top(), {said("front-neckline-gapes", "gapes 4 cm", whole(40.0)),
                                           said("neck-fold-ends-above-bust", "ends above the bust"),
                                           said("top-too-long", "3 cm too long", whole(30.0))});
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_FALSE(joint->sizing.met);
  ASSERT_EQ(joint->sizing.conflicts.size(), 1U);
  const SizingConflict& conflict = joint->sizing.conflicts[0];
  EXPECT_NE(conflict.text.find("passes a head of 560 mm"), std::string::npos) << conflict.text;
  EXPECT_NE(conflict.text.find("stretches more"), std::string::npos) << conflict.text;
  ASSERT_EQ(conflict.members.size(), 2U);
  // The wish is for the whole 40 mm, though the wedge alone was refused.
  const SizedMeasure& neckline = target(*joint, "front-neckline-length");
  EXPECT_NEAR(neckline.wanted, neckline.before - 40.0, 0.5);
}

// A lower neckline is longer, but the gape that was pinned on it is not: it comes on top. The
// centre front gets shorter from above, but what the front lacks over the bust it still lacks.
TEST(Joint, WhatIsOnlyCarriedAlongComesOnTop) {
  ByHand hand;
  hand.add("lower", "lower-neckline", {{"piece", "front"}}, 8.0);
  hand.add("wedge", "close-wedge", {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "armhole"}},
           5.0);
  hand.add("over-bust", "lengthen-over-bust", {}, 10.0);
  const auto joint = hand.size(woven_bodice());
  ASSERT_TRUE(joint.ok()) << codes(joint);
  ASSERT_EQ(joint->sizing.cures.size(), 3U);
  EXPECT_TRUE(joint->sizing.met);
  EXPECT_NEAR(joint->sizing.cures[1].step.amount, 5.0, 0.5);
  EXPECT_NEAR(joint->sizing.cures[2].step.amount, 10.0, 0.5);
  EXPECT_GT(target(*joint, "front-neckline-length").after,
            value(woven_bodice(), "front-neckline-length"));
}

TEST(Joint, TwoWishesTheSameWayAreOneTheLarger) {
  ByHand hand;
  hand.add("a", "lengthen", {{"piece", "body"}}, 12.0);
  hand.add("b", "lengthen", {}, 20.0);
  const auto joint = hand.size(knit_top());
  ASSERT_TRUE(joint.ok()) << codes(joint);
  ASSERT_EQ(joint->sizing.targets.size(), 1U);
  EXPECT_EQ(joint->sizing.targets[0].asked_by, "told: a and told: b");
  ASSERT_EQ(joint->sizing.cures.size(), 1U);
  EXPECT_NEAR(joint->sizing.cures[0].step.amount, 20.0, 0.1);
  EXPECT_EQ(&sized_cure(*joint, joint->input.steps[0]), &sized_cure(*joint, joint->input.steps[1]));
}

TEST(Joint, WishesOppositeWaysAreToldByBoth) {
  ByHand hand;
  hand.add("short", "lengthen", {}, 20.0);
  hand.add("long", "lengthen", {}, -20.0);
  const auto joint = hand.size(knit_top());
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_FALSE(joint->sizing.met);
  ASSERT_FALSE(joint->sizing.conflicts.empty());
  std::string says;
  for (const auto& m : joint->sizing.conflicts[0].members) says += m.says + "\n";
  EXPECT_NE(says.find("told: short"), std::string::npos) << says;
  EXPECT_NE(says.find("told: long"), std::string::npos) << says;
}

TEST(Joint, WhatNoMeasureCountsIsKeptAndWhatIsSewnPassesThrough) {
  ByHand hand;
  hand.add("length", "lengthen", {}, 15.0);
  hand.add("pressing", "sew", {}, 0.0);
  hand.add("point", "move-bust-point", {}, -8.0);
  JointWish wish;
  wish.proposals = {"length", "pressing", "point"};
  const auto joint = hand.size(woven_bodice(), wish);
  ASSERT_TRUE(joint.ok()) << codes(joint);
  ASSERT_EQ(joint->steps.size(), 3U);
  EXPECT_EQ(joint->steps[0].operation, "move-bust-point") << "before what is sized";
  EXPECT_EQ(joint->steps[0].amount, -8.0);
  EXPECT_EQ(joint->steps[1].operation, "lengthen");
  EXPECT_EQ(joint->steps[2].operation, "sew");
  const auto done = alter(woven_bodice(), joint->steps);
  ASSERT_TRUE(done.ok());
  EXPECT_EQ(done->block, joint->sizing.block);
}

// One shoulder is altered alone, before what both sides share is sized; on the opened block the
// side has a measure of its own, and is sized like any other.
TEST(Joint, OneSideAlone) {
  ByHand hand;
  hand.add("length", "lengthen", {}, 15.0);
  hand.add("left-shoulder", "swing-shoulder", {}, 6.0, Side::left);
  const auto joint = hand.size(knit_top());
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_TRUE(joint->sizing.met);
  ASSERT_EQ(joint->steps.size(), 2U);
  EXPECT_EQ(joint->steps[0].side, Side::left);
  EXPECT_EQ(joint->steps[0].amount, 6.0);
  const Block& opened = joint->sizing.block;
  EXPECT_GT(value(opened, "shoulder-slope-left"), value(opened, "shoulder-slope-right") + 0.02);

  ByHand again;
  again.add("left-shoulder", "swing-shoulder", {}, 5.0, Side::left);
  again.add("right-shoulder", "swing-shoulder", {}, 3.0, Side::right);
  const auto sides = again.size(opened);
  ASSERT_TRUE(sides.ok()) << codes(sides);
  EXPECT_TRUE(sides->sizing.met);
  ASSERT_EQ(sides->sizing.targets.size(), 2U);
  EXPECT_EQ(sides->sizing.targets[0].measure, "shoulder-slope-left");
  EXPECT_EQ(sides->sizing.targets[1].measure, "shoulder-slope-right");
  EXPECT_NEAR(sides->sizing.cures[0].step.amount, 5.0, 0.2);
  EXPECT_NEAR(sides->sizing.cures[1].step.amount, 3.0, 0.2);
}

TEST(Joint, WithNothingToSizeButStepsThatAreKept) {
  ByHand hand;
  hand.add("point", "move-bust-point", {}, -8.0);
  const auto joint = hand.size(woven_bodice());
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_TRUE(joint->sizing.met);
  ASSERT_EQ(joint->steps.size(), 1U);
  EXPECT_FALSE(joint->sizing.block == woven_bodice());
}

TEST(Joint, WhatCannotBeDoneIsLeftOutWithTheReason) {
  ByHand hand;
  hand.add("length", "lengthen", {}, 15.0);
  hand.add("dart", "let-out-dart", {{"piece", "front"}}, 5.0);  // the knit has no dart
  hand.add("unknown-amount", "widen-upper-arm", {}, 10.0);
  hand.advice.proposals.back().steps[0].has_amount = false;
  hand.advice.proposals.back().steps[0].limit = "measure first the arm";
  const auto joint = hand.size(knit_top());
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_EQ(joint->steps.size(), 1U);
  ASSERT_EQ(joint->input.left_out.size(), 2U);
  EXPECT_EQ(joint->input.left_out[0].proposal, "unknown-amount");
  EXPECT_NE(joint->input.left_out[0].text.find("measure first"), std::string::npos);
  EXPECT_EQ(joint->input.left_out[1].proposal, "dart");
  EXPECT_NE(joint->input.left_out[1].text.find("no dart"), std::string::npos);
}

// Both findings are put down to the fuller bust; the neckline's own amount is asked of nothing, and
// that is said, with what to name if it is to be closed all the same.
TEST(Joint, OneCauseIsCuredOnce) {
  const auto joint =
      together(woven_bodice(), {said("front-neckline-gapes", "gapes 2 cm", whole(20.0)),
                                said("bust-drag-lines", "3 cm too tight", whole(30.0))});
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_EQ(joint->input.proposals, std::vector<std::string>{"spread-over-bust"});
  ASSERT_EQ(joint->input.left_out.size(), 1U);
  EXPECT_EQ(joint->input.left_out[0].sign, "front-neckline-gapes");
  EXPECT_NE(joint->input.left_out[0].text.find("close-neckline"), std::string::npos);
}

TEST(Joint, AFindingThatIsNoMatterOfThePatternIsSaidSo) {
  const auto joint = together(knit_top(), {said("neck-binding-waves", "the binding waves"),
                                           said("neck-edge-longer-than-pattern", "edge stretched"),
                                           said("top-too-long", "too long", whole(30.0))});
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_EQ(joint->input.proposals, std::vector<std::string>{"shorten-body"});
  ASSERT_EQ(joint->input.left_out.size(), 2U);
  EXPECT_EQ(joint->input.left_out[1].sign, "neck-edge-longer-than-pattern");
  EXPECT_NE(joint->input.left_out[1].text.find("no matter of the pattern"), std::string::npos)
      << joint->input.left_out[1].text;
  const auto none = together(knit_top(), {said("neck-edge-longer-than-pattern", "edge stretched")});
  ASSERT_FALSE(none.ok());
  EXPECT_EQ(none.problems()[0].code, "none-chosen");
  EXPECT_NE(none.problems()[0].what.find("edge stretched"), std::string::npos)
      << none.problems()[0].what;
}

TEST(Joint, BadChoices) {
  ByHand hand;
  hand.add("length", "lengthen", {}, 15.0);
  hand.add("pressing", "sew", {}, 0.0);
  hand.add("other-length", "lengthen", {}, 10.0);
  hand.advice.proposals[2].cause = hand.advice.proposals[0].cause;
  JointWish wish;
  wish.proposals = {"length", "lenght"};
  EXPECT_EQ(codes(hand.size(knit_top(), wish)), "proposal-unknown @ /together/proposals/1\n");
  wish.proposals = {"length", "length"};
  EXPECT_EQ(codes(hand.size(knit_top(), wish)), "proposal-twice @ /together/proposals/1\n");
  wish.proposals = {"length", "other-length"};
  EXPECT_EQ(codes(hand.size(knit_top(), wish)), "cause-twice @ /together/proposals/1\n");
  wish.proposals = {"pressing"};
  EXPECT_EQ(codes(hand.size(knit_top(), wish)), "nothing-to-size @ /together\n");
  hand.advice.findings.clear();
  EXPECT_EQ(codes(hand.size(knit_top())), "none-chosen @ /together\n");
}

TEST(Joint, BodyAndEaseBesides) {
  TryOn tryon = told({said("top-too-long", "3 cm too long", whole(30.0))});
  tryon.wearer = Wearer();
  tryon.wearer->id = "deckhand-4";
  tryon.wearer->body = {{"bust-girth", 944.0},
                        {"waist-girth", 760.0},
                        {"upper-arm-girth", 297.0},
                        {"head-girth", 560.0}};
  const Advice said_of_it = advice(knit_top(), tryon);
  const auto plain = size_together(shipped(), knit_top(), tryon, said_of_it, {});
  JointWish wish;
  wish.body = true;
  const auto joint = size_together(shipped(), knit_top(), tryon, said_of_it, wish);
  ASSERT_TRUE(plain.ok());
  ASSERT_TRUE(joint.ok()) << codes(joint);
  EXPECT_EQ(plain->sizing.targets.size(), 1U);
  EXPECT_TRUE(joint->sizing.met);
  const SizedMeasure& bust = target(*joint, "bust-girth");
  EXPECT_EQ(bust.asked_by, "body and ease");
  EXPECT_NEAR(bust.after, 944.0 + knit_top().ease.at("bust-girth"), kBodyTolerance);
  EXPECT_NEAR(target(*joint, "waist-girth").left_over, 0.0, kBodyTolerance);
  EXPECT_NEAR(target(*joint, "back-length").left_over, 0.0, kToldTolerance);
  EXPECT_TRUE(prove(joint->sizing.block, &knit_top()).pass);
}

}  // namespace
}  // namespace pinwright::knowledge
