// What is refused, where it points, and that nothing is half applied.
#include <gtest/gtest.h>

#include "skerry_blocks.h"

namespace pinwright {
namespace {

Problem refused(const Block& block, const std::vector<Step>& steps) {
  const Block before = block;
  const Result<Altered> result = alter(block, steps);
  EXPECT_FALSE(result.ok());
  EXPECT_TRUE(block == before);
  return result.ok() ? Problem{} : result.problems().front();
}

TEST(Refusals, NoSteps) { EXPECT_EQ(refused(knit_top(), {}).code, "steps-missing"); }

TEST(Refusals, TheLaterStepIsNamed) {
  const Problem p = refused(knit_top(), {step("lower-neckline", 5), step("full-bust", -30)});
  EXPECT_EQ(p.code, "amount-too-large");
  EXPECT_EQ(p.place.rfind("/steps/1", 0), 0u);
}

TEST(Refusals, ABlockWithoutADartThere) {
  const Problem p =
      refused(knit_top(),
              {step("close-wedge", 6,
                    {{"piece", "back"}, {"edge", "armhole"}, {"hinge", "shoulder-blade-point"}})});
  EXPECT_EQ(p.code, "operation-not-here");
}

TEST(Refusals, ABlockWithoutBinding) {
  EXPECT_EQ(refused(woven_bodice(), {step("set-binding-ratio", 0.9)}).code, "operation-not-here");
}

TEST(Refusals, MoreLengthThanCanBeEasedIn) {
  const Problem p = refused(knit_top(), {step("lengthen-over-bust", 24)});
  EXPECT_EQ(p.code, "amount-too-large");
  EXPECT_NE(p.what.find("ease"), std::string::npos);
}

TEST(Refusals, MoreThanTheDartHas) {
  EXPECT_EQ(refused(woven_bodice(), {step("full-bust", -30)}).code, "amount-too-large");
}

TEST(Refusals, OneSideOfTheCentre) {
  Step s = step("lower-neckline", 8);
  s.side = Side::left;
  const Problem p = refused(knit_top(), {s});
  EXPECT_EQ(p.code, "one-sided");
  EXPECT_EQ(p.place, "/steps/0/side");
}

}  // namespace
}  // namespace pinwright
