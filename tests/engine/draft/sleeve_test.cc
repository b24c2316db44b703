#include "engine/draft/sleeve.h"

#include <gtest/gtest.h>

#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {
namespace {

SleeveAsk usual() {
  SleeveAsk ask;
  ask.front_armhole_mm = 228.0;
  ask.back_armhole_mm = 233.0;
  ask.front_ease_mm = 11.0;
  ask.back_ease_mm = 14.0;
  ask.girth_mm = 337.0;
  ask.hem_girth_mm = 225.0;
  ask.length_mm = 590.0;
  ask.least_below_mm = 200.0;
  ask.front_notch_mm = 90.0;
  ask.back_notch_mm = 88.0;
  return ask;
}

double cap_height(const Piece& sleeve) { return find_landmark(sleeve, "crown-point")->at.y; }

TEST(Sleeve, EachHalfOfTheCapIsItsArmholePlusItsEase) {
  const Result<Piece> made = sleeve(usual());
  ASSERT_TRUE(made.ok());
  EXPECT_NEAR(length(find_edge(*made, "cap-front")->curve), 239.0, 1e-8);
  EXPECT_NEAR(length(find_edge(*made, "cap-back")->curve), 247.0, 1e-8);
  const Vec2 front = find_landmark(*made, "underarm-point-front")->at;
  const Vec2 back = find_landmark(*made, "underarm-point-back")->at;
  EXPECT_NEAR(front.x - back.x, 337.0, 1e-9);
  EXPECT_GT(front.x, 0.0);
}

TEST(Sleeve, ALargerArmMakesAFlatterCap) {
  SleeveAsk large = usual();
  large.girth_mm += 40.0;
  EXPECT_LT(cap_height(*sleeve(large)), cap_height(*sleeve(usual())) - 5.0);
}

TEST(Sleeve, FrontIsMoreHollowThanBack) {
  SleeveAsk even = usual();
  even.back_armhole_mm = even.front_armhole_mm;
  even.back_ease_mm = even.front_ease_mm;
  const Piece made = *sleeve(even);
  const Curve& front = find_edge(made, "cap-front")->curve;
  const Curve& back = find_edge(made, "cap-back")->curve;
  // A quarter of the way up from the underarm the front has come further in.
  const double share = 0.25 * length(front);
  const Vec2 at_front = point_at(front, share);
  const Vec2 at_back = point_at(back, length(back) - share);
  EXPECT_LT(at_front.y, at_back.y);
}

TEST(Sleeve, AnArmThatNoCapFitsIsRefused) {
  SleeveAsk large = usual();
  large.girth_mm = 480.0;
  const Result<Piece> made = sleeve(large);
  ASSERT_FALSE(made.ok());
  EXPECT_EQ(made.problems()[0].code, "draft-impossible");
  EXPECT_EQ(made.problems()[0].place, "/wearer/body/upper-arm-girth");
}

TEST(Sleeve, KeepsTheLeastLengthBelowTheUnderarm) {
  SleeveAsk brief = usual();
  brief.length_mm = 170.0;
  brief.least_below_mm = 60.0;
  brief.hem_girth_mm = 320.0;
  const Piece made = *sleeve(brief);
  EXPECT_NEAR(find_edge(made, "underarm-front")->curve.start().y, -60.0, 1e-9);
}

}  // namespace
}  // namespace pinwright::drafting
