// The commands of the main job, from a draft to a restored revision.

#include <algorithm>

#include "tests/api/cli/program.h"

namespace pinwright::api {
namespace {

constexpr const char* kGapes = "The front neckline gapes, I pinned out 2 cm in all.";
constexpr const char* kLonger = "lengthen piece=body amount=2 cm";

TEST(Cli, TheMainJob) {
  const Program pinwright;
  pinwright.save_top();
  const Ran advised = pinwright({"advise", "deck-top", kGapes, "--json"});
  ASSERT_EQ(advised.status, 0) << advised.err << advised.out;
  const Json advice = advised.json();
  ASSERT_TRUE(advice.is_object()) << advised.out;
  std::string proposal;
  for (const Json& each : advice["proposals"]) {
    if (proposal.empty() && each["on_pattern"].get<bool>()) proposal = each["id"];
  }
  ASSERT_FALSE(proposal.empty()) << advised.out;

  const Ran preview = pinwright({"alter", "deck-top", kGapes, "--proposal", proposal, "--drawing",
                                 pinwright.file("change.svg")});
  EXPECT_EQ(preview.status, 0) << preview.err;
  EXPECT_NE(preview.out.find("nothing is saved"), std::string::npos) << preview.out;
  EXPECT_NE(preview.out.find("Proof passed"), std::string::npos);
  EXPECT_NE(slurp(pinwright.file("change.svg")).find("<svg"), std::string::npos);
  expect_80_columns(preview.out);

  const Ran applied =
      pinwright({"alter", "deck-top", kGapes, "--proposal", proposal, "--apply", "--reason",
                 "gapes on deckhand 3", "--author", "fitter 1", "--if-revision", "1"});
  EXPECT_EQ(applied.status, 0) << applied.err;
  EXPECT_NE(applied.out.find("revision 2"), std::string::npos) << applied.out;
  const Ran history = pinwright({"history", "deck-top"});
  EXPECT_NE(history.out.find("gapes on deckhand 3"), std::string::npos) << history.out;
  const Ran checked = pinwright({"check", "deck-top", "--json"});
  EXPECT_EQ(checked.status, 0);
  EXPECT_EQ(checked.json()["revision"], 2);
  EXPECT_TRUE(checked.json()["proof"]["pass"].get<bool>());
  const Ran drawn =
      pinwright({"draw", "deck-top", "--from", "1", "--to", "2", "-o", pinwright.file("both.svg")});
  EXPECT_EQ(drawn.status, 0) << drawn.err;
  EXPECT_NE(slurp(pinwright.file("both.svg")).find("class=\"before\""), std::string::npos);
  const Ran restored = pinwright({"restore", "deck-top", "1", "--reason", "wrong wearer"});
  EXPECT_EQ(restored.status, 0) << restored.err;
  EXPECT_EQ(pinwright({"history", "deck-top", "--json"}).json()["revisions"].size(), 3U);
}

TEST(Cli, OneShoulderThenTheOther) {
  const Program pinwright;
  pinwright.save_top();
  const char* words = "diagonal folds from the left neck point to the armhole, about 1 cm";
  const Ran one = pinwright({"alter", "deck-top", words, "--proposal", "lower-shoulder-point",
                             "--amount", "10 mm", "--apply", "--reason", "left shoulder low",
                             "--drawing", pinwright.file("one.svg")});
  ASSERT_EQ(one.status, 0) << one.err;
  EXPECT_NE(one.out.find("left side: "), std::string::npos) << one.out;
  EXPECT_NE(slurp(pinwright.file("one.svg")).find("data-centre-line=\"centre-front\""),
            std::string::npos);
  // The opened block is a block like any other: drawn, checked, fitted again.
  const Ran drawn = pinwright({"draw", "deck-top", "-o", pinwright.file("two.svg")});
  EXPECT_EQ(drawn.status, 0) << drawn.err;
  const std::string picture = slurp(pinwright.file("two.svg"));
  EXPECT_NE(picture.find("data-edge=\"armhole-left\""), std::string::npos);
  EXPECT_NE(picture.find("right side of the cloth up"), std::string::npos);
  EXPECT_NE(picture.find("s right<"), std::string::npos);
  EXPECT_EQ(picture.find("place on fold"), std::string::npos);
  EXPECT_EQ(pinwright({"check", "deck-top"}).status, 0);
  EXPECT_EQ(pinwright({"advise", "deck-top", kGapes}).status, 0);
  const Ran both = pinwright({"alter", "deck-top", "--step", kLonger});
  EXPECT_EQ(both.status, 0) << both.err;
  // The other shoulder by as much: halves on the fold again.
  const Ran other =
      pinwright({"alter", "deck-top", "--step", "swing-shoulder amount=10mm side=right", "--apply",
                 "--reason", "and the right one", "-o", pinwright.file("closed.json")});
  ASSERT_EQ(other.status, 0) << other.err;
  const Json closed = Json::parse(slurp(pinwright.file("closed.json")));
  EXPECT_EQ(closed["version"], 1);
  EXPECT_EQ(closed["pieces"][0]["fold"], "centre-front");
}

TEST(Cli, HumanTextFitsATerminal) {
  const Program pinwright;
  pinwright.save_top();
  const Ran advised = pinwright({"advise", "deck-top", kGapes});
  EXPECT_EQ(advised.status, 0) << advised.err;
  EXPECT_NE(advised.out.find("Causes"), std::string::npos);
  EXPECT_NE(advised.out.find("20.0 mm whole"), std::string::npos) << advised.out;
  expect_80_columns(advised.out);
  expect_80_columns(pinwright({"check", "deck-top"}).out);
  expect_80_columns(pinwright({"history", "deck-top"}).out);
  expect_80_columns(pinwright({"blocks"}).out);
  expect_80_columns(pinwright({"knowledge"}).out);
  expect_80_columns(pinwright({"knowledge", "list", "signs"}).out);
  expect_80_columns(pinwright({"knowledge", "show", "front-neckline-gapes"}).out);
}

TEST(Cli, StepsFromTheLineFromAFileAndFromAFileOfABlock) {
  const Program pinwright;
  pinwright.save_top();
  const Ran by_line = pinwright({"alter", "deck-top", "--step", kLonger, "--json"});
  ASSERT_EQ(by_line.status, 0) << by_line.out;
  const std::string steps = pinwright.write(
      "steps.json", R"([{"operation": "lengthen", "piece": "body", "amount_mm": 20}])");
  const Ran by_file = pinwright({"alter", "deck-top", "--steps", steps, "--json"});
  EXPECT_EQ(by_line.json(), by_file.json());

  const std::string block = pinwright.file("top.json");
  ASSERT_EQ(pinwright(Program::draft({"--id", "file-top", "-o", block})).status, 0);
  const std::string altered = pinwright.file("altered.json");
  const Ran applied =
      pinwright({"alter", block, "--step", kLonger, "--apply", "--reason", "short", "-o", altered});
  EXPECT_EQ(applied.status, 0) << applied.err;
  EXPECT_EQ(pinwright({"check", altered}).status, 0);
  const Json before = Json::parse(slurp(block));
  const Json after = Json::parse(slurp(altered));
  EXPECT_NE(before["pieces"], after["pieces"]);
  EXPECT_EQ(pinwright({"save", altered}).status, 0);
  EXPECT_EQ(pinwright({"check", "file-top"}).status, 0);
}

TEST(Cli, TheKnowledgeIsListedShownAndChecked) {
  const Program pinwright;
  EXPECT_EQ(pinwright({"knowledge", "check"}).status, 0);
  EXPECT_NE(pinwright({"knowledge", "list", "causes"}).out.find("hollow-chest"), std::string::npos);
  const Ran shown = pinwright({"knowledge", "show", "front-neckline-gapes", "--json"});
  EXPECT_EQ(shown.json()["id"], "front-neckline-gapes");
  expect_refused(pinwright({"knowledge", "show", "front-neckline-gaps"}), 2, "front-neckline-gaps",
                 "front-neckline-gapes");
  const std::string folder = pinwright.file("extra");
  std::filesystem::create_directory(folder);
  pinwright.write("extra/bad.yaml", "signs:\n  - id: Odd Id\n");
  const Ran bad = pinwright({"knowledge", "check", folder});
  EXPECT_EQ(bad.status, 2);
  EXPECT_NE(bad.err.find("bad.yaml:2"), std::string::npos) << bad.err;
}

TEST(Cli, EveryCommandHasHelp) {
  const Program pinwright;
  EXPECT_EQ(pinwright({"--help"}).status, 0);
  for (const char* command : {"draft", "describe", "advise", "alter", "check", "draw", "history",
                              "blocks", "restore", "save", "knowledge", "serve"}) {
    const Ran help = pinwright({command, "--help"});
    EXPECT_EQ(help.status, 0) << command;
    EXPECT_NE(help.out.find("Usage"), std::string::npos) << command;
    EXPECT_NE(pinwright({"--help"}).out.find(command), std::string::npos);
  }
}

}  // namespace
}  // namespace pinwright::api
