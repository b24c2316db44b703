#include "api/exchange/step_json.h"

#include <gtest/gtest.h>

namespace pinwright::api {
namespace {

Step read(const char* text, Problems& problems) {
  return read_step(Json::parse(text), "/steps/0", problems);
}

std::string only_problem(const char* text) {
  Problems problems;
  read(text, problems);
  return problems.size() == 1 ? problems[0].code + " " + problems[0].place
                              : std::to_string(problems.size()) + " problems";
}

const char* const kWedge =
    R"({"operation": "close-wedge", "piece": "front", "edge": "neckline", "hinge": "bust-point",)";

TEST(StepJson, OptionsStandBesideTheOperation) {
  Problems problems;
  const Step step =
      read((std::string(kWedge) + R"("amount_mm": 9, "of": "half"})").c_str(), problems);
  ASSERT_TRUE(problems.empty()) << problems[0].code << problems[0].what;
  EXPECT_EQ(step, (Step{"close-wedge",
                        {{"edge", "neckline"}, {"hinge", "bust-point"}, {"piece", "front"}},
                        9.0,
                        Of::half,
                        Side::both}));
}

TEST(StepJson, AmountsMayCarryTheirUnit) {
  Problems problems;
  const Step step =
      read((std::string(kWedge) + R"("amount": "3/8 in", "of": "whole"})").c_str(), problems);
  ASSERT_TRUE(problems.empty());
  EXPECT_DOUBLE_EQ(step.amount, 9.525);
  EXPECT_EQ(step.of, Of::whole);
}

TEST(StepJson, SaysWhatIsMissingOrDoubled) {
  const auto with = [](const char* tail) { return std::string(kWedge) + tail; };
  EXPECT_EQ(only_problem(with(R"("amount_mm": 9})").c_str()), "of-missing /steps/0/of");
  EXPECT_EQ(only_problem(with(R"("amount": 9, "of": "half"})").c_str()),
            "amount-without-unit /steps/0/amount");
  EXPECT_EQ(only_problem(with(R"("amount": "9", "of": "half"})").c_str()),
            "amount-without-unit /steps/0/amount");
  EXPECT_EQ(only_problem(with(R"("amount": "9 mm", "amount_mm": 9, "of": "half"})").c_str()),
            "amount-twice /steps/0/amount");
  EXPECT_EQ(only_problem(with(R"("amount_mm": "9", "of": "half"})").c_str()),
            "type-wrong /steps/0/amount_mm");
  EXPECT_EQ(only_problem(with(R"("amount_mm": 9, "of": "quarter"})").c_str()),
            "value-unknown /steps/0/of");
  EXPECT_EQ(only_problem(with(R"("amount_mm": 9, "of": "half", "side": "top"})").c_str()),
            "value-unknown /steps/0/side");
  EXPECT_EQ(only_problem(R"({"amount_mm": 9})"), "field-missing /steps/0/operation");
  EXPECT_EQ(only_problem("[]"), "type-wrong /steps/0");
}

TEST(StepJson, TheCatalogueIsAskedAtOnce) {
  Problems problems;
  read(R"({"operation": "close-wegde", "amount_mm": 9, "of": "half"})", problems);
  ASSERT_FALSE(problems.empty());
  EXPECT_EQ(problems[0].code, "operation-unknown");
}

TEST(StepJson, RatiosArePlainNumbers) {
  Problems problems;
  const Step step = read(R"({"operation": "set-binding-ratio", "amount": 0.9})", problems);
  ASSERT_TRUE(problems.empty()) << problems[0].code << " " << problems[0].place;
  EXPECT_EQ(step.amount, 0.9);
  const Json written = to_json(step);
  EXPECT_EQ(written["amount"], 0.9);
  EXPECT_FALSE(written.contains("amount_mm"));
  EXPECT_FALSE(written.contains("of"));
}

TEST(StepJson, ReadsBackWhatItWrites) {
  const std::vector<Step> steps = {
      {"close-wedge",
       {{"edge", "armhole"}, {"hinge", "bust-point"}, {"piece", "front"}},
       8.25,
       Of::half,
       Side::left},
      {"lower-neckline", {{"piece", "front"}}, -6.0, Of::whole, Side::both},
      {"let-out-side", {{"level", "bust"}}, 12.0, Of::whole, Side::both},
      {"set-binding-ratio", {}, 0.85, Of::whole, Side::both},
      {"sew", {}, 0.0, Of::whole, Side::both},
  };
  Problems problems;
  EXPECT_EQ(read_steps(to_json(steps), "/steps", problems), steps);
  EXPECT_TRUE(problems.empty()) << problems[0].code << " " << problems[0].place;
}

TEST(StepJson, ADistanceIsNeverHalved) {
  const Step step{"lower-neckline", {{"piece", "front"}}, 6.0, Of::half, Side::both};
  EXPECT_EQ(to_json(step)["of"], "whole");
}

TEST(StepJson, ListsAreBounded) {
  Problems problems;
  read_steps(Json(std::vector<int>(65, 1)), "/steps", problems);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].code, "list-size");
}

}  // namespace
}  // namespace pinwright::api
