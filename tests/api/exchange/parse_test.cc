#include "api/exchange/parse.h"

#include <gtest/gtest.h>

namespace pinwright::api {
namespace {

Problem first(std::string_view text) {
  const auto read = parse_json(text);
  EXPECT_FALSE(read.ok()) << text;
  return read.ok() ? Problem{} : read.problems()[0];
}

TEST(Parse, ReadsJsonAndKeepsTheOrderOfFields) {
  const auto read = parse_json(R"({"b": [1, 2.5, true, null], "a": {"c": "d\u00e9"}})");
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read.value().dump(), "{\"b\":[1,2.5,true,null],\"a\":{\"c\":\"d\u00e9\"}}");
}

TEST(Parse, TellsLineAndColumnOfWhatIsNoJson) {
  const Problem p = first("{\n  \"a\": 1,\n  \"b\" 2\n}");
  EXPECT_EQ(p.code, "json-malformed");
  EXPECT_EQ(p.place, "line 3, column 7");
  // columns count characters, not bytes
  EXPECT_EQ(first("[\"\u00e9\u00e9\", x]").place, "line 1, column 8");
  EXPECT_EQ(first("").code, "json-malformed");
  EXPECT_EQ(first("{\"a\": 1").code, "json-malformed");
  EXPECT_EQ(first("{} {}").code, "json-malformed");
  EXPECT_EQ(first("[1, 2,]").code, "json-malformed");
}

TEST(Parse, RefusesNumbersThatAreNone) {
  for (const char* text : {"[NaN]", "[Infinity]", "[-Infinity]", "[nan]", "[-inf]"}) {
    EXPECT_EQ(first(text).code, "json-not-a-number") << text;
  }
  const Problem p = first("{\"a\": [1, 1e999]}");
  EXPECT_EQ(p.code, "json-number-range");
  EXPECT_EQ(p.place, "/a/1");
}

TEST(Parse, RefusesBytesThatAreNoUtf8) {
  EXPECT_EQ(first("[\"\xC3\x28\"]").code, "json-not-utf8");
  EXPECT_EQ(first("[\"\xED\xA0\x80\"]").code, "json-not-utf8");
  EXPECT_EQ(first("[\"\xFF\"]").code, "json-not-utf8");
}

TEST(Parse, RefusesDepthWithoutRecursion) {
  const Problem p = first(std::string(2000000, '['));
  EXPECT_EQ(p.code, "json-too-deep");
  std::string nested;
  for (int i = 0; i < 100000; ++i) nested += "{\"a\":";
  EXPECT_EQ(first(nested).code, "json-too-deep");
  EXPECT_TRUE(parse_json(std::string(kMostDepth, '[') + std::string(kMostDepth, ']')).ok());
  EXPECT_FALSE(
      parse_json(std::string(kMostDepth + 1, '[') + std::string(kMostDepth + 1, ']')).ok());
}

TEST(Parse, RefusesSizeBeforeAnythingElse) {
  const std::string text(kMostBytes + 1, '[');
  EXPECT_EQ(first(text).code, "too-large");
  EXPECT_EQ(parse_json("[1,2,3]", 4).problems()[0].code, "too-large");
}

TEST(Parse, CollectsDoubledKeysAndOddStrings) {
  const auto read = parse_json(
      R"({"a": {"b": 1, "b": 2}, "c": "bell\u0007", "d/e": {"~": "\u0000"}, "fine": "a\tb\nc"})");
  ASSERT_FALSE(read.ok());
  ASSERT_EQ(read.problems().size(), 3u);
  EXPECT_EQ(read.problems()[0].code, "json-key-twice");
  EXPECT_EQ(read.problems()[0].place, "/a/b");
  EXPECT_EQ(read.problems()[1].code, "json-control-character");
  EXPECT_EQ(read.problems()[1].place, "/c");
  EXPECT_EQ(read.problems()[2].place, "/d~1e/~0");
  EXPECT_EQ(first("\"" + std::string(kMostTextBytes + 1, 'x') + "\"").code, "json-text-too-long");
}

}  // namespace
}  // namespace pinwright::api
