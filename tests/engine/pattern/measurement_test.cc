#include "engine/pattern/measurement.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <set>

namespace pinwright {
namespace {

TEST(Measurement, EachIsKnownOnceWithWordsAndARange) {
  std::set<std::string_view> ids;
  for (const MeasurementInfo& info : known_measurements()) {
    EXPECT_TRUE(ids.insert(info.id).second) << info.id;
    EXPECT_FALSE(info.name.empty());
    EXPECT_GT(info.meaning.size(), 20u) << info.id;
    EXPECT_LT(info.least_mm, info.most_mm) << info.id;
    EXPECT_EQ(find_measurement(info.id), &info);
    EXPECT_EQ(info.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"), std::string_view::npos);
  }
  EXPECT_EQ(find_measurement("bust"), nullptr);
}

TEST(Measurement, EndsOfTheRangeAreIn) {
  for (const MeasurementInfo& info : known_measurements()) {
    const std::string id(info.id);
    EXPECT_TRUE(check_measurements({{id, info.least_mm}}, "").empty());
    EXPECT_TRUE(check_measurements({{id, info.most_mm}}, "").empty());
    EXPECT_EQ(check_measurements({{id, std::nextafter(info.most_mm, 1e9)}}, "").size(), 1u);
  }
}

TEST(Measurement, UnknownOnesOfferTheNearest) {
  const Problems problems = check_measurements({{"bust-girht", 920.0}}, "/wearer/body");
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].code, "measurement-unknown");
  EXPECT_EQ(problems[0].place, "/wearer/body/bust-girht");
  EXPECT_NE(problems[0].mend.find("\"bust-girth\""), std::string::npos);
}

TEST(Measurement, AnOverlongNameIsNotRepeatedInFull) {
  const Problems problems = check_measurements({{std::string(100000, 'x'), 1.0}}, "");
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_LT(problems[0].what.size(), 200u);
}

TEST(Measurement, SlipsOfUnitAndNumbersThatAreNone) {
  const double inf = std::numeric_limits<double>::infinity();
  const Problems problems = check_measurements(
      {{"bust-girth", 92.0}, {"waist-girth", std::nan("")}, {"hip-girth", inf}, {"nose", 1.0}},
      "/body");
  ASSERT_EQ(problems.size(), 4u);  // all in one pass
  for (const Problem& problem : problems) {
    EXPECT_EQ(problem.code,
              problem.place == "/body/nose" ? "measurement-unknown" : "measurement-range");
    EXPECT_FALSE(problem.mend.empty());
  }
}

// Smallest and largest of 996 women, measured by hand, out of Gordon et al., 2012 Anthropometric
// Survey of U.S. Army Personnel, NATICK/TR-15/007 (2014; public domain).
TEST(Measurement, RangesHoldASurveyedPopulation) {
  struct Row {
    const char* id;
    double least;
    double most;
  };
  for (const Row& row :
       {Row{"bust-girth", 695, 1266}, Row{"waist-girth", 611, 1334}, Row{"hip-girth", 798, 1306},
        Row{"neck-base-girth", 302, 450}, Row{"neck-girth", 278, 410}, Row{"head-girth", 511, 620},
        Row{"hand-girth", 160, 213}, Row{"shoulder-length", 107, 175},
        Row{"across-back-width", 270, 478}, Row{"upper-arm-girth", 216, 435},
        Row{"arm-length", 444, 640}, Row{"back-waist-length", 356, 532}, Row{"stature", 1409, 1829},
        Row{"wrist-girth", 124, 182}}) {
    EXPECT_TRUE(check_measurements({{row.id, row.least}}, "").empty()) << row.id;
    EXPECT_TRUE(check_measurements({{row.id, row.most}}, "").empty()) << row.id;
  }
}

}  // namespace
}  // namespace pinwright
