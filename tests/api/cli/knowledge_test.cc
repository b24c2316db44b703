// Folders laid over the knowledge, and what `knowledge check` tells.

#include <csignal>
#include <filesystem>

#include "tests/api/cli/program.h"

namespace pinwright::api {
namespace {

const char* const kZone = "zones:\n  - {id: hem, name: lower edge}\n  - {id: cuff, name: cuff}\n";

std::string folder_with(const Program& pinwright, const std::string& name,
                        const std::string& text) {
  std::filesystem::create_directory(pinwright.file(name));
  pinwright.write(name + "/own.yaml", text);
  return pinwright.file(name);
}

TEST(Knowledge, OverlaysByOptionEnvironmentAndFolder) {
  const Program pinwright;
  const std::string own = folder_with(pinwright, "own", kZone);
  const auto cuff_known = [](const Ran& ran) {
    const Json shown = ran.json();
    return ran.status == 0 && shown["zones"].dump().find("\"cuff\"") != std::string::npos;
  };
  EXPECT_FALSE(cuff_known(pinwright({"knowledge", "list", "zones", "--json"})));
  EXPECT_TRUE(cuff_known(pinwright({"--overlay", own, "knowledge", "list", "zones", "--json"})));
  EXPECT_TRUE(cuff_known(
      pinwright({"knowledge", "list", "zones", "--json", "--overlay", own + "/own.yaml"})));
  setenv("PINWRIGHT_OVERLAY", own.c_str(), 1);
  EXPECT_TRUE(cuff_known(pinwright({"knowledge", "list", "zones", "--json"})));
  const std::string other = folder_with(pinwright, "other", "zones:\n  - {id: yoke, name: yoke}\n");
  EXPECT_FALSE(cuff_known(pinwright({"--overlay", other, "knowledge", "list", "zones", "--json"})))
      << "the option goes before the environment";
  unsetenv("PINWRIGHT_OVERLAY");
  EXPECT_TRUE(cuff_known(
      pinwright({"--overlay", own, "--overlay", other, "knowledge", "list", "zones", "--json"})));
}

TEST(Knowledge, CheckTellsWhatAFolderAddsAndReplaces) {
  const Program pinwright;
  const std::string own = folder_with(pinwright, "own", kZone);
  const Ran said = pinwright({"knowledge", "check", own});
  EXPECT_EQ(said.status, 0) << said.err;
  EXPECT_NE(said.out.find("is sound"), std::string::npos);
  EXPECT_NE(said.out.find("zones: hem, cuff"), std::string::npos) << said.out;
  EXPECT_NE(said.out.find("replaces zone hem"), std::string::npos) << said.out;
  const Json told = pinwright({"knowledge", "check", own, "--json"}).json();
  EXPECT_EQ(told["sound"], true);
  EXPECT_EQ(told["problems"], Json::array());
  const Json replaced = told["layers"][1]["replaces"][0];
  EXPECT_EQ(replaced["is"], own + "/own.yaml:2");
  EXPECT_NE(replaced["was"].get<std::string>().find("zones.yaml:"), std::string::npos);
  EXPECT_NE(pinwright({"--overlay", own, "knowledge"}).out.find("replaces zone hem"),
            std::string::npos);
}

TEST(Knowledge, CheckNamesFileAndLineInJson) {
  const Program pinwright;
  const std::string own = folder_with(pinwright, "own", "zones:\n  - id: cuff\n    nam: cuff\n");
  const Ran ran = pinwright({"knowledge", "check", own, "--json"});
  EXPECT_EQ(ran.status, 2);
  const Json told = ran.json();
  EXPECT_EQ(told["sound"], false);
  ASSERT_EQ(told["problems"].size(), 2U) << told.dump();
  EXPECT_EQ(told["problems"][0]["file"], own + "/own.yaml");
  EXPECT_EQ(told["problems"][0]["line"], 3);
  EXPECT_NE(told["problems"][0]["mend"].get<std::string>().find("`name`"), std::string::npos);
  const Ran words = pinwright({"knowledge", "check", own});
  EXPECT_EQ(words.status, 2);
  EXPECT_NE(words.err.find("own.yaml:3"), std::string::npos);
  EXPECT_EQ(pinwright({"knowledge", "check", pinwright.file("nowhere")}).status, 2);
}

TEST(Knowledge, RemarksCountOnlyWhenStrict) {
  const Program pinwright;
  const std::string own = folder_with(pinwright, "own", R"(signs:
  - id: hem-hums
    name: Hem hums in the wind
    zone: hem
    phrases: [<hem> hums]
    sources: [from memory]
causes:
  - id: wind-in-the-hem
    name: Wind in the hem
    kind: sewing
    what: The hem is open at one end.
    prior: 0.05
    ground: judged from memory
    makes: [{sign: hem-hums, strength: 0.9}]
    check: Blow into it.
    remedies:
      - id: close-the-hem
        name: Close the hem
        steps: [{operation: sew, text: Close the end of the hem.}]
        sources: [from memory]
    sources: [from memory]
)");
  const Ran said = pinwright({"knowledge", "check", own});
  EXPECT_EQ(said.status, 0) << said.err;
  const Json told = pinwright({"knowledge", "check", own, "--json"}).json();
  std::string codes;
  for (const Json& remark : told["remarks"])
    if (remark["file"] == own + "/own.yaml")
      codes +=
          remark["code"].get<std::string>() + ":" + std::to_string(remark["line"].get<int>()) + " ";
  EXPECT_EQ(codes, "cause-in-no-problem:8 sign-never-asked:2 ");
  EXPECT_EQ(pinwright({"knowledge", "check", own, "--strict"}).status, 2);
}

}  // namespace
}  // namespace pinwright::api
