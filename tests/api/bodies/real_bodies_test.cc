// Over real bodies, where they are at hand: the tables in the directory named by PINWRIGHT_BODIES,
// else in ../shared/bodies beside the sources. Nothing of them is copied here.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "api/bodies/mapping.h"
#include "api/bodies/trial.h"
#include "engine/proof/proof.h"

namespace pinwright::api {
namespace {

namespace fs = std::filesystem;

/// The tables whose head has the survey's columns.
std::vector<std::vector<Wearer>> tables() {
  const char* named = std::getenv("PINWRIGHT_BODIES");
  const fs::path folder =
      named != nullptr ? fs::path(named) : fs::path(PINWRIGHT_SOURCE_DIR) / "../shared/bodies";
  std::error_code none;
  std::vector<fs::path> paths;
  for (const auto& entry : fs::directory_iterator(folder, none)) {
    if (entry.path().extension() == ".csv") paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  std::vector<std::vector<Wearer>> found;
  for (const fs::path& path : paths) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    auto bodies = read_bodies(text.str(), path.filename().string());
    const bool other_table = !bodies && bodies.problems()[0].code == "csv-column-missing";
    if (other_table) continue;
    EXPECT_TRUE(bodies.ok()) << path << " " << (bodies ? "" : bodies.problems()[0].what);
    if (bodies) found.push_back(std::move(bodies).value());
  }
  return found;
}

/// Empty when the wearer's block can be drafted and is sound and proved.
std::string wrong_with(const Wearer& wearer, std::string_view kind, const Fabric& fabric) {
  DraftInput input;
  input.id = "block";
  input.wearer = wearer;
  input.fabric = fabric;
  const Result<Block> block = draft(kind, input);
  if (!block) return block.problems()[0].what;
  if (const Problems unsound = check_block(*block); !unsound.empty()) return unsound[0].what;
  const Proof proof = prove(*block);
  return proof.pass ? "" : proof.failures[0].what;
}

class RealBodies : public ::testing::TestWithParam<const char*> {
 protected:
  static Fabric fabric() {
    return std::string(GetParam()) == "knit-top"
               ? Fabric{"jersey", "Jersey", FabricKind::knit, 0.45, 0.15, 0.9}
               : Fabric{"poplin", "Poplin", FabricKind::woven, 0.0, 0.0, 1.0};
  }
};

TEST_P(RealBodies, EveryOneCanBeDrafted) {
  const auto all = tables();
  if (all.empty()) GTEST_SKIP() << "no table of measured bodies here: set PINWRIGHT_BODIES";
  for (const std::vector<Wearer>& bodies : all) {
    std::size_t bad = 0;
    for (const Wearer& wearer : bodies) {
      const std::string wrong = wrong_with(wearer, GetParam(), fabric());
      if (!wrong.empty() && ++bad < 10) ADD_FAILURE() << wearer.id << ": " << wrong;
    }
    EXPECT_EQ(bad, 0u) << "of " << bodies.size();
  }
}

TEST_P(RealBodies, CuredOnesFitAndAreProved) {
  const auto all = tables();
  if (all.empty()) GTEST_SKIP() << "no table of measured bodies here: set PINWRIGHT_BODIES";
  for (const std::vector<Wearer>& bodies : all) {
    // The sizes of all, as the command makes them; a part of the bodies, to be quick.
    std::vector<Wearer> some;
    for (std::size_t i = 0; i < bodies.size(); i += 60) some.push_back(bodies[i]);
    const TrialReport report =
        run_trial(some, draft_sizes(bodies, GetParam(), fabric()), GetParam(), fabric());
    EXPECT_EQ(report.unproved, 0u);
    EXPECT_TRUE(report.sizes.refused.empty());
    EXPECT_GT(report.after, report.before);
    EXPECT_GT(4 * report.after, 3 * some.size());
  }
}

INSTANTIATE_TEST_SUITE_P(Kinds, RealBodies, ::testing::Values("knit-top", "woven-bodice"),
                         [](const auto& kind) {
                           return kind.index == 0 ? std::string("KnitTop")
                                                  : std::string("WovenBodice");
                         });

}  // namespace
}  // namespace pinwright::api
