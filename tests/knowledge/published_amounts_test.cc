// Amounts that publications or common practice give, from what is told at the try-on to the step
// that is ready for the pattern. The source stands beside each; "derived" marks arithmetic only.
#include <gtest/gtest.h>

#include "engine/alteration/catalogue.h"
#include "engine/pattern/measures.h"
#include "knowledge/expression.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;  // NOLINT: short try-ons read better

constexpr double kInch = kMmPerInch;

const ProposedStep& step(const Advice& a, const std::string& remedy, std::size_t i = 0) {
  static const ProposedStep kNone{};
  const Proposal* p = proposal(a, remedy);
  EXPECT_NE(p, nullptr) << remedy;
  if (p == nullptr || p->steps.size() <= i) return kNone;
  EXPECT_TRUE(check_step(p->steps[i].step, "").empty()) << remedy;
  return p->steps[i];
}

Block drafted(std::string_view kind) {
  const auto b = draft(kind, skerry_input(kind));
  EXPECT_TRUE(b.ok());
  return b.ok() ? *b : bare(std::string(kind));
}

// Threads, removing excess at the neckline (2019): the overlap on the half pattern is half of the
// whole excess. 1 in in all, 1/2 in on each half.
TEST(PublishedAmounts, NeckExcessIsHalvedOnTheHalfPattern) {
  const Advice a = advice("woven-bodice", {seen("front-neckline-gapes", whole(kInch)),
                                           seen("neck-fold-ends-above-bust")});
  EXPECT_EQ(first_cause(a), "hollow-chest");
  const auto& s = step(a, "close-neckline-into-bust-dart");
  EXPECT_EQ(s.step.operation, "close-wedge");
  EXPECT_EQ(s.step.options.at("hinge"), "bust-point");
  EXPECT_NEAR(s.step.amount, 0.5 * kInch, 1e-9);
  EXPECT_EQ(s.step.of, Of::half);
  EXPECT_FALSE(s.assumed);
  EXPECT_NE(s.text.find("12.7 mm (1/2 in)"), std::string::npos) << s.text;
}

TEST(PublishedAmounts, OnAKnitTheHingeIsTheHem) {
  const Advice a = advice(
      "knit-top", {seen("front-neckline-gapes", whole(kInch)), seen("neck-fold-ends-above-bust")});
  const auto& s = step(a, "close-neckline-to-hem");
  EXPECT_EQ(s.step.options.at("hinge"), "hem");
  EXPECT_NEAR(s.step.amount, 0.5 * kInch, 1e-9);
}

TEST(PublishedAmounts, ToldOnEachHalfIsNotHalvedAgain) {
  const Advice a = advice("knit-top", {seen("front-neckline-gapes", half(kInch / 2.0)),
                                       seen("neck-fold-ends-above-bust")});
  EXPECT_NEAR(step(a, "close-neckline-to-hem").step.amount, 0.5 * kInch, 1e-9);
}

// Derived: a fold pinned at the centre, 1/4 in deep, takes up 1/2 in in all.
TEST(PublishedAmounts, APinnedFoldCountsTwice) {
  const Advice a = advice("knit-top", {seen("front-neckline-gapes", fold(kInch / 2.0)),
                                       seen("neck-fold-ends-above-bust")});
  EXPECT_NEAR(step(a, "close-neckline-to-hem").step.amount, 0.5 * kInch, 1e-9);
}

// Derived, with common practice: girth lacking in front is shared by the two half fronts; the back
// is unchanged. 2 in whole, 1 in on the half front.
TEST(PublishedAmounts, BustLackIsSharedByTheHalfFronts) {
  const Advice a = advice("woven-bodice", {seen("bust-drag-lines", whole(2.0 * kInch)),
                                           seen("back-loose-front-tight")});
  EXPECT_EQ(first_cause(a), "full-bust");
  const auto& s = step(a, "spread-over-bust");
  EXPECT_EQ(s.step.operation, "full-bust");
  EXPECT_NEAR(s.step.amount, kInch, 1e-9);
  EXPECT_EQ(s.step.of, Of::half);
}

// CWU17: additions at the edges are divided by the number of seams. 2 in over two side seams: 1 in
// on the half garment, 1/2 in on each of its two edges (let-out-side shares it).
TEST(PublishedAmounts, EdgeAdditionsAreSharedByTheSeams) {
  const Advice a = advice("woven-bodice", {seen("tight-all-round", whole(2.0 * kInch))});
  EXPECT_EQ(first_cause(a), "size-too-small");
  const auto& s = step(a, "let-out-all-side-seams");
  EXPECT_EQ(s.step.operation, "let-out-side");
  EXPECT_EQ(s.step.of, Of::half);
  EXPECT_NEAR(s.step.amount, kInch, 1e-9);
  EXPECT_TRUE(s.limit.empty());
  const Advice more = advice("woven-bodice", {seen("tight-all-round", whole(2.5 * kInch))});
  EXPECT_NEAR(step(more, "let-out-all-side-seams").step.amount, kInch, 1e-9)
      << "no more than a side seam may take (2 in in all, common practice)";
  EXPECT_FALSE(step(more, "let-out-all-side-seams").limit.empty());
}

