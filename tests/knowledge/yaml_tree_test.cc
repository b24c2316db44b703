#include "knowledge/yaml_tree.h"

#include <gtest/gtest.h>

#include <random>

namespace pinwright::knowledge {
namespace {

std::string code_of(const std::string& text) {
  const auto tree = read_yaml(text, "a.yaml");
  return tree ? "" : tree.problems()[0].code;
}
std::string place_of(const std::string& text) {
  const auto tree = read_yaml(text, "a.yaml");
  return tree ? "" : tree.problems()[0].place;
}

TEST(YamlTree, KeepsLinesAndOrder) {
  const auto tree =
      read_yaml("signs:\n  - id: one\n    name: \"Two: three\"\n  - {id: four}\n", "a.yaml");
  ASSERT_TRUE(tree.ok());
  const YamlNode* signs = tree->find("signs");
  ASSERT_NE(signs, nullptr);
  ASSERT_EQ(signs->items.size(), 2u);
  EXPECT_EQ(signs->items[0].line, 2);
  EXPECT_EQ(signs->items[0].find("name")->text, "Two: three");
  EXPECT_TRUE(signs->items[0].find("name")->quoted);
  EXPECT_EQ(signs->items[1].line, 4);
  EXPECT_EQ(signs->items[1].find("nothing"), nullptr);
}

TEST(YamlTree, MalformedNamesTheLine) {
  EXPECT_EQ(code_of("a: 1\nb: [1, 2\nc: 3\n"), "yaml-malformed");
  EXPECT_EQ(place_of("a: 1\n  b: 2\n"), "a.yaml:2");
  EXPECT_EQ(code_of(""), "yaml-empty");
  EXPECT_EQ(code_of("a: 1\n---\nb: 2\n"), "yaml-more-than-one");
}

TEST(YamlTree, AliasesThatWouldGrowAreRefused) {
  const std::string bomb = "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c, *c, *c]\n";
  EXPECT_EQ(code_of(bomb), "yaml-alias");
  EXPECT_EQ(place_of("ok: 1\nlater: &x 2\n"), "a.yaml:2");
  EXPECT_EQ(code_of("a: !!python/object x\n"), "yaml-tag");
}

TEST(YamlTree, KeysTwiceAndKeysThatAreNoWords) {
  EXPECT_EQ(code_of("a: 1\nb: 2\na: 3\n"), "yaml-key-twice");
  EXPECT_EQ(place_of("a: 1\nb: 2\na: 3\n"), "a.yaml:3");
  EXPECT_EQ(code_of("? [a, b]\n: 1\n"), "yaml-key-not-a-word");
}

TEST(YamlTree, DeepNestingIsAnErrorNotACrash) {
  for (const std::size_t depth : {30u, 1000u, 100000u}) {
    EXPECT_NE(code_of(std::string(depth, '[')), "") << depth;
    std::string indented;
    for (std::size_t i = 0; i < std::min<std::size_t>(depth, 1000); ++i)
      indented += std::string(i, ' ') + "a:\n";
    EXPECT_EQ(code_of(indented), "yaml-too-deep") << depth;
  }
}

TEST(YamlTree, SizesAreLimited) {
  EXPECT_EQ(code_of("a: " + std::string(kMostTextBytes + 1, 'x') + "\n"), "yaml-text-too-long");
  EXPECT_EQ(code_of("a: " + std::string(kMostFileBytes, 'x')), "file-too-large");
  std::string many = "a: [";
  for (std::size_t i = 0; i <= kMostNodes; ++i) many += "1,";
  EXPECT_EQ(code_of(many + "]"), "yaml-too-large");
}

TEST(YamlTree, OnlyUtf8) {
  EXPECT_TRUE(is_utf8("décolleté \xE2\x9C\x82 \xF0\x9F\xA7\xB5"));
  EXPECT_FALSE(is_utf8("\xFF"));
  EXPECT_FALSE(is_utf8("\xC0\xAF"));          // overlong
  EXPECT_FALSE(is_utf8("\xED\xA0\x80"));      // surrogate
  EXPECT_FALSE(is_utf8("\xF4\x90\x80\x80"));  // over U+10FFFF
  EXPECT_FALSE(is_utf8("\xE2\x9C"));          // cut off
  EXPECT_FALSE(is_utf8(std::string("a\0b", 3)));
  EXPECT_EQ(code_of("a: 1\nb: \xE9\n"), "not-utf8");
  EXPECT_EQ(place_of("a: 1\nb: \xE9\n"), "a.yaml:2");
}

// Any bytes give a tree or problems, never a crash. Seed fixed, so that a failure comes back.
TEST(YamlTree, RandomTextNeverCrashes) {
  std::mt19937 random(20261125u);
  const std::string letters = "ab:- \n[]{}\"'#&*!|>%@,?\t\xC3\xA9";
  std::uniform_int_distribution<std::size_t> pick(0, letters.size() - 1);
  std::uniform_int_distribution<std::size_t> length(0, 120);
  std::size_t refused = 0;
  for (int round = 0; round < 3000; ++round) {
    std::string text;
    for (std::size_t i = length(random); i > 0; --i) text += letters[pick(random)];
    const auto tree = read_yaml(text, "a.yaml");
    if (!tree) {
      ++refused;
      for (const auto& p : tree.problems()) EXPECT_EQ(p.place.rfind("a.yaml", 0), 0u);
    }
  }
  EXPECT_GT(refused, 100u);
}

}  // namespace
}  // namespace pinwright::knowledge
