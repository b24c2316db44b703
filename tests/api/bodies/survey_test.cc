#include "api/bodies/survey.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/api/bodies/invented.h"

namespace pinwright::api {
namespace {

const std::vector<std::string_view> kTwo = {"chest", "waist"};

void expect_told(std::string_view text, const std::string& code, const std::string& place) {
  const auto rows = read_survey(text, "crew.csv", kTwo);
  ASSERT_FALSE(rows.ok()) << text;
  EXPECT_EQ(rows.problems()[0].code, code) << text;
  EXPECT_EQ(rows.problems()[0].place, place) << text;
  EXPECT_FALSE(rows.problems()[0].what.empty());
  EXPECT_FALSE(rows.problems()[0].mend.empty());
}

TEST(Survey, ReadsTheColumnsInAnyOrderAndPassesOverOthers) {
  const auto rows =
      read_survey("row,waist,chest\r\n1,740,920\r\n\r\n2,760.5, 940 \r\n", "crew.csv", kTwo);
  ASSERT_TRUE(rows.ok());
  ASSERT_EQ(rows->size(), 2u);
  EXPECT_EQ((*rows)[0].mm.at("chest"), 920.0);
  EXPECT_EQ((*rows)[1].mm.at("waist"), 760.5);
  EXPECT_EQ((*rows)[1].line, 4u);
}

TEST(Survey, ByteOrderMarkAndMissingLastNewline) {
  EXPECT_TRUE(read_survey("\xef\xbb\xbf"
                          "chest,waist\n920,740",
                          "crew.csv", kTwo)
                  .ok());
}

TEST(Survey, WhatIsWrongIsNamedWithItsLine) {
  expect_told("", "csv-empty", "crew.csv:1");
  expect_told("chest,waist\n", "csv-empty", "crew.csv:1");
  expect_told("chest,hip\n1,2\n", "csv-column-missing", "crew.csv:1");
  expect_told("chest,waist,chest\n1,2,3\n", "csv-column-twice", "crew.csv:1");
  expect_told("chest,waist\n920,740\n920\n", "csv-row-length", "crew.csv:3");
  expect_told("chest,waist\n920,740\n920,wide\n", "csv-cell", "crew.csv:3");
  expect_told("chest,waist\n920,\n", "csv-cell", "crew.csv:2");
  expect_told("chest,waist\n920,nan\n", "csv-cell", "crew.csv:2");
  expect_told("chest,waist\n-920,740\n", "csv-cell", "crew.csv:2");
  expect_told("chest,waist\n920,1e999\n", "csv-cell", "crew.csv:2");
  expect_told("chest,waist\n920,\x1b[31m\n", "csv-cell", "crew.csv:2");
}

TEST(Survey, EveryMissingColumnIsNamedInOnePass) {
  const auto bodies = read_bodies("row\n1\n", "crew.csv");
  ASSERT_FALSE(bodies.ok());
  EXPECT_EQ(bodies.problems().size(), std::min(kMostProblems, survey_columns().size()));
}

TEST(Survey, ManyBadLinesGiveAFewProblems) {
  std::string table = "chest,waist\n";
  for (int i = 0; i < 1000; ++i) table += "a,b\n";
  const auto rows = read_survey(table, "crew.csv", kTwo);
  ASSERT_FALSE(rows.ok());
  EXPECT_EQ(rows.problems().size(), kMostProblems);
}

TEST(Mapping, CentimetresAreNamedAsOutOfRange) {
  std::string row = testing::invented_row(910.0, 0.0, 0.0);
  row.replace(0, row.find(','), "91.0");
  const auto bodies = read_bodies(testing::invented_table() + row, "crew.csv");
  ASSERT_FALSE(bodies.ok());
  EXPECT_EQ(bodies.problems()[0].code, "measurement-range");
  EXPECT_EQ(bodies.problems()[0].place.substr(0, 11), "crew.csv:16");
}

TEST(Mapping, EveryMeasurementHasItsLine) {
  const auto bodies = read_bodies(testing::invented_table(), "crew.csv");
  ASSERT_TRUE(bodies.ok());
  EXPECT_EQ(bodies->size(), 14u);
  for (const auto& [id, mm] : (*bodies)[0].body) {
    EXPECT_TRUE(std::any_of(mapping_lines().begin(), mapping_lines().end(),
                            [&](const MappingLine& line) { return line.measurement == id; }))
        << id;
  }
}

TEST(Mapping, EstimatesGiveTheMeansOfTheirGround) {
  // Means of the 1988 survey (DTIC ADA225094): neck to bust point 268.0, below the breast 769.7,
  // scye depth 185.7.
  SurveyRow means;
  for (const std::string_view column : survey_columns()) means.mm.emplace(column, 1000.0);
  means.mm["chestcircumference"] = 907.1;
  means.mm["neckcircumferencebase"] = 346.2;
  means.mm["cervicaleheight"] = 1408.0;
  means.mm["chestheight"] = 1174.4;
  means.mm["chestdepth"] = 239.4;
  means.mm["axillaheight"] = 1233.6;
  const Measurements body = measurements_of(means);
  EXPECT_NEAR(body.at("neck-shoulder-point-to-bust-point"), 268.0, 2.0);
  EXPECT_NEAR(body.at("under-bust-girth"), 769.7, 1.0);
  EXPECT_NEAR(body.at("scye-depth"), 185.7, 0.5);
}

}  // namespace
}  // namespace pinwright::api
