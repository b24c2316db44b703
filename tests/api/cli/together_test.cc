// Several complaints sized together, on the command line.

#include <algorithm>

#include "tests/api/cli/program.h"
#include "tests/api/two_complaints.h"

namespace pinwright::api {
namespace {

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST(CliTogether, FromWordsToASavedRevision) {
  const Program pinwright;
  pinwright.save_top();
  const Ran advised = pinwright({"advise", "deck-top", kTwo, "--together"});
  ASSERT_EQ(advised.status, 0) << advised.err;
  EXPECT_TRUE(has(advised.out, "Sized together")) << advised.out;
  EXPECT_TRUE(has(advised.out, "asked by: front neckline gapes 1 cm")) << advised.out;
  EXPECT_TRUE(has(advised.out, "by step 1 (close-wedge)")) << advised.out;
  EXPECT_TRUE(has(advised.out, "swing-shoulder (armhole follows): ")) << advised.out;
  expect_80_columns(advised.out);

  const Ran preview = pinwright(
      {"alter", "deck-top", kTwo, "--together", "--drawing", pinwright.file("change.svg")});
  ASSERT_EQ(preview.status, 0) << preview.err;
  EXPECT_TRUE(has(preview.out, "nothing is saved")) << preview.out;
  EXPECT_TRUE(has(preview.out, "Sized together")) << preview.out;
  EXPECT_TRUE(has(preview.out, "Proof passed")) << preview.out;
  EXPECT_TRUE(has(slurp(pinwright.file("change.svg")), "<svg"));
  expect_80_columns(preview.out);

  const std::vector<std::string> apply = {"alter",         "deck-top", kTwo,      "--together",
                                          "--if-revision", "1",        "--apply", "--reason",
                                          "two things",    "--json"};
  const Ran applied = pinwright(apply);
  ASSERT_EQ(applied.status, 0) << applied.err << applied.out;
  EXPECT_EQ(applied.json()["revision"], 2);
  EXPECT_EQ(applied.json()["tryon"]["together"]["steps"].size(), 2U);
  EXPECT_EQ(pinwright(apply).status, 3) << "that revision is no longer the current one";
  EXPECT_EQ(pinwright({"check", "deck-top"}).status, 0);
  EXPECT_TRUE(has(pinwright({"history", "deck-top"}).out, "two things"));
}

TEST(CliTogether, OnlyTheProposalsThatAreNamed) {
  const Program pinwright;
  pinwright.save_top();
  const Ran ran =
      pinwright({"advise", "deck-top", kTwo, "--together", "--proposal", "lower-shoulder-point",
                 "--proposal", "close-neckline-to-hem", "--json"});
  ASSERT_EQ(ran.status, 0) << ran.out;
  EXPECT_EQ(ran.json()["together"]["proposals"],
            Json::array({"lower-shoulder-point", "close-neckline-to-hem"}));
}

TEST(CliTogether, AConflictIsToldAndNothingIsApplied) {
  const Program pinwright;
  pinwright.save_top();
  const std::string before = pinwright({"history", "deck-top", "--json"}).out;
  const Ran advised = pinwright({"advise", "deck-top", kTooMuch, "--together"});
  EXPECT_EQ(advised.status, 0) << advised.err;
  EXPECT_TRUE(has(advised.out, "CANNOT BE HAD TOGETHER")) << advised.out;
  EXPECT_TRUE(has(advised.out, "to give way here: ")) << advised.out;
  EXPECT_TRUE(has(advised.out, "MISSED")) << advised.out;
  expect_80_columns(advised.out);
  expect_refused(pinwright({"alter", "deck-top", kTooMuch, "--together"}), 2, "/together",
                 "leave one of the proposals out");
  const Ran applied =
      pinwright({"alter", "deck-top", kTooMuch, "--together", "--apply", "--reason", "all"});
  expect_refused(applied, 2, "/together", "nothing was changed");
  EXPECT_TRUE(has(applied.err, "head of 570 mm")) << applied.err;
  EXPECT_EQ(pinwright({"history", "deck-top", "--json"}).out, before);
}

TEST(CliTogether, BadLines) {
  const Program pinwright;
  pinwright.save_top();
  expect_refused(pinwright({"alter", "deck-top", kTwo, "--proposal", "a", "--proposal", "b"}), 2,
                 "--proposal", "--together");
  expect_refused(pinwright({"alter", "deck-top", kTwo, "--proposal", "a", "--body"}), 2, "--body",
                 "--together");
  expect_refused(pinwright({"advise", "deck-top", kTwo, "--proposal", "a"}), 2, "--proposal",
                 "--together");
  expect_refused(pinwright({"alter", "deck-top", "--together"}), 2, "/words", "");
  expect_refused(pinwright({"alter", "deck-top", kTwo, "--together", "--amount", "12 mm half"}), 2,
                 "/amounts", "");
  expect_refused(pinwright({"alter", "deck-top", kTwo, "--together", "--proposal", "wish"}), 2,
                 "/together/proposals/0", "lower-shoulder-point");
}

}  // namespace
}  // namespace pinwright::api
