// Numbers printed in published guides, and arithmetic that follows from their rules.
#include <gtest/gtest.h>

#include "skerry_blocks.h"

namespace pinwright {
namespace {

constexpr double kInch = 25.4;

TEST(PublishedAmounts, NeckExcessOfOneInchIsHalfAnInchOnTheHalfPattern) {
  // "Threads", neckline excess (video text, 22 March 2019): overlap on the half pattern is half of
  // the total excess.
  const Block after = altered(
      knit_top(),
      {step("close-wedge", kInch, {{"edge", "neckline"}, {"hinge", "armhole"}}, Of::whole)});
  EXPECT_NEAR(garment(knit_top(), "neckline-length") - garment(after, "neckline-length"), kInch,
              1e-6);
}

TEST(PublishedAmounts, TwoInchesOverTwoSideSeamsAreHalfAnInchOnEachEdge) {
  // Central Washington University, costume textbook, ch. 17: an addition at the edges is divided
  // by the number of seams; each seam has two edges.
  const Block after = altered(knit_top(), {step("let-out-side", 2 * kInch, {}, Of::whole)});
  const auto underarm = [](const Block& b, const char* p) {
    return find_edge(*find_piece(b, p), "armhole")->curve.start().x;
  };
  for (const char* p : {"front", "back"})
    EXPECT_NEAR(underarm(after, p) - underarm(knit_top(), p), kInch / 2, 1e-9);
}

TEST(PublishedAmounts, SleeveCanBeGivenTwoInchesOverTheArm) {
  // "Threads", set-in sleeve solutions (27 September 2021): upper arm plus at least 2 in.
  const double arm = 12 * kInch;
  const double lacking = arm + 2 * kInch - garment(woven_bodice(), "upper-arm-girth");
  const Block after = altered(woven_bodice(), {step("widen-upper-arm", lacking, {}, Of::whole)});
  EXPECT_NEAR(garment(after, "upper-arm-girth"), 14 * kInch, 1e-6);
}

TEST(PublishedAmounts, JerseyStripIsNineTenthsOfTheOpening) {
  // Common practice: a knit opening is bound with 0.9 x its length on the stitching line.
  EXPECT_NEAR(garment(knit_top(), "neck-binding-length") / garment(knit_top(), "neckline-length"),
              0.9, 1e-9);
}

TEST(PublishedAmounts, RibStripOfTwoThirdsToThreeQuarters) {
  // sewing.org, ribbing: 2/3 to 3/4 of the neck seam; a neck of 16 in takes 10 2/3 to 12 in.
  Block top = knit_top();
  find_piece(top, "neck-binding")->cloth = "rib";
  const double opening = garment(top, "neckline-length");
  for (const double ratio : {2.0 / 3.0, 0.75}) {
    const Block after = altered(top, {step("set-binding-ratio", ratio)});
    const double per_16_inches = garment(after, "neck-binding-length") / opening * 16.0;
    EXPECT_GE(per_16_inches, 10.66);
    EXPECT_LE(per_16_inches, 12.0 + 1e-9);
  }
}

TEST(PublishedAmounts, CapEase) {
  // Common practice: a knit cap matches its armhole with practically no ease, a woven one is eased
  // in (3/4 to 1 1/4 in for a light blouse).
  EXPECT_LE(garment(knit_top(), "cap-length") - garment(knit_top(), "armhole-length"), 0.5 * kInch);
  const double woven =
      garment(woven_bodice(), "cap-length") - garment(woven_bodice(), "armhole-length");
  EXPECT_GE(woven, 0.75 * kInch - 1.0);
  EXPECT_LE(woven, 1.25 * kInch + 1.0);
}

}  // namespace
}  // namespace pinwright
