#include "api/bodies/trial.h"

#include <gtest/gtest.h>

#include <cmath>

#include "api/bodies/report_json.h"
#include "tests/api/bodies/invented.h"

namespace pinwright::api {
namespace {

const Fabric kJersey{"jersey", "Jersey", FabricKind::knit, 0.45, 0.15, 0.9};

std::vector<Wearer> crew(std::size_t most = 14) {
  std::vector<Wearer> bodies = *read_bodies(testing::invented_table(), "crew.csv");
  if (bodies.size() > most) bodies.resize(most);
  return bodies;
}

TEST(Sizes, AreMediansOfTheirBodies) {
  const DraftedSizes made = draft_sizes(crew(), "knit-top", kJersey);
  ASSERT_EQ(made.sizes.size(), 1u);
  EXPECT_TRUE(made.refused.empty());
  EXPECT_EQ(made.sizes[0].bodies, 14u);
  EXPECT_DOUBLE_EQ(made.sizes[0].block.drafted_for.body.at("bust-girth"), 919.0);
}

TEST(Sizes, NoBodiesNoSizes) {
  EXPECT_TRUE(draft_sizes({}, "knit-top", kJersey).sizes.empty());
  EXPECT_TRUE(run_trial({}, "knit-top", kJersey).bodies.empty());
}

TEST(Trial, CuresAndProvesTheCrew) {
  const TrialReport report = run_trial(crew(6), "knit-top", kJersey);
  ASSERT_EQ(report.bodies.size(), 6u);
  EXPECT_LT(report.before, 3u);
  EXPECT_GT(report.after, report.before);
  EXPECT_EQ(report.unproved, 0u);
  for (const BodyOutcome& body : report.bodies) {
    EXPECT_GE(body.misfits.size(), 7u);
    for (const Misfit& misfit : body.misfits) {
      EXPECT_EQ(misfit.why.empty(), std::abs(misfit.after_mm) <= kFitsMm) << misfit.measure;
    }
  }
}

TEST(Trial, ThreadsDoNotChangeTheAnswer) {
  Json one = to_json(run_trial(crew(4), "knit-top", kJersey, 1), true);
  Json three = to_json(run_trial(crew(4), "knit-top", kJersey, 3), true);
  one.erase("seconds");
  three.erase("seconds");
  EXPECT_EQ(one, three);
}

}  // namespace
}  // namespace pinwright::api
