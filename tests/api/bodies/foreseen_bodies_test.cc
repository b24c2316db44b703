// What is foreseen over real bodies, where their table is at hand (real_bodies_test.cc): on a block
// drafted for another of them every lack is body + ease - garment, that is the one body less the
// other; on a block drafted for herself nothing is foreseen.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "api/bodies/mapping.h"
#include "engine/draft/draft.h"
#include "knowledge/foresee.h"
#include "knowledge/load.h"

namespace pinwright::api {
namespace {

namespace fs = std::filesystem;

std::vector<Wearer> measured_bodies() {
  const char* named = std::getenv("PINWRIGHT_BODIES");
  const fs::path folder =
      named != nullptr ? fs::path(named) : fs::path(PINWRIGHT_SOURCE_DIR) / "../shared/bodies";
  std::error_code none;
  for (const auto& entry : fs::directory_iterator(folder, none)) {
    if (entry.path().extension() != ".csv") continue;
    std::ifstream in(entry.path(), std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    if (auto bodies = read_bodies(text, entry.path().filename().string()))
      return std::move(bodies).value();
  }
  return {};
}

const knowledge::Knowledge& known() {
  static const auto* const kKnown = new knowledge::Knowledge(
      knowledge::load({std::string(PINWRIGHT_SOURCE_DIR) + "/knowledge/data"}).value());
  return *kKnown;
}

Result<Block> block_for(const Wearer& wearer, const std::string& kind) {
  DraftInput input;
  input.id = "block";
  input.wearer = wearer;
  input.fabric = kind == "knit-top" ? Fabric{"jersey", "Jersey", FabricKind::knit, 0.45, 0.15, 0.9}
                                    : Fabric{"poplin", "Poplin", FabricKind::woven, 0.0, 0.0, 1.0};
  return draft(kind, input);
}

class ForeseenBodies : public ::testing::TestWithParam<const char*> {};

TEST_P(ForeseenBodies, LacksAreOneBodyLessTheOther) {
  const auto bodies = measured_bodies();
  if (bodies.empty()) GTEST_SKIP() << "no table of measured bodies here: set PINWRIGHT_BODIES";
  const Wearer& drafted_for = bodies[bodies.size() / 2];
  const auto block = block_for(drafted_for, GetParam());
  ASSERT_TRUE(block.ok());
  std::size_t compared = 0;
  std::size_t arms = 0;
  for (std::size_t i = 0; i < bodies.size(); i += 25) {
    TryOn worn;
    worn.wearer = bodies[i];
    const auto f = knowledge::foresee(known(), *block, worn);
    ASSERT_TRUE(f.ok()) << bodies[i].id;
    for (const auto& m : f->measures) {
      const std::string body = m.measure == "hem-girth"         ? "hip-girth"
                               : m.measure == "neckline-length" ? "neck-base-girth"
                               : m.measure == "back-length"     ? "back-waist-length"
                                                                : m.measure;
      const auto hers = bodies[i].body.find(body);
      const auto theirs = drafted_for.body.find(body);
      if (hers == bodies[i].body.end() || theirs == drafted_for.body.end()) continue;
      EXPECT_NEAR(m.lacks_mm(), hers->second - theirs->second, 0.6) << bodies[i].id << " " << body;
      ++compared;
    }
    const double arm =
        bodies[i].body.at("upper-arm-girth") - drafted_for.body.at("upper-arm-girth");
    const knowledge::Foreseen* sleeve = nullptr;
    for (const auto& one : f->findings)
      if (one.sign == "arm-fuller-than-sleeve-allows" && one.measured) sleeve = &one;
    if (arm > 3.0) {
      ASSERT_NE(sleeve, nullptr) << bodies[i].id << " by " << arm;
      EXPECT_NEAR(sleeve->amount->mm, arm, 0.6);
      ++arms;
    } else if (arm < 1.0) {
      EXPECT_EQ(sleeve, nullptr) << bodies[i].id << " by " << arm;
    }
  }
  EXPECT_GT(compared, 100u);
  EXPECT_GT(arms, 5u);
}

TEST_P(ForeseenBodies, NothingOnHerOwnBlock) {
  const auto bodies = measured_bodies();
  if (bodies.empty()) GTEST_SKIP() << "no table of measured bodies here: set PINWRIGHT_BODIES";
  for (std::size_t i = 0; i < bodies.size(); i += 50) {
    const auto block = block_for(bodies[i], GetParam());
    ASSERT_TRUE(block.ok()) << bodies[i].id;
    TryOn worn;
    worn.wearer = bodies[i];
    const auto f = knowledge::foresee(known(), *block, worn);
    ASSERT_TRUE(f.ok()) << bodies[i].id;
    for (const auto& one : f->findings)
      ADD_FAILURE() << bodies[i].id << ": " << one.sign << " " << one.why;
    EXPECT_TRUE(f->causes.empty()) << bodies[i].id;
  }
}

INSTANTIATE_TEST_SUITE_P(Kinds, ForeseenBodies, ::testing::Values("knit-top", "woven-bodice"),
                         [](const auto& kind) {
                           return kind.index == 0 ? std::string("KnitTop")
                                                  : std::string("WovenBodice");
                         });

}  // namespace
}  // namespace pinwright::api
