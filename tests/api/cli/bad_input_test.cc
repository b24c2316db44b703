// Bad input: exit status, place and mend, and the store as it was.

#include "tests/api/cli/program.h"

namespace pinwright::api {
namespace {

class BadInput : public testing::Test {
 protected:
  void SetUp() override {
    pinwright_.save_top();
    before_ = state();
  }
  void TearDown() override { EXPECT_EQ(state(), before_) << "the store was changed"; }
  std::string state() {
    return pinwright_({"blocks", "--json"}).out + pinwright_({"history", "deck-top", "--json"}).out;
  }
  /// A good block's file with one text replaced.
  std::string damaged(const std::string& from, const std::string& to) {
    const std::string good = pinwright_.file("good.json");
    EXPECT_EQ(pinwright_(Program::draft({"--id", "good-top", "-o", good})).status, 0);
    std::string text = slurp(good);
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    if (at != std::string::npos) text.replace(at, from.size(), to);
    return pinwright_.write("damaged.json", text);
  }
  Program pinwright_;
  std::string before_;
};

TEST_F(BadInput, ATableOfBodiesWithoutItsColumns) {
  const std::string path = pinwright_.write("crew.csv", "bust,waist\n920,740\n");
  expect_refused(pinwright_({"bodies", path}), 2, path + ":1", "");
  expect_refused(pinwright_({"bodies", path, "--fabric", "sailcloth"}), 2, "--fabric", "");
  expect_refused(pinwright_({"bodies", path + ".missing"}), 2, path, "");
}

TEST_F(BadInput, AFileOf100Megabytes) {
  const std::string path = pinwright_.file("large.json");
  std::ofstream(path).close();
  std::filesystem::resize_file(path, 100U << 20U);
  expect_refused(pinwright_({"save", path}), 2, path, "");
  expect_refused(pinwright_({"check", path}), 2, path, "");
  expect_refused(pinwright_({"advise", "deck-top", "--findings", path}), 2, path, "");
}

TEST_F(BadInput, NotANumber) {
  const std::string path = damaged("\"recovery\": ", "\"recovery\": NaN, \"x\": ");
  expect_refused(pinwright_({"save", path}), 2, "line ", "");
  EXPECT_EQ(pinwright_({"save", path, "--json"}).json()["problems"][0]["code"],
            "json-not-a-number");
}

TEST_F(BadInput, MalformedJson) {
  const std::string path = pinwright_.write("broken.json", "{\"format\": \"pinwright-block\",");
  expect_refused(pinwright_({"check", path}), 2, "broken.json: line 1", "");
  expect_refused(pinwright_({"alter", "deck-top", "--steps", path}), 2, "line 1", "");
  expect_refused(pinwright_({"check", pinwright_.file("absent.json")}), 2, "absent.json", "");
  expect_refused(pinwright_({"check", "/"}), 2, "/", "");
}

TEST_F(BadInput, UnsoundBlocks) {
  expect_refused(pinwright_({"save", damaged("\"unit\": \"mm\"", "\"unit\": \"cm\"")}), 2, "/unit",
                 "");
  const Ran both =
      pinwright_({"check", damaged("\"kind\": \"knit-top\"", "\"kind\": \"kilt\", \"colour\": 3")});
  expect_refused(both, 2, "/kind", "");
  EXPECT_NE(both.err.find("/colour"), std::string::npos) << "all faults are told: " << both.err;
}

TEST_F(BadInput, UnknownSigns) {
  expect_refused(pinwright_({"advise", "deck-top", "--answer", "front-neckline-gaps=present"}), 2,
                 "/answers/front-neckline-gaps", "front-neckline-gapes");
  expect_refused(pinwright_({"advise", "deck-top", "--answer", "front-neckline-gapes"}), 2,
                 "--answer front-neckline-gapes", "SIGN=present");
}

TEST_F(BadInput, AbsurdAmounts) {
  expect_refused(pinwright_({"advise", "deck-top", "the front neckline gapes by 400 mm in all"}), 2,
                 "400 mm", "");
  expect_refused(pinwright_({"alter", "deck-top", "--step",
                             "close-wedge piece=front edge=neckline hinge=bust-point "
                             "amount=400mm of=half"}),
                 2, "/steps/0/", "");
}

TEST_F(BadInput, AmountsWithoutUnitOrWithoutWhatTheyCount) {
  expect_refused(pinwright_({"advise", "deck-top", "the front neckline gapes by 2"}), 2, "2", "");
  expect_refused(pinwright_({"alter", "deck-top", "--step", "lengthen piece=body amount=20"}), 2,
                 "/steps/0/amount", "");
  expect_refused(pinwright_({"alter", "deck-top", "--step", "full-bust amount=12mm"}), 2,
                 "/steps/0/of", "half");
  expect_refused(pinwright_({"draft", "knit-top", "--measure", "bust-girth=92"}), 2,
                 "/measurements/bust-girth", "");
}

TEST_F(BadInput, AStaleRevision) {
  ASSERT_EQ(pinwright_({"alter", "deck-top", "--step", "lengthen piece=body amount=20mm", "--apply",
                        "--reason", "too short"})
                .status,
            0);
  before_ = state();
  const std::vector<std::string> stale = {
      "alter",   "deck-top", "--step",    "lengthen piece=body amount=5mm",
      "--apply", "--reason", "too short", "--if-revision",
      "1"};
  expect_refused(pinwright_(stale), 3, "block deck-top", "revision 2");
  std::vector<std::string> json = stale;
  json.emplace_back("--json");
  const Ran told = pinwright_(json);
  EXPECT_EQ(told.status, 3);
  EXPECT_EQ(told.json()["status"], 412);
  EXPECT_EQ(told.json()["current"]["revision"], 2);
}

TEST_F(BadInput, WhatIsNotThere) {
  expect_refused(pinwright_({"check", "oilskin"}), 2, "block oilskin", "");
  expect_refused(pinwright_({"history", "oilskin"}), 2, "block oilskin", "");
  expect_refused(pinwright_({"check", "deck-top", "--revision", "7"}), 2, "revision 7", "");
  expect_refused(pinwright_({"restore", "deck-top", "7", "--reason", "x"}), 2, "revision 7", "");
  expect_refused(
      pinwright_({"alter", "deck-top", "the front neckline gapes", "--proposal", "wish"}), 2,
      "/proposal", "Take one of");
}

TEST_F(BadInput, CommandLinesThatCannotBeRead) {
  for (const std::vector<std::string>& line :
       std::vector<std::vector<std::string>>{{},
                                             {"alterr"},
                                             {"alter"},
                                             {"check", "deck-top", "--revision", "two"},
                                             {"check", "deck-top", "--revision", "0"},
                                             {"check", "deck-top", "--wish"},
                                             {"restore", "deck-top", "1"},
                                             {"draw", "deck-top", "--to", "1", "-o", "x.svg"}}) {
    expect_refused(pinwright_(line), 2, "command line", "--help");
  }
  EXPECT_EQ(pinwright_({"alterr", "--json"}).json()["problems"][0]["code"], "command-line");
}

TEST_F(BadInput, ApplyNeedsAReasonAndAPlace) {
  expect_refused(
      pinwright_({"alter", "deck-top", "--step", "lengthen piece=body amount=20mm", "--apply"}), 2,
      "--reason", "--reason");
  const std::string path = pinwright_.file("top.json");
  ASSERT_EQ(pinwright_(Program::draft({"--id", "file-top", "-o", path})).status, 0);
  expect_refused(pinwright_({"alter", path, "--step", "lengthen piece=body amount=20mm", "--apply",
                             "--reason", "x"}),
                 2, path, "-o FILE");
  expect_refused(pinwright_({"alter", "deck-top"}), 2, "/steps", "");
}

TEST_F(BadInput, FilesThatCannotBeWritten) {
  const std::string path = pinwright_.file("no/such/folder/x.svg");
  expect_refused(pinwright_({"draw", "deck-top", "-o", path}), 2, path, "folder");
}

TEST_F(BadInput, AStoreThatIsNone) {
  const std::string path = pinwright_.write("not.db", std::string(5000, 'x'));
  expect_refused(pinwright_({"blocks", "--store", path}), 3, "store " + path, "--store");
  EXPECT_EQ(slurp(path), std::string(5000, 'x')) << "it was not touched";
}

TEST_F(BadInput, ASavedBlockIsNotSavedAgain) {
  const std::string path = pinwright_.file("top.json");
  ASSERT_EQ(pinwright_(Program::draft({"--id", "deck-top", "-o", path})).status, 0);
  expect_refused(pinwright_({"save", path}), 3, "block deck-top", "another id");
}

TEST_F(BadInput, AProofThatFailsIsStatus1) {
  const std::string good = pinwright_.file("good.json");
  ASSERT_EQ(pinwright_(Program::draft({"--id", "odd-top", "-o", good})).status, 0);
  Json block = Json::parse(slurp(good));
  Json& ease = block["seams"][0]["sections"][0]["ease_mm"];
  ease = ease.get<double>() + 5.0;
  const std::string path = pinwright_.write("odd.json", block.dump());
  const Ran checked = pinwright_({"check", path});
  EXPECT_EQ(checked.status, 1) << checked.err;
  EXPECT_NE(checked.out.find("FAIL"), std::string::npos) << checked.out;
  const Ran saved = pinwright_({"save", path});
  EXPECT_EQ(saved.status, 1);
  EXPECT_NE(saved.err.find("nothing was saved"), std::string::npos) << saved.err;
}

}  // namespace
}  // namespace pinwright::api
