#include "engine/alteration/largest.h"

#include <gtest/gtest.h>

#include "skerry_blocks.h"

namespace pinwright {
namespace {

TEST(Largest, IsDoneAndALittleMoreIsNot) {
  const std::vector<std::pair<const Block*, Step>> refused = {
      {&knit_top(),
       step("close-wedge", 40.0, {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "armhole"}})},
      {&woven_bodice(), step("full-bust", -30.0)},
      {&knit_top(), step("lower-neckline", -60.0, {{"piece", "front"}})},
      {&woven_bodice(), step("widen-upper-arm", -90.0, {}, Of::whole)},
      {&knit_top(), step("set-binding-ratio", 0.6)},
  };
  for (const auto& [block, asked] : refused) {
    ASSERT_FALSE(alter(*block, {asked}).ok()) << asked.operation;
    const std::optional<double> most = largest_amount(*block, asked);
    ASSERT_TRUE(most.has_value()) << asked.operation;
    Step done = asked;
    done.amount = *most;
    EXPECT_TRUE(alter(*block, {done}).ok()) << asked.operation << " " << *most;
    Step beyond = asked;
    const double rest = asked.operation == "set-binding-ratio" ? 1.0 : 0.0;
    beyond.amount = *most + 0.06 * (asked.amount - rest);
    EXPECT_FALSE(alter(*block, {beyond}).ok()) << asked.operation << " " << beyond.amount;
  }
}

TEST(Largest, NothingToSayOfWhatIsDoneOrHasNoPlace) {
  EXPECT_FALSE(largest_amount(knit_top(), step("let-out-side", 10.0)).has_value());
  EXPECT_FALSE(largest_amount(knit_top(), step("ease-elbow", 10.0)).has_value());
  EXPECT_FALSE(largest_amount(knit_top(), step("no-such-thing", 10.0)).has_value());
}

TEST(Largest, IsToldInTheMendOfTheStepThatIsRefused) {
  const std::vector<Step> steps = {
      step("let-out-side", 10.0),
      step("close-wedge", 70.0, {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "armhole"}},
           Of::whole)};
  const Result<Altered> refused = alter(knit_top(), steps);
  ASSERT_FALSE(refused.ok());
  const Problems told = with_largest(knit_top(), steps, refused.problems());
  EXPECT_EQ(told.front().place, "/steps/1");
  EXPECT_NE(told.front().mend.find("mm on the whole is about as far as it goes"), std::string::npos)
      << told.front().mend;
}

}  // namespace
}  // namespace pinwright