// Derived: 3/8 in pinned deep at each side seam is 1 1/2 in whole, 3/4 in on the half.
TEST(PublishedAmounts, SideSeamsPinnedOnEachSide) {
  const Advice a = advice("woven-bodice", {seen("loose-all-round", fold(0.375 * kInch, Of::half)),
                                           seen("shoulder-seam-past-shoulder-point")});
  EXPECT_NEAR(step(a, "take-in-all-side-seams").step.amount, -0.75 * kInch, 1e-9);
}

// CWU17: to shorten, the fold is half as deep as the change. 1 in shorter, fold 1/2 in.
TEST(PublishedAmounts, ShorteningFoldIsHalfOfTheChange) {
  const Advice a =
      advice("woven-bodice", {seen("top-too-long", whole(kInch)), seen("waist-sits-low")});
  const auto& s = step(a, "shorten-body");
  EXPECT_NEAR(s.step.amount, -kInch, 1e-9);
  EXPECT_NE(s.text.find("12.7 mm (1/2 in) deep"), std::string::npos) << s.text;
  const Advice pinned =
      advice("woven-bodice", {seen("top-too-long", fold(kInch / 2.0)), seen("waist-sits-low")});
  EXPECT_NEAR(step(pinned, "shorten-body").step.amount, -kInch, 1e-9);
}

// Common practice: a fold pinned over the shoulder seam is shared between front and back.
TEST(PublishedAmounts, SlopeIsSharedByFrontAndBack) {
  const Advice a = advice(
      "knit-top", {seen("slack-folds-neck-to-armhole", fold(8.0)), seen("folds-go-with-a-pad")});
  const auto& s = step(a, "lower-shoulder-point");
  EXPECT_NEAR(s.step.amount, 8.0, 1e-9);
  EXPECT_EQ(s.step.options.at("armhole"), "follows");  // COWAN
  const Advice square = advice("knit-top", {seen("tight-folds-from-shoulder-point"),
                                            seen("folds-go-when-shoulder-released", whole(14.0))});
  EXPECT_NEAR(step(square, "raise-shoulder-point").step.amount, -7.0, 1e-9);
}

// Common practice: the strip of a knit is 0.9 times its opening.
TEST(PublishedAmounts, KnitBindingIsNineTenths) {
  const Advice a = advice(
      "knit-top", {seen("front-neckline-gapes"), seen("neck-binding-nearly-as-long-as-opening")});
  EXPECT_NEAR(step(a, "shorten-binding-self-fabric").step.amount, 0.9, 1e-12);
}

// Home-sewing trade body, note on ribbing: two thirds to three quarters of the neck seam. For 16 in
// between 10.667 and 12 in.
TEST(PublishedAmounts, RibIsTwoThirdsToThreeQuarters) {
  const Advice a = advice(
      "knit-top", {seen("front-neckline-gapes"), seen("neck-binding-nearly-as-long-as-opening")});
  const double rib = 16.0 * step(a, "shorten-binding-rib").step.amount;
  EXPECT_GE(rib, 16.0 * 2.0 / 3.0);
  EXPECT_LE(rib, 12.0);
  const Advice tight =
      advice("knit-top", {seen("neckline-too-tight"), seen("neck-binding-puckers")});
  EXPECT_NEAR(16.0 * step(tight, "lengthen-binding-rib").step.amount, 12.0, 1e-9);
}

// Threads 215: a narrow knit trim is the neck's length less 1 1/2 in: 20 in gives 18 1/2, 24 in
// gives 22 1/2.
TEST(PublishedAmounts, NarrowTrimIsAnInchAndAHalfShorter) {
  const Cause* cause = find_cause(shipped(), "neck-binding-too-long");
  ASSERT_NE(cause, nullptr);
  std::string amount;
  for (const auto& r : cause->remedies)
    if (r.id == "shorten-binding-narrow-trim") amount = r.steps[0].amount;
  const auto e = parse_expression(amount, {}, "");
  ASSERT_TRUE(e.ok());
  for (const auto& [neck, trim] : {std::pair{20.0, 18.5}, {24.0, 22.5}}) {
    Values v;
    v.garment["neckline-length"] = neck * kInch;
    EXPECT_NEAR(neck * evaluate(*e, v).value.value_or(0.0), trim, 1e-9);
  }
}

