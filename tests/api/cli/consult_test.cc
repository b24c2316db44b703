// A session of questions with the answers piped in.

#include <set>

#include "tests/api/cli/program.h"

namespace pinwright::api {
namespace {

constexpr const char* kGaping = "The front neckline gapes, I pinned out 2 cm in all.";

Json consulted(const Program& pinwright, const std::string& answers,
               std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), "consult");
  arguments.push_back("--json");
  const Ran run = pinwright.piped(answers, arguments);
  EXPECT_EQ(run.status, 0) << run.err;
  return run.json();
}

TEST(Consult, AsksAnswersAndEndsWithAdvice) {
  const Program pinwright;
  pinwright.save_top();
  const Ran run = pinwright.piped("no\nno\nno\nno\nno\nno\n", {"consult", "deck-top", kGaping});
  ASSERT_EQ(run.status, 0) << run.err;
  EXPECT_NE(run.out.find("? "), std::string::npos) << run.out;
  EXPECT_NE(run.out.find("Verdict: "), std::string::npos) << run.out;
  EXPECT_NE(run.out.find("Together: "), std::string::npos) << run.out;
  EXPECT_NE(run.out.find("Questions: "), std::string::npos) << run.out;
  expect_80_columns(run.out);
}

TEST(Consult, WhatNobodyCanTellIsNotAskedAgain) {
  const Program pinwright;
  pinwright.save_top();
  const Json advice = consulted(pinwright, "?\ndon't know\nI can't tell.\nskip\nunsure\nno\nno\n",
                                {"deck-top", kGaping});
  ASSERT_LE(advice["session"].size(), 5U);
  ASSERT_GE(advice["session"].size(), 3U);
  std::set<std::string> signs;
  for (const Json& one : advice["session"]) signs.insert(one["sign"].get<std::string>());
  EXPECT_EQ(signs.size(), advice["session"].size());
  EXPECT_EQ(advice["asked"].size(), advice["session"].size());
  EXPECT_TRUE(advice["question"].is_null());
  EXPECT_TRUE(advice["stopped"].is_string());
  EXPECT_FALSE(advice["settled"].get<bool>());
}

TEST(Consult, AnswersBecomeFindings) {
  const Program pinwright;
  pinwright.save_top();
  const Json yes = consulted(pinwright, "Yes.\n", {"deck-top", kGaping});
  ASSERT_GE(yes["session"].size(), 1U);
  const std::string sign = yes["session"][0]["sign"];
  const auto state_of = [&](const Json& advice) -> std::string {
    for (const Json& finding : advice["findings"])
      if (finding["sign"] == sign) return finding["state"];
    return "none";
  };
  EXPECT_EQ(state_of(yes), "present");
  EXPECT_EQ(state_of(consulted(pinwright, "n\n", {"deck-top", kGaping})), "absent");
  EXPECT_EQ(state_of(consulted(pinwright, "dunno\n", {"deck-top", kGaping})), "not-looked-at");
  EXPECT_EQ(state_of(consulted(pinwright, "stop\n", {"deck-top", kGaping})), "none");
  EXPECT_EQ(state_of(consulted(pinwright, "", {"deck-top", kGaping})), "none");
}

TEST(Consult, FreeWordsAddFindings) {
  const Program pinwright;
  pinwright.save_top();
  const Json advice =
      consulted(pinwright, "the top is 3 cm too long\nstop\n", {"deck-top", kGaping});
  ASSERT_EQ(advice["session"].size(), 1U);
  EXPECT_EQ(advice["findings"].size(), 2U) << advice["findings"].dump();
  EXPECT_EQ(advice["asked"].size(), 1U);
}

TEST(Consult, AnAnswerThatCannotBeTakenIsSaidAndAskedAgain) {
  const Program pinwright;
  pinwright.save_top();
  const Ran run = pinwright.piped("the top is 900 cm too long\nno\nstop\n",
                                  {"consult", "deck-top", kGaping, "--json"});
  ASSERT_EQ(run.status, 0) << run.err;
  EXPECT_NE(run.err.find("mend: "), std::string::npos) << run.err;
  ASSERT_EQ(run.json()["session"].size(), 1U);
  EXPECT_EQ(run.json()["session"][0]["answer"], "no");
}

TEST(Consult, ReadsTheTryOnFromTheFirstLineAndRefusesSilence) {
  const Program pinwright;
  pinwright.save_top();
  const Json advice = consulted(pinwright, std::string("\n") + kGaping + "\nstop\n", {"deck-top"});
  EXPECT_EQ(advice["findings"].size(), 1U);
  const Ran silent = pinwright.piped("", {"consult", "deck-top", "--json"});
  EXPECT_EQ(silent.status, 2) << silent.out;
}

TEST(Consult, AStyleToldWinsOverTheBlock) {
  const Program pinwright;
  pinwright.save_top();
  const Ran run = pinwright(
      {"advise", "deck-top", "The top is 3 cm too long.", "--style", "sleeveless", "--json"});
  ASSERT_EQ(run.status, 0) << run.err;
  EXPECT_EQ(run.json()["style"], Json({"sleeveless"}));
  const Ran wrong =
      pinwright({"advise", "deck-top", "The top is 3 cm too long.", "--style", "sleevless"});
  expect_refused(wrong, 2, "/style/0", "sleeveless");
}

}  // namespace
}  // namespace pinwright::api
