#include "knowledge/load.h"

#include <gtest/gtest.h>

#include <unistd.h>

#include <filesystem>
#include <fstream>

namespace pinwright::knowledge {
namespace {

namespace fs = std::filesystem;

/// Two folders of the test's own; gone afterwards.
class Load : public ::testing::Test {
 protected:
  void SetUp() override {
    root_ = fs::temp_directory_path() /
            ("knowledge-load-" + std::to_string(::getpid()) + "-" +
             ::testing::UnitTest::GetInstance()->current_test_info()->name());
    fs::create_directories(root_ / "a");
    fs::create_directories(root_ / "b");
  }
  void TearDown() override { fs::remove_all(root_); }

  std::string folder(const char* name) const { return (root_ / name).string(); }
  void write(const char* in, const std::string& name, const std::string& text) const {
    std::ofstream(root_ / in / name, std::ios::binary) << text;
  }
  Problems problems(const std::string& text) const {
    write("a", "one.yaml", text);
    return load({folder("a")}).problems();
  }
  /// The place is told as "one.yaml:7".
  static bool has(const Problems& all, const std::string& code, const std::string& place = "") {
    for (const auto& p : all)
      if (p.code == code && (place.empty() || p.place.ends_with("/" + place))) return true;
    return false;
  }
  static std::string told(const Problems& all) {
    std::string text;
    for (const auto& p : all) text += p.code + " " + p.place + " " + p.what + "\n";
    return text;
  }

