// Every file of tests/knowledge/broken is laid over base/ and breaks one thing. The lines that are
// wrong bear "# expect: CODE"; those problems must be told at those lines, and no other of that
// file.

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>

#include "knowledge/load.h"

namespace pinwright::knowledge {
namespace {

namespace fs = std::filesystem;

const fs::path& broken() {
  static const fs::path kFolder = fs::path(PINWRIGHT_SOURCE_DIR) / "tests/knowledge/broken";
  return kFolder;
}

std::vector<std::string> names() {
  std::vector<std::string> all;
  for (const auto& entry : fs::directory_iterator(broken()))
    if (entry.path().extension() == ".yaml") all.push_back(entry.path().stem().string());
  std::sort(all.begin(), all.end());
  return all;
}

/// A folder of the test's own that holds one file.
class Overlay {
 public:
  Overlay() {
    std::string name = (fs::temp_directory_path() / "pinwright-broken-XXXXXX").string();
    folder_ = ::mkdtemp(name.data());
  }
  ~Overlay() { fs::remove_all(folder_); }
  Overlay(const Overlay&) = delete;
  Overlay& operator=(const Overlay&) = delete;
  void write(const std::string& text) const {
    std::ofstream(folder_ / "own.yaml", std::ios::binary) << text;
  }
  Result<Knowledge> loaded() const {
    return load({(broken() / "base").string(), folder_.string()});
  }

 private:
  fs::path folder_;
};

std::string slurp(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// "own.yaml:7 zone-unknown"
std::multiset<std::string> expected(const std::string& text) {
  std::multiset<std::string> all;
  std::istringstream in(text);
  std::string line;
  for (int number = 1; std::getline(in, line); ++number) {
    const std::size_t at = line.find("# expect: ");
    if (at != std::string::npos)
      all.insert("own.yaml:" + std::to_string(number) + " " + line.substr(at + 10));
  }
  return all;
}

std::multiset<std::string> told(const Problems& problems) {
  std::multiset<std::string> all;
  for (const auto& p : problems) all.insert(p.place.substr(p.place.rfind('/') + 1) + " " + p.code);
  return all;
}

class BrokenFile : public ::testing::TestWithParam<std::string> {};

TEST_P(BrokenFile, IsToldAtItsLine) {
  const std::string text = slurp(broken() / (GetParam() + ".yaml"));
  const auto wanted = expected(text);
  ASSERT_FALSE(wanted.empty());
  const Overlay overlay;
  overlay.write(text);
  const auto loaded = overlay.loaded();
  // What else no longer holds because of it may be told of the base, never of the file itself.
  auto found = told(loaded.problems());
  std::erase_if(found, [](const auto& one) { return one.starts_with("base.yaml:"); });
  EXPECT_EQ(found, wanted);
  for (const auto& p : loaded.problems()) {
    EXPECT_FALSE(p.what.empty());
    EXPECT_FALSE(p.mend.empty());
  }
}

INSTANTIATE_TEST_SUITE_P(Knowledge, BrokenFile, ::testing::ValuesIn(names()), [](const auto& one) {
  std::string name = one.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});

TEST(BrokenFiles, TheBaseIsSound) {
  const auto loaded = load({(broken() / "base").string()});
  EXPECT_EQ(told(loaded.problems()), std::multiset<std::string>{});
}

TEST(BrokenFiles, WhatOtherEditorsWriteIsRead) {
  const std::string sound = "zones:\n  - {id: neck, name: neck}\n";
  const Overlay overlay;
  overlay.write("\xEF\xBB\xBF" + sound);  // byte order mark
  EXPECT_TRUE(overlay.loaded().ok());
  overlay.write("zones:\r\n  - {id: neck, name: neck}\r\n");
  const auto loaded = overlay.loaded();
  ASSERT_TRUE(loaded.ok());
  EXPECT_EQ(find_zone(*loaded, "neck")->name, "neck");
  overlay.write("zones:\r\n  - id: neck\r\n    name: neck\r\n    kind: [knit-top]\r\n");
  EXPECT_EQ(told(overlay.loaded().problems()), std::multiset<std::string>{"own.yaml:4 schema"});
}

TEST(BrokenFiles, WhatIsNoTextIsTold) {
  const Overlay overlay;
  overlay.write("");
  EXPECT_EQ(told(overlay.loaded().problems()), std::multiset<std::string>{"own.yaml:1 yaml-empty"});
  overlay.write("zones:\n  - {id: neck, name: \xE9t\xE9}\n");  // Latin-1
  EXPECT_EQ(told(overlay.loaded().problems()), std::multiset<std::string>{"own.yaml:2 not-utf8"});
  overlay.write(std::string("z\0nes: []\n", 10));
  EXPECT_EQ(told(overlay.loaded().problems()), std::multiset<std::string>{"own.yaml:1 not-utf8"});
}

}  // namespace
}  // namespace pinwright::knowledge
