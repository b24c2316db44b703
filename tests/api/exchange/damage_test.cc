// Every kind of damage to a block file is refused with its code and place. A case is an edit of the
// JSON of a sound block: adding one needs no code.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "api/exchange/block_json.h"
#include "api/exchange/block_schema.h"
#include "api/exchange/exchange.h"
#include "api/exchange/parse.h"
#include "tests/api/exchange/hand_block.h"

namespace pinwright::api {
namespace {

struct Damage {
  const char* pointer;  ///< what is edited
  const char* value;    ///< JSON put there; nullptr: the field is taken out
  const char* code;
  const char* place;  ///< where the problem must be told
};

const Damage kDamages[] = {
    {"/format", "\"pinwright-blok\"", "value-unknown", "/format"},
    {"/format", nullptr, "field-missing", "/format"},
    {"/version", "3", "value-unknown", "/version"},
    {"/version", "\"1\"", "value-unknown", "/version"},
    {"/unit", "\"in\"", "value-unknown", "/unit"},
    {"/id", "\"Hand Block\"", "id-malformed", "/id"},
    {"/id", "\"\"", "text-size", "/id"},
    {"/id", "\"-x\"", "id-malformed", "/id"},
    {"/id", "7", "type-wrong", "/id"},
    {"/id", "null", "type-wrong", "/id"},
    {"/name", "[]", "type-wrong", "/name"},
    {"/kind", "\"trousers\"", "value-unknown", "/kind"},
    {"/colour", "\"navy\"", "field-unknown", "/colour"},
    {"/fabric", nullptr, "field-missing", "/fabric"},
    {"/fabric/kind", "\"felt\"", "value-unknown", "/fabric/kind"},
    {"/fabric/stretch_across", "25", "value-range", "/fabric/stretch_across"},
    {"/fabric/stretch_across", "-0.1", "value-range", "/fabric/stretch_across"},
    {"/fabric/recovery", "1.5", "value-range", "/fabric/recovery"},
    {"/fabric/weight", "180", "field-unknown", "/fabric/weight"},
    {"/drafted_for/body/bust-girth", "0", "value-range", "/drafted_for/body/bust-girth"},
    {"/drafted_for/body/bust-girth", "\"92 cm\"", "type-wrong", "/drafted_for/body/bust-girth"},
    {"/drafted_for/body/bust-girth", "92", "measurement-range", "/drafted_for/body/bust-girth"},
    {"/drafted_for/body/burst-girth", "920", "measurement-unknown",
     "/drafted_for/body/burst-girth"},
    {"/drafted_for/body/Bust girth", "920", "id-malformed", "/drafted_for/body/Bust girth"},
    {"/drafted_for/posture", "\"erect\"", "type-wrong", "/drafted_for/posture"},
    {"/ease_mm/bust-girth", "5000", "value-range", "/ease_mm/bust-girth"},
    {"/ease_mm/bust-girth", "true", "type-wrong", "/ease_mm/bust-girth"},
    {"/pieces", "[]", "list-size", "/pieces"},
    {"/pieces", "{}", "type-wrong", "/pieces"},
    {"/pieces/1/edges", nullptr, "field-missing", "/pieces/1/edges"},
    {"/pieces/1/cut/count", "0", "value-range", "/pieces/1/cut/count"},
    {"/pieces/1/cut/count", "1.5", "type-wrong", "/pieces/1/cut/count"},
    {"/pieces/1/cut/mirrored_pair", "1", "type-wrong", "/pieces/1/cut/mirrored_pair"},
    {"/pieces/0/fold", "null", "type-wrong", "/pieces/0/fold"},
    {"/pieces/0/edges/2/role", "\"dart leg\"", "value-unknown", "/pieces/0/edges/2/role"},
    {"/pieces/0/edges/2/straight", "\"yes\"", "type-wrong", "/pieces/0/edges/2/straight"},
    {"/pieces/0/edges/1/allowance/width_mm", "-1", "value-range",
     "/pieces/0/edges/1/allowance/width_mm"},
    {"/pieces/0/edges/1/allowance/width_mm", "201", "value-range",
     "/pieces/0/edges/1/allowance/width_mm"},
    {"/pieces/0/edges/1/allowance/kind", "\"rolled\"", "value-unknown",
     "/pieces/0/edges/1/allowance/kind"},
    {"/pieces/0/edges/2/points/3", "[1, 2, 3]", "list-size", "/pieces/0/edges/2/points/3"},
    {"/pieces/0/edges/2/points/3", "[1]", "list-size", "/pieces/0/edges/2/points/3"},
    {"/pieces/0/edges/2/points/3", "{\"x\": 1, \"y\": 2}", "type-wrong",
     "/pieces/0/edges/2/points/3"},
    {"/pieces/0/edges/2/points/3/0", "\"12\"", "type-wrong", "/pieces/0/edges/2/points/3/0"},
    {"/pieces/0/edges/2/points/3/0", "null", "type-wrong", "/pieces/0/edges/2/points/3/0"},
    {"/pieces/0/edges/2/points/3/1", "1e6", "value-range", "/pieces/0/edges/2/points/3/1"},
    {"/pieces/0/edges/2/points", "[[0,0],[1,1],[2,2]]", "list-size", "/pieces/0/edges/2/points"},
    {"/pieces/0/edges/2/points", "[[0,0],[1,1],[2,2],[3,3],[4,4]]", "points-count",
     "/pieces/0/edges/2/points"},
    {"/pieces/0/notches/0/at_mm", "-0.5", "value-range", "/pieces/0/notches/0/at_mm"},
    {"/pieces/0/notches/0/at", "3", "field-unknown", "/pieces/0/notches/0/at"},
    {"/pieces/0/darts/0/leg_in", nullptr, "field-missing", "/pieces/0/darts/0/leg_in"},
    {"/pieces/0/landmarks/0/at", "5", "type-wrong", "/pieces/0/landmarks/0/at"},
    {"/pieces/0/grainline", nullptr, "field-missing", "/pieces/0/grainline"},
    {"/pieces/0/grainline/from/0", "false", "type-wrong", "/pieces/0/grainline/from/0"},
    {"/seams/0/a", "[]", "list-size", "/seams/0/a"},
    {"/seams/0/a/0/reversed", nullptr, "field-missing", "/seams/0/a/0/reversed"},
    {"/seams/1/sections/0/ease_mm", "1e9", "value-range", "/seams/1/sections/0/ease_mm"},
    {"/seams/1/sections", "[]", "list-size", "/seams/1/sections"},
    {"/joins/0/target_rad", "180", "value-range", "/joins/0/target_rad"},
    {"/joins/0/corners/0/before", "\"Hem\"", "id-malformed", "/joins/0/corners/0/before"},
    {"/bindings/0/ratio", "0", "value-range", "/bindings/0/ratio"},
    {"/bindings/0/copies", "2.5", "type-wrong", "/bindings/0/copies"},
    {"/linings/0", "{\"piece\": \"front-lining\"}", "field-missing", "/linings/0/shell"},
};

Json damaged(const Damage& d) {
  Json value = to_json(testing::hand_block());
  const Json::json_pointer pointer((std::string(d.pointer)));
  if (d.value == nullptr) {
    value[pointer.parent_pointer()].erase(pointer.back());
  } else {
    value[pointer] = Json::parse(d.value);
  }
  return value;
}

TEST(Damage, IsRefusedWithItsCodeAndPlace) {
  for (const Damage& d : kDamages) {
    const auto read = read_block(dump(damaged(d)));
    ASSERT_FALSE(read.ok()) << d.pointer << " = " << (d.value ? d.value : "(taken out)");
    const bool told =
        std::any_of(read.problems().begin(), read.problems().end(),
                    [&](const Problem& p) { return p.code == d.code && p.place == d.place; });
    std::string all;
    for (const Problem& p : read.problems()) all += p.code + " at " + p.place + "; ";
    EXPECT_TRUE(told) << d.pointer << ": wanted " << d.code << " at " << d.place << ", got " << all;
    for (const Problem& p : read.problems()) {
      EXPECT_FALSE(p.what.empty());
      EXPECT_FALSE(p.mend.empty());
    }
  }
}

TEST(Damage, OneSlipIsToldOnce) {
  for (const Damage& d : kDamages) {
    const auto read = read_block(dump(damaged(d)));
    ASSERT_FALSE(read.ok());
    std::set<std::string> places;
    for (const Problem& p : read.problems()) {
      EXPECT_TRUE(places.insert(p.code + p.place).second) << d.pointer;
    }
    EXPECT_LE(read.problems().size(), 2u) << d.pointer;
  }
}

TEST(Damage, AllSlipsAreToldTogether) {
  Json value = to_json(testing::hand_block());
  value["id"] = "No Id";
  value["colour"] = "navy";
  value["weight"] = 180;
  value.erase("kind");
  value["pieces"][0]["edges"][2]["points"][3][0] = "x";
  value["pieces"][1]["notches"][0]["at_mm"] = -1;
  const auto read = read_block(dump(value));
  ASSERT_FALSE(read.ok());
  std::set<std::string> places;
  for (const Problem& p : read.problems()) places.insert(p.place);
  EXPECT_EQ(places,
            (std::set<std::string>{"/id", "/colour", "/weight", "/kind",
                                   "/pieces/0/edges/2/points/3/0", "/pieces/1/notches/0/at_mm"}));
}

TEST(Damage, AnUnknownFieldOffersTheNearest) {
  Json value = to_json(testing::hand_block());
  value["pieces"][0]["notchs"] = Json::array();
  const auto read = read_block(dump(value));
  ASSERT_FALSE(read.ok());
  EXPECT_NE(read.problems()[0].mend.find("notches"), std::string::npos);
}

TEST(Damage, OtherDocumentsAreRefused) {
  for (const char* text : {"null", "[]", "{}", "\"block\"", "12", "true"}) {
    EXPECT_FALSE(read_block(text).ok()) << text;
  }
}

TEST(Damage, LongTextNeverReachesThePatternMatcher) {
  Json value = to_json(testing::hand_block());
  value["id"] = std::string(60000, 'a');
  value["pieces"][0]["edges"][0]["id"] = std::string(60000, 'b');
  const auto read = read_block(dump(value));
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems()[0].code, "text-size");
  EXPECT_EQ(read.problems()[0].place, "/id");
}

TEST(Damage, AHugeButWellFormedFileIsAnsweredShortly) {
  Json value = to_json(testing::hand_block());
  Json& points = value["pieces"][0]["edges"][0]["points"];
  while (points.size() < 100000) points.push_back({"x", "y"});
  const auto read = read_block(dump(value));
  ASSERT_FALSE(read.ok());
  EXPECT_LE(read.problems().size(), 101u);
}

TEST(Damage, PlacesInsideABiggerDocumentStartWithTheirPrefix) {
  Json value = to_json(testing::hand_block());
  value["kind"] = "trousers";
  const auto read = read_block_json(value, "/block");
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems()[0].place, "/block/kind");
}

