#include "knowledge/expression.h"

#include <gtest/gtest.h>

#include "engine/draft/draft.h"
#include "engine/pattern/measures.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

FoundDimensions signs() {
  FoundDimensions f;
  f.of_sign["bust-drag-lines"] = Dimension::told;
  f.of_sign["top-too-long"] = Dimension::length;
  f.any = Dimension::told;
  return f;
}

Dimension dimension(const std::string& text) {
  const auto e = parse_expression(text, signs(), "x.yaml:1");
  EXPECT_TRUE(e.ok()) << text << ": " << (e.ok() ? "" : e.problems()[0].what);
  return e ? e->dimension() : Dimension::angle;
}

std::string refused(const std::string& text) {
  const auto e = parse_expression(text, signs(), "x.yaml:7");
  if (e) return "";
  EXPECT_EQ(e.problems()[0].place, "x.yaml:7");
  return e.problems()[0].code;
}

Values values() {
  Values v;
  v.found = FoundAmount{40.0, Of::whole, Taken::cloth};
  v.found_of["bust-drag-lines"] = FoundAmount{40.0, Of::whole, Taken::cloth};
  v.found_of["top-too-long"] = FoundAmount{12.7, Of::whole, Taken::fold_depth};
  v.garment = {{"bust-girth", 900.0}, {"neckline-length", 500.0}, {"shoulder-length", 120.0}};
  v.body = {{"bust-girth", 880.0}};
  v.ease = {{"bust-girth", 60.0}};
  v.fabric = Fabric{"jersey", "jersey", FabricKind::knit, 0.5, 0.2, 0.9};
  return v;
}

double value(const std::string& text, const Values& v = values()) {
  const auto e = parse_expression(text, signs(), "x.yaml:1");
  EXPECT_TRUE(e.ok()) << text << ": " << (e.ok() ? "" : e.problems()[0].what);
  if (!e) return -1e9;
  const Evaluated got = evaluate(*e, v);
  EXPECT_TRUE(got.value.has_value()) << text;
  return got.value.value_or(-1e9);
}

TEST(Expression, LiteralsAndUnits) {
  EXPECT_DOUBLE_EQ(value("6 mm"), 6.0);
  EXPECT_DOUBLE_EQ(value("2 cm"), 20.0);
  EXPECT_DOUBLE_EQ(value("3/8 in"), 9.525);
  EXPECT_DOUBLE_EQ(value("1 1/2 in"), 38.1);
  EXPECT_DOUBLE_EQ(value("1 1/2 inches whole"), 38.1);
  EXPECT_DOUBLE_EQ(value("0.9"), 0.9);
  EXPECT_DOUBLE_EQ(value("5 %"), 0.05);
  EXPECT_EQ(dimension("6 mm"), Dimension::length);
  EXPECT_EQ(dimension("6 mm half"), Dimension::half);
  EXPECT_EQ(dimension("1 in whole"), Dimension::whole);
  EXPECT_EQ(dimension("0.9"), Dimension::ratio);
}

TEST(Expression, Arithmetic) {
  EXPECT_DOUBLE_EQ(value("1 + 2 * 3"), 7.0);
  EXPECT_DOUBLE_EQ(value("(1 + 2) * 3"), 9.0);
  EXPECT_DOUBLE_EQ(value("10 mm - 4 mm - 3 mm"), 3.0);
  EXPECT_DOUBLE_EQ(value("-found.top-too-long / 2"), -12.7);
  EXPECT_DOUBLE_EQ(value("min(3 mm, 2 mm, 9 mm)"), 2.0);
  EXPECT_DOUBLE_EQ(value("max(3 mm, 2 mm)"), 3.0);
  EXPECT_DOUBLE_EQ(value("clamp(9 mm, 1 mm, 4 mm)"), 4.0);
  EXPECT_DOUBLE_EQ(value("garment.neckline-length * (1 - 10 %)"), 450.0);
}

