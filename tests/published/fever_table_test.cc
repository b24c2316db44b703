// The fever table of S. Russell and P. Norvig, Artificial Intelligence: A Modern Approach, section
// "Efficient representation of conditional distributions" (14.3 in the third edition): a noisy-OR
// of cold, flu and malaria with inhibitions 0.6, 0.2 and 0.1 and no leak.

#include <gtest/gtest.h>

#include <array>

#include "engine/diagnosis/inference.h"

namespace pinwright {
namespace {

struct Row {
  bool cold = false;
  bool flu = false;
  bool malaria = false;
  double fever = 0.0;  ///< as printed
};

constexpr std::array<Row, 8> kPrinted = {{{false, false, false, 0.0},
                                          {false, false, true, 0.9},
                                          {false, true, false, 0.8},
                                          {false, true, true, 0.98},
                                          {true, false, false, 0.4},
                                          {true, false, true, 0.94},
                                          {true, true, false, 0.88},
                                          {true, true, true, 0.988}}};

constexpr std::array<double, 3> kInhibition = {0.6, 0.2, 0.1};

/// Fever below its three diseases; each disease also has a test without error.
Network fever() {
  Network network;
  network.causes = {{"cold", 0.3}, {"flu", 0.2}, {"malaria", 0.05}};
  network.signs = {{"fever", 0.0}};
  for (std::size_t c = 0; c < 3; ++c) {
    network.links.push_back({c, 0, 1.0 - kInhibition[c]});
    network.signs.push_back({"test for " + network.causes[c].id, 0.0});
    network.links.push_back({c, c + 1, 1.0});
  }
  return network;
}

Evidence tested(const Row& row, Seen fever) {
  const auto seen = [](bool held) { return held ? Seen::present : Seen::absent; };
  return {fever, seen(row.cold), seen(row.flu), seen(row.malaria)};
}

TEST(FeverTable, PredictedOnceTheDiseasesAreKnown) {
  for (const Row& row : kPrinted) {
    const auto found = predict_signs(fever(), tested(row, Seen::unknown));
    ASSERT_TRUE(found.ok());
    EXPECT_NEAR(found->front(), row.fever, 1e-15) << row.cold << row.flu << row.malaria;
  }
}

TEST(FeverTable, AsTheRatioOfTwoEvidences) {
  for (const Row& row : kPrinted) {
    const auto without = posterior(fever(), tested(row, Seen::unknown));
    const auto with = posterior(fever(), tested(row, Seen::present));
    ASSERT_TRUE(without.ok());
    if (row.fever == 0.0) {
      ASSERT_FALSE(with.ok());
      EXPECT_EQ(with.problems().front().code, "evidence-impossible");
      continue;
    }
    ASSERT_TRUE(with.ok());
    EXPECT_NEAR(with->evidence / without->evidence, row.fever, 1e-14);
  }
}

TEST(FeverTable, WithPriorsNextToCertainty) {
  for (const Row& row : kPrinted) {
    Network network = fever();
    network.causes[0].prior = row.cold ? 1.0 - 1e-12 : 1e-12;
    network.causes[1].prior = row.flu ? 1.0 - 1e-12 : 1e-12;
    network.causes[2].prior = row.malaria ? 1.0 - 1e-12 : 1e-12;
    const auto found = predict_signs(network, Evidence(4, Seen::unknown));
    ASSERT_TRUE(found.ok());
    EXPECT_NEAR(found->front(), row.fever, 1e-11);
  }
}

}  // namespace
}  // namespace pinwright