TEST(Schema, IsPublishedAsBuilt) {
  const auto schema = parse_json(block_schema_text());
  ASSERT_TRUE(schema.ok());
  EXPECT_EQ(schema.value()["$schema"], "http://json-schema.org/draft-07/schema#");
}

/// Every object of the schema names its fields, requires all but those of few pieces, and lets in
/// no other.
void expect_strict(const Json& schema, const std::string& place, int& objects) {
  if (schema.is_object() && schema.contains("properties") && schema["type"] == "object") {
    ++objects;
    EXPECT_EQ(schema.value("additionalProperties", true), false) << place;
    std::set<std::string> fields;
    for (const auto& item : schema["properties"].items()) {
      const bool may_lack =
          item.key() == "fold" || item.key() == "side" || item.key() == "centre_line";
      if (!may_lack) fields.insert(item.key());
    }
    EXPECT_EQ(schema["required"].get<std::set<std::string>>(), fields) << place;
  }
  if (!schema.is_structured()) return;
  for (auto it = schema.begin(); it != schema.end(); ++it) {
    expect_strict(*it, place + "/" + (schema.is_object() ? it.key() : "."), objects);
  }
}

TEST(Schema, LetsNothingUnnamedIn) {
  int objects = 0;
  expect_strict(parse_json(block_schema_text()).value(), "", objects);
  EXPECT_EQ(objects, 18);
}

}  // namespace
}  // namespace pinwright::api
