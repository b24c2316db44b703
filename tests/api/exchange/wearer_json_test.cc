#include "api/exchange/wearer_json.h"

#include <gtest/gtest.h>

#include "api/exchange/fabric_json.h"

namespace pinwright::api {
namespace {

TEST(WearerJson, ReadsBackWhatItWrites) {
  const Wearer wearer{"deckhand-3", {{"bust-girth", 1003.3}, {"waist-girth", 880.0}}, {"stoops"}};
  Problems problems;
  EXPECT_EQ(read_wearer(to_json(wearer), "/wearer", problems), wearer);
  EXPECT_TRUE(problems.empty());
}

TEST(WearerJson, MeasurementsMayCarryTheirUnit) {
  Problems problems;
  const Measurements body = read_measurements(
      Json::parse(R"({"bust-girth": "36 1/4 in", "waist-girth": 740, "hip-girth": "98 cm"})"), "",
      problems);
  ASSERT_TRUE(problems.empty()) << problems[0].what;
  EXPECT_EQ(body,
            (Measurements{{"bust-girth", 920.75}, {"hip-girth", 980.0}, {"waist-girth", 740.0}}));
}

TEST(WearerJson, EveryFaultIsTold) {
  Problems problems;
  read_wearer(Json::parse(R"({"id": 3, "body": {"bust-girth": "92", "burst-girth": 920,
      "waist-girth": 7.4, "hip-girth": []}, "posture": ["erect", 4], "age": 40})"),
              "/wearer", problems);
  std::vector<std::string> told;
  for (const Problem& p : problems) told.push_back(p.code + " " + p.place);
  EXPECT_EQ(told,
            (std::vector<std::string>{
                "type-wrong /wearer/id", "amount-without-unit /wearer/body/bust-girth",
                "type-wrong /wearer/body/hip-girth", "measurement-unknown /wearer/body/burst-girth",
                "measurement-range /wearer/body/waist-girth", "type-wrong /wearer/posture/1",
                "field-unknown /wearer/age"}));
}

TEST(FabricJson, ReadsBackWhatItWrites) {
  const Fabric fabric{"jersey", "Mid-weight cotton jersey", FabricKind::knit, 0.35, 0.1, 0.9};
  Problems problems;
  EXPECT_EQ(read_fabric(to_json(fabric), "", problems), fabric);
  EXPECT_TRUE(problems.empty());
}

TEST(FabricJson, PercentAreNoFractions) {
  Problems problems;
  read_fabric(Json::parse(R"({"kind": "knit", "stretch_across": 35, "recovery": 90})"), "/fabric",
              problems);
  ASSERT_EQ(problems.size(), 2u);
  EXPECT_EQ(problems[0].place, "/fabric/stretch_across");
  EXPECT_EQ(problems[1].place, "/fabric/recovery");
}

}  // namespace
}  // namespace pinwright::api