TEST(Expression, WholeAndHalfConvertByNameOnly) {
  EXPECT_EQ(dimension("half(found)"), Dimension::half);
  EXPECT_EQ(dimension("whole(found)"), Dimension::whole);
  EXPECT_DOUBLE_EQ(value("half(found)"), 20.0);
  EXPECT_DOUBLE_EQ(value("whole(found)"), 40.0);
  EXPECT_DOUBLE_EQ(value("half(whole(half(found)))"), 20.0);
  EXPECT_DOUBLE_EQ(value("half(garment.bust-girth)"), 450.0);
  EXPECT_DOUBLE_EQ(value("half(found * 0.5)"), 10.0);
  // Dividing does not turn the one into the other.
  EXPECT_EQ(dimension("garment.bust-girth / 2"), Dimension::whole);
  EXPECT_EQ(dimension("whole(found) / 2"), Dimension::whole);

  Values told_half = values();
  told_half.found = FoundAmount{15.0, Of::half, Taken::cloth};
  EXPECT_DOUBLE_EQ(value("half(found)", told_half), 15.0);
  EXPECT_DOUBLE_EQ(value("whole(found)", told_half), 30.0);
  EXPECT_DOUBLE_EQ(value("length(half(found))", told_half), 15.0);
}

TEST(Expression, AFoldTakesUpTwiceItsDepth) {
  EXPECT_DOUBLE_EQ(value("found.top-too-long"), 25.4);
  Values v = values();
  v.found = FoundAmount{9.525, Of::half, Taken::fold_depth};  // 3/8 in pinned on each side
  EXPECT_DOUBLE_EQ(value("half(found)", v), 19.05);
  EXPECT_DOUBLE_EQ(value("whole(found)", v), 38.1);
}

TEST(Expression, MixingWholeAndHalfIsRefused) {
  EXPECT_EQ(refused("half(found) + whole(found)"), "whole-and-half");
  EXPECT_EQ(refused("garment.bust-girth - half(found)"), "whole-and-half");
  EXPECT_EQ(refused("found + garment.bust-girth"), "whole-and-half");
  EXPECT_EQ(refused("max(found, found)"), "whole-and-half");
  EXPECT_EQ(refused("first(found, 6 mm whole)"), "whole-and-half");
  EXPECT_EQ(refused("clamp(half(found), 3 mm whole, 9 mm half)"), "whole-and-half");
  EXPECT_EQ(refused("half(found) / whole(found)"), "whole-and-half");
}

TEST(Expression, OtherMixturesAreRefused) {
  EXPECT_EQ(refused("half(found) + 6 mm"), "dimension");
  EXPECT_EQ(refused("half(6 mm)"), "dimension");
  EXPECT_EQ(refused("half(found.top-too-long)"), "dimension");
  EXPECT_EQ(refused("half(0.9)"), "dimension");
  EXPECT_EQ(refused("length(whole(found))"), "dimension");
  EXPECT_EQ(refused("6 mm + 0.9"), "dimension");
  EXPECT_EQ(refused("6 mm * 6 mm"), "dimension");
  EXPECT_EQ(refused("0.9 / 6 mm"), "dimension");
  EXPECT_EQ(refused("garment.shoulder-slope + 6 mm"), "dimension");
}

TEST(Expression, NamesAndSyntaxAreRefused) {
  EXPECT_EQ(refused("found.no-such-sign"), "name-unknown");
  EXPECT_EQ(refused("garment.no-such-measure"), "name-unknown");
  EXPECT_EQ(refused("body.shoe-size"), "name-unknown");
  EXPECT_EQ(refused("fabric.colour"), "name-unknown");
  EXPECT_EQ(refused("half"), "name-unknown");
  EXPECT_EQ(refused("double(6 mm)"), "name-unknown");
  EXPECT_EQ(refused("6 furlongs"), "unit-unknown");
  EXPECT_EQ(refused(""), "expression-empty");
  EXPECT_EQ(refused("   "), "expression-empty");
  for (const char* text : {"6 mm +", "(6 mm", "6 mm)", "min(", "clamp(1, 2)", "half(1, 2)", "1 2",
                           "6 mm 7 mm", "* 2", "1..2", ",", "found.", "\xFF", "6 mm; 7 mm"})
    EXPECT_NE(refused(text), "") << text;
  EXPECT_EQ(refused(std::string(301, '1')), "expression-too-long");
  EXPECT_EQ(refused(std::string(100, '(') + "1"), "expression-too-deep");
  EXPECT_EQ(refused(std::string(200, '-') + "1"), "expression-too-deep");
}