// Threads, set-in sleeve solutions (2021): at least 2 in of ease at the upper arm of a woven. An
// arm of 12 in wants 14 in.
TEST(PublishedAmounts, UpperArmGetsTwoInches) {
  const Block block = drafted("woven-bodice");
  TryOn t = told({seen("upper-arm-too-tight"), seen("arm-fuller-than-sleeve-allows")});
  t.wearer = Wearer{"purser-1", {{"upper-arm-girth", 12.5 * kInch}}, {}};
  const Advice a = advice(block, t);
  const auto all = measures(block);
  const double sleeve = find_measure(all, "upper-arm-girth")->value;
  const auto& s = step(a, "widen-sleeve-at-upper-arm");
  EXPECT_NEAR(sleeve + s.step.amount, 14.5 * kInch, 1e-6);
  EXPECT_FALSE(s.assumed);
  EXPECT_EQ(s.step.of, Of::whole);
}

TEST(PublishedAmounts, UpperArmToldIsOfOneSleeve) {
  const Advice a = advice("woven-bodice", {seen("upper-arm-too-tight", whole(20.0), Side::left),
                                           seen("arm-fuller-than-sleeve-allows")});
  const auto& s = step(a, "widen-sleeve-at-upper-arm");
  EXPECT_NEAR(s.step.amount, 20.0, 1e-9);
}

// Derived (ceiling of reduction, 1 - 1 / (1 + s)): a cloth of 50 % stretch, of which half is used,
// is drafted no smaller than body / 1.25.
TEST(PublishedAmounts, LettingOutForTheStretchOfTheCloth) {
  Block block = drafted("knit-top");
  TryOn t = told({seen("bust-drag-lines"), seen("cloth-stretches-less-than-planned")});
  t.fabric = block.fabric;
  t.fabric->stretch_across = 0.04;
  const auto all = measures(block);
  const double garment = find_measure(all, "bust-girth")->value;
  t.wearer = Wearer{"deckhand-3", {{"bust-girth", garment * 1.02 + 20.0 * 1.02}}, {}};
  const Advice a = advice(block, t);
  const auto& s = step(a, "let-out-for-stretch");
  EXPECT_NEAR(s.step.amount, 10.0, 1e-6);  // 20 mm whole
  EXPECT_FALSE(s.assumed);
}

// Hertzer, pages 88 to 90 (men's coats): for a stoop the back is lengthened by 1/2 in, the armhole
// goes forward by 1/4 in at the most.
TEST(PublishedAmounts, AStoopTakesHalfAnInchInTheBack) {
  const Advice a =
      advice("woven-bodice", {seen("stoops-forward"), seen("neck-gapes-when-back-fits")});
  const Proposal* p = proposal(a, "lengthen-back-for-stoop");
  ASSERT_NE(p, nullptr);
  ASSERT_EQ(p->steps.size(), 2u);
  EXPECT_EQ(p->steps[0].step.operation, "lengthen-upper-back");
  EXPECT_NEAR(p->steps[0].step.amount, 0.5 * kInch, 1e-9);
  EXPECT_EQ(p->steps[1].step.operation, "move-armhole-forward");
  EXPECT_LE(p->steps[1].step.amount, 0.25 * kInch + 1e-9);
}

// Texas A&M Extension, E-372: with a full bust 2 in or more over the high bust the smaller size is
// taken.
TEST(PublishedAmounts, TwoInchesOverTheHighBustIsTheSmallerSize) {
  const Sign* sign = find_sign(shipped(), "full-bust-well-over-high-bust");
  ASSERT_NE(sign, nullptr);
  EXPECT_NE(sign->ask.find("2 in"), std::string::npos) << sign->ask;
  const Advice a = advice(
      "woven-bodice", {seen("loose-above-tight-at-bust"), seen("full-bust-well-over-high-bust")});
  EXPECT_EQ(testing::first_cause(a), "size-chosen-by-full-bust");
  const Proposal* p = proposal(a, "choose-by-high-bust");
  ASSERT_NE(p, nullptr);
  EXPECT_FALSE(p->on_pattern);
}

// ASDP: underarm trimmed to 1/4 in; here rounded to 6 mm, as the trade does.
TEST(PublishedAmounts, UnderarmIsTrimmedToAQuarterInch) {
  const Advice a =
      advice("woven-bodice", {seen("armhole-too-tight"), seen("underarm-allowance-bulky")});
  const auto& s = step(a, "trim-underarm");
  EXPECT_EQ(s.step.operation, "sew");
  EXPECT_NE(s.text.find("1/4 in"), std::string::npos) << s.text;
  EXPECT_FALSE(proposal(a, "trim-underarm")->on_pattern);
}

}  // namespace
}  // namespace pinwright::knowledge
