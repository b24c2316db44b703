// Plausible amounts, up to the largest of the catalogue, are done on both blocks in nearly all
// cases.
#include <gtest/gtest.h>

#include <cstdio>
#include <random>

#include "skerry_blocks.h"

namespace pinwright {
namespace {

enum class On { both, knit, woven };

struct Case {
  std::string operation;
  std::map<std::string, std::string> options;
  On on = On::both;
  int signs = 0;      ///< +1, -1: that way only; 0: both ways
  double most = 0.0;  ///< what this block has to give, when that is less than the catalogue's most
};

// Share of the amounts from least to most that end proved.
double share_done(Block start, const Case& c, double sign) {
  // For a thin arm, so that a narrower sleeve still passes it.
  start.drafted_for.body["upper-arm-girth"] = 240.0;
  start.drafted_for.body["hand-girth"] = 140.0;
  const OperationInfo& info = *find_operation(c.operation);
  const double most = c.most > 0.0 ? c.most : info.most;
  std::mt19937 rng(7);
  int done = 0;
  constexpr int kTries = 12;
  for (int i = 0; i < kTries; ++i) {
    const double share = (i + static_cast<double>(rng() % 100) / 99.0) / kTries;
    const double amount = sign * (info.least + (most - info.least) * share);
    const Result<Altered> result = alter(start, {step(c.operation, amount, c.options)});
    if (!result) {
      std::printf("%s %s %.1f: %s\n", start.kind.c_str(), c.operation.c_str(), amount,
                  result.problems().front().what.c_str());
      continue;
    }
    const Proof proof = prove(result->block, &start);
    EXPECT_TRUE(proof.pass) << c.operation << " " << amount << ": " << proof.failures.front().place
                            << " " << proof.failures.front().what;
    done += proof.pass ? 1 : 0;
  }
  return static_cast<double>(done) / kTries;
}

TEST(Share, PlausibleAmountsAreDone) {
  const std::vector<Case> cases = {
      {"raise-cap", {}},
      {"raise-cap", {{"gives", "ease"}}, On::both, +1, 8.0},
      {"raise-cap", {{"gives", "ease"}}, On::woven, -1},
      {"ease-cap", {}, On::both, +1},
      {"ease-cap", {}, On::woven, -1},
      {"turn-sleeve", {}},
      {"turn-sleeve", {{"underarm", "stays"}}},
      {"widen-sleeve-hem", {}, On::woven},
      {"widen-sleeve-hem", {}, On::knit, 0, 30.0},
      {"widen-upper-arm", {}},
      {"ease-elbow", {}, On::woven, +1},
      {"flare-hem", {}, On::knit},
      {"scoop-edge", {{"edge", "armhole"}}},
      {"scoop-edge", {{"edge", "neckline"}}},
      {"scoop-edge", {{"edge", "armhole"}, {"piece", "back"}}},
      {"let-out-dart", {}, On::woven},
      {"full-bust", {}, On::woven, +1},
      {"full-bust", {}, On::woven, -1, 9.5},
      {"full-bust", {}, On::knit, +1, 22.0},
      {"full-bust", {{"takes-up", "new-dart"}}, On::both, +1},
      {"move-bust-point", {}},
      {"move-bust-point", {{"direction", "sideways"}}},
      {"rotate-dart", {{"from", "side"}, {"to", "shoulder"}}, On::woven, +1},
      {"rotate-dart", {{"from", "side"}, {"to", "waist"}}, On::woven, +1},
      {"rotate-dart", {{"from", "waist"}, {"to", "side"}}, On::woven, +1},
      {"rotate-dart", {{"from", "waist"}, {"to", "shoulder"}}, On::woven, +1},
      {"rotate-dart", {{"piece", "back"}, {"from", "shoulder"}, {"to", "side"}}, On::woven, +1},
      {"divide-dart", {}, On::woven, +1},
      {"divide-dart", {{"seam", "waist"}}, On::woven, +1},
      {"divide-dart", {{"seam", "shoulder"}, {"piece", "back"}}, On::woven, +1},
      {"ease-dart", {}, On::woven, +1},
      {"ease-dart", {{"seam", "shoulder"}, {"piece", "back"}}, On::woven, +1, 6.0},
      {"ease-dart", {}, On::knit, -1, 8.0},
      {"lengthen-dart", {}, On::woven, -1},
      {"lengthen-dart", {}, On::woven, +1, 20.0},
      {"lengthen-dart", {{"seam", "waist"}}, On::woven, -1},
      {"let-out-dart", {{"piece", "back"}}, On::woven},
  };
  for (const Case& c : cases) {
    for (const Block* block : {&knit_top(), &woven_bodice()}) {
      if (c.on != On::both && (c.on == On::knit) != (block == &knit_top())) continue;
      for (const int sign : {+1, -1}) {
        if (c.signs != 0 && c.signs != sign) continue;
        std::string options;
        for (const auto& [key, value] : c.options) options += " " + key + "=" + value;
        EXPECT_GE(share_done(*block, c, sign), 0.95)
            << block->kind << " " << c.operation << options << (sign > 0 ? " +" : " -");
      }
    }
  }
}

}  // namespace
}  // namespace pinwright