TEST(Expression, BareFoundNeedsOneSort) {
  FoundDimensions mixed = signs();
  mixed.any.reset();
  EXPECT_FALSE(parse_expression("half(found)", mixed, "x").ok());
  EXPECT_TRUE(parse_expression("half(found.bust-drag-lines)", mixed, "x").ok());
}

TEST(Expression, MissingNamesAreToldNotGuessed) {
  Values v = values();
  v.found.reset();
  v.body.clear();
  const auto e = parse_expression(
      "first(half(found), half(body.bust-girth + ease.bust-girth - garment.bust-girth))", signs(),
      "x");
  ASSERT_TRUE(e.ok());
  EXPECT_TRUE(e->uses_found());
  const Evaluated none = evaluate(*e, v);
  EXPECT_FALSE(none.value.has_value());
  EXPECT_EQ(none.missing, (std::vector<std::string>{"found", "body.bust-girth"}));

  v.body["bust-girth"] = 880.0;  // 880 + 60 - 900 = 40 whole
  const Evaluated by_body = evaluate(*e, v);
  EXPECT_DOUBLE_EQ(by_body.value.value_or(0.0), 20.0);
  EXPECT_FALSE(by_body.used_found);
  EXPECT_TRUE(by_body.used_body);

  v.found = FoundAmount{10.0, Of::whole, Taken::cloth};
  const Evaluated by_found = evaluate(*e, v);
  EXPECT_DOUBLE_EQ(by_found.value.value_or(0.0), 5.0);
  EXPECT_TRUE(by_found.used_found);
}

TEST(Expression, DivisionByNothingIsNoNumber) {
  const auto e = parse_expression("6 mm / (1 - 1)", signs(), "x");
  ASSERT_TRUE(e.ok());
  const Evaluated got = evaluate(*e, values());
  EXPECT_FALSE(got.value.has_value());
  EXPECT_TRUE(got.not_finite);
}

// Every measure of a drafted block can be used in an amount, and as what it is: a girth is whole,
// what is of one sleeve, shoulder or armhole is a length.
TEST(Expression, GarmentNamesAgreeWithTheMeasures) {
  for (const std::string_view kind : {"knit-top", "woven-bodice"}) {
    const auto block = draft(kind, testing::skerry_input(kind));
    ASSERT_TRUE(block.ok()) << kind << " " << block.problems()[0].what;
    const auto all = measures(*block);
    EXPECT_GT(all.size(), 12u);
    for (const auto& m : all) {
      const auto d = garment_dimension(m.id);
      ASSERT_TRUE(d.has_value()) << m.id;
      switch (m.kind) {
        case MeasureKind::girth:
          EXPECT_EQ(*d, Dimension::whole) << m.id;
          break;
        case MeasureKind::angle:
          EXPECT_EQ(*d, Dimension::angle) << m.id;
          break;
        case MeasureKind::each:
        case MeasureKind::distance:
          EXPECT_EQ(*d, Dimension::length) << m.id;
          break;
      }
      if (m.body && m.kind == MeasureKind::girth) {
        EXPECT_EQ(body_dimension(*m.body), Dimension::whole) << *m.body;
      }
    }
  }
  EXPECT_EQ(body_dimension("upper-arm-girth"), Dimension::length);
  EXPECT_EQ(body_dimension("no-such-thing"), std::nullopt);
}

}  // namespace
}  // namespace pinwright::knowledge
