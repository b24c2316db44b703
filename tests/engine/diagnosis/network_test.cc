#include "engine/diagnosis/network.h"

#include <gtest/gtest.h>

#include <limits>

#include "tests/engine/diagnosis/networks.h"

namespace pinwright {
namespace {

TEST(Network, ASoundOneHasNoProblems) { EXPECT_TRUE(check(test::rivals()).empty()); }

TEST(Network, EveryUnsoundPartIsNamedInOnePass) {
  Network network = test::rivals();
  network.causes[1].id = "hollow-chest";
  network.causes[0].prior = 0.0;
  network.signs[2].leak = 1.0;
  network.links[0].strength = std::numeric_limits<double>::quiet_NaN();
  network.links.push_back({1, 2, 0.4});
  network.links.push_back({7, 0, 0.4});
  const Problems problems = check(network);
  ASSERT_EQ(problems.size(), 6u);
  EXPECT_EQ(problems[0].code, "id-twice");
  EXPECT_EQ(problems[0].place, "cause hollow-chest");
  EXPECT_EQ(problems[1].code, "probability-range");
  EXPECT_EQ(problems[2].place, "sign edge-ripples");
  EXPECT_EQ(problems[3].place, "link 0");
  EXPECT_EQ(problems[4].code, "link-twice");
  EXPECT_EQ(problems[5].code, "link-index");
}

TEST(Network, CertainStrengthIsAllowedAndZeroIsNot) {
  Network network = test::rivals();
  network.links[0].strength = 1.0;
  EXPECT_TRUE(check(network).empty());
  network.links[0].strength = 0.0;
  EXPECT_EQ(check(network).size(), 1u);
}

TEST(Network, KindsHaveWords) {
  EXPECT_EQ(to_text(CauseKind::body), "body");
  EXPECT_EQ(to_text(CauseKind::block), "block");
  EXPECT_EQ(to_text(CauseKind::sewing), "sewing");
  EXPECT_EQ(to_text(CauseKind::fabric), "fabric");
}

}  // namespace
}  // namespace pinwright