  fs::path root_;
};

// A small sound knowledge; the tests break one line of it at a time. Line numbers count from 1.
const char* const kSound =
    "kinds: [knit-top, woven-bodice]\n"                       // 1
    "zones:\n"                                                // 2
    "  - {id: hem, name: hem}\n"                              // 3
    "publications:\n"                                         // 4
    "  - {key: BOOK, title: A book}\n"                        // 5
    "signs:\n"                                                // 6
    "  - id: top-too-short\n"                                 // 7
    "    name: Top is too short\n"                            // 8
    "    zone: hem\n"                                         // 9
    "    counts: distance\n"                                  // 10
    "    leak: 0.02\n"                                        // 11
    "    phrases: [hem too short]\n"                          // 12
    "    sources: [common practice]\n"                        // 13
    "causes:\n"                                               // 14
    "  - id: long-body\n"                                     // 15
    "    name: Long body\n"                                   // 16
    "    kind: body\n"                                        // 17
    "    what: The body is long.\n"                           // 18
    "    prior: 0.1\n"                                        // 19
    "    ground: judged from memory\n"                        // 20
    "    makes:\n"                                            // 21
    "      - {sign: top-too-short, strength: 0.8}\n"          // 22
    "    check: Tie a cord round the waist.\n"                // 23
    "    remedies:\n"                                         // 24
    "      - id: lengthen-it\n"                               // 25
    "        name: Lengthen it\n"                             // 26
    "        usual_mm: 25\n"                                  // 27
    "        steps:\n"                                        // 28
    "          - operation: lengthen\n"                       // 29
    "            options: {piece: body}\n"                    // 30
    "            amount: found.top-too-short\n"               // 31
    "            text: Lengthen by {amount}.\n"               // 32
    "        sources: [\"BOOK: page 3\"]\n"                   // 33
    "    sources: [BOOK]\n"                                   // 34
    "  - id: cloth-shrank\n"                                  // 35
    "    name: Cloth shrank\n"                                // 36
    "    kind: fabric\n"                                      // 37
    "    what: It shrank.\n"                                  // 38
    "    prior: 0.1\n"                                        // 39
    "    ground: judged from memory\n"                        // 40
    "    makes: [{sign: top-too-short, strength: 0.7}]\n"     // 41
    "    check: Was it washed?\n"                             // 42
    "    remedies:\n"                                         // 43
    "      - id: wash-first\n"                                // 44
    "        name: Wash first\n"                              // 45
    "        steps: [{operation: choose, text: Wash it.}]\n"  // 46
    "        sources: [from memory]\n"                        // 47
    "    sources: [from memory]\n"                            // 48
    "problems:\n"                                             // 49
    "  - {id: top-too-short, name: Top too short, sign: top-too-short, causes: [long-body, "
    "cloth-shrank]}\n";  // 50

std::string with(const std::string& was, const std::string& is) {
  std::string text = kSound;
  const std::size_t at = text.find(was);
  EXPECT_NE(at, std::string::npos) << was;
  return at == std::string::npos ? text : text.replace(at, was.size(), is);
}

TEST_F(Load, SoundKnowledgeLoads) {
  write("a", "one.yaml", kSound);
  const auto k = load({folder("a")});
  ASSERT_TRUE(k.ok()) << told(k.problems());
  ASSERT_EQ(k->causes.size(), 2u);
  const Cause& c = k->causes[0];
  EXPECT_EQ(c.id, "long-body");
  EXPECT_EQ(c.kind, CauseKind::body);
  EXPECT_DOUBLE_EQ(c.prior, 0.1);
  EXPECT_EQ(c.makes[0].sign, "top-too-short");
  EXPECT_DOUBLE_EQ(c.makes[0].strength, 0.8);
  EXPECT_EQ(c.makes[0].ground, "judged from memory");
  EXPECT_EQ(c.place.line, 15);
  EXPECT_EQ(c.remedies[0].sources[0].key, "BOOK");
  EXPECT_EQ(c.remedies[0].sources[0].where, "page 3");
  EXPECT_EQ(c.remedies[0].steps[0].amount, "found.top-too-short");
  EXPECT_EQ(c.remedies[0].steps[0].options.at("piece"), "body");
  EXPECT_DOUBLE_EQ(c.remedies[0].usual_mm.value_or(0.0), 25.0);
  EXPECT_EQ(k->signs[0].counts, Counts::distance);
  EXPECT_EQ(k->problems[0].causes.size(), 2u);
}

TEST_F(Load, UnreachableSignAndRivalWithoutSign) {
  const std::string text = with("causes:\n",
                                "  - id: hem-dips\n"
                                "    name: Hem dips\n"
                                "    zone: hem\n"
                                "    phrases: [hem dips]\n"
                                "    sources: [common practice]\n"
                                "causes:\n");
  EXPECT_TRUE(has(problems(text), "sign-unreachable", "one.yaml:14")) << told(problems(text));
  const std::string rival = with("sign: top-too-short, causes", "sign: top-too-shor, causes");
  EXPECT_TRUE(has(problems(rival), "sign-unknown", "one.yaml:50"));
}

TEST_F(Load, AllProblemsInOnePass) {
  std::string text = with("zone: hem", "zone: hemm");
  text.replace(text.find("operation: lengthen"), 19, "operation: lenghten");
  text.replace(text.find("leak: 0.02"), 10, "leak: 7.02");
  const Problems found = problems(text);
  EXPECT_TRUE(has(found, "zone-unknown")) << told(found);
  EXPECT_TRUE(has(found, "operation-unknown")) << told(found);
  EXPECT_TRUE(has(found, "schema", "one.yaml:11")) << told(found);
}

TEST_F(Load, LaterFoldersReplaceById) {
  write("a", "one.yaml", kSound);
  write("b", "own.yaml",
        "causes:\n"
        "  - id: cloth-shrank\n"
        "    name: Our poplin shrank\n"
        "    kind: fabric\n"
        "    what: It shrank more.\n"
        "    prior: 0.3\n"
        "    ground: the room's own record\n"
        "    makes: [{sign: top-too-short, strength: 0.9}]\n"
        "    check: Was it washed?\n"
        "    remedies:\n"
        "      - id: wash-twice\n"
        "        name: Wash twice\n"
        "        steps: [{operation: choose, text: Wash it twice.}]\n"
        "        sources: [from memory]\n"
        "    sources: [from memory]\n");
  const auto k = load({folder("a"), folder("b")});
  ASSERT_TRUE(k.ok()) << told(k.problems());
  ASSERT_EQ(k->causes.size(), 2u);
  EXPECT_EQ(k->causes[1].name, "Our poplin shrank");
  EXPECT_DOUBLE_EQ(k->causes[1].prior, 0.3);
  EXPECT_TRUE(has(load({folder("b")}).problems(), "sign-unknown"));  // it does not stand alone
}

TEST_F(Load, FilesThatCannotBeRead) {
  EXPECT_TRUE(has(load({}).problems(), "folder-missing"));
  EXPECT_TRUE(has(load({folder("nowhere")}).problems(), "folder-unreadable"));
  EXPECT_TRUE(has(load({folder("b")}).problems(), "folder-empty"));
  write("a", "one.yaml", kSound);
  write("a", "two.yaml", "signs: [\n");
  const Problems found = load({folder("a")}).problems();
  EXPECT_TRUE(has(found, "yaml-malformed")) << told(found);
  write("a", "two.yaml", std::string(2'500'000, '#'));
  EXPECT_TRUE(has(load({folder("a")}).problems(), "file-too-large"));
  write("a", "two.yaml", "just a sentence\n");
  EXPECT_TRUE(has(load({folder("a")}).problems(), "schema", "two.yaml:1"));
}

}  // namespace
}  // namespace pinwright::knowledge
