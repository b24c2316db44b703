#include "api/exchange/proof_json.h"

#include <gtest/gtest.h>

#include <numbers>

#include "api/exchange/measures_json.h"

namespace pinwright::api {
namespace {

TEST(ProofJson, EveryPartIsWrittenWithItsUnit) {
  Proof proof;
  proof.seams = {{"side",
                  "Side seam",
                  230.5,
                  230.0,
                  0.5,
                  0.5,
                  {{"end", 230.5, 230.0, 0.5, 0.5, 0.01, true}},
                  true}};
  proof.bindings = {{"neck-binding", 400.0, 360.0, 0.9, 0.9, true}};
  proof.joins = {{"hem-over-side", "Hem over side", 0.25, true}};
  proof.outlines = {
      {"front", {{"outline-open", "piece front", "It is open.", "Close it."}}, false}};
  proof.moved = {{"front", "neckline", 9.0, 120.0, 111.0, false}};
  proof.measures = {{"bust-girth", "Bust", MeasureKind::girth, 1000.0, 1010.0, 1005.0},
                    {"shoulder-slope", "Slope", MeasureKind::angle, std::numbers::pi / 6, 0.0, {}}};
  proof.failures = {{"outline-open", "piece front", "It is open.", "Close it."}};
  const Json j = to_json(proof);
  EXPECT_EQ(j["pass"], false);
  EXPECT_EQ(j["seams"][0]["sections"][0]["notch_offset_mm"], 0.01);
  EXPECT_EQ(j["seams"][0]["ease_found_mm"], 0.5);
  EXPECT_EQ(j["bindings"][0]["strip_mm"], 360.0);
  EXPECT_EQ(j["joins"][0]["deviation_deg"], 0.25);
  EXPECT_EQ(j["outlines"][0]["problems"][0]["mend"], "Close it.");
  EXPECT_EQ(j["moved"][0]["most_mm"], 9.0);
  EXPECT_EQ(j["measures"][0]["target_mm"], 1005.0);
  EXPECT_EQ(j["measures"][0]["of"], "whole");
  EXPECT_NEAR(j["measures"][1]["before_deg"].get<double>(), 30.0, 1e-12);
  EXPECT_FALSE(j["measures"][1].contains("before_mm"));
  EXPECT_FALSE(j["measures"][1].contains("target_deg"));
  EXPECT_EQ(j["failures"][0]["code"], "outline-open");
}

TEST(ProofJson, NotesNameTheirPieces) {
  const Json j = to_json(std::vector<StepNote>{{1, "front: closed 9 mm", {"front"}, {"sleeve"}}});
  EXPECT_EQ(j.dump(),
            R"([{"step":1,"text":"front: closed 9 mm","pieces":["front"],"follow":["sleeve"]}])");
}

TEST(MeasuresJson, EachHasAUnit) {
  const Json j = to_json(std::vector<GarmentMeasure>{
      {"bust-girth", "Bust", MeasureKind::girth, 1000.0, "bust-girth"},
      {"shoulder-slope", "Slope", MeasureKind::angle, std::numbers::pi, std::nullopt}});
  EXPECT_EQ(j[0]["value_mm"], 1000.0);
  EXPECT_EQ(j[0]["of"], "whole");
  EXPECT_EQ(j[0]["body"], "bust-girth");
  EXPECT_EQ(j[1]["value_deg"], 180.0);
  EXPECT_FALSE(j[1].contains("body"));
}

TEST(Dump, BytesThatAreNoTextCannotStopAnAnswer) {
  EXPECT_NO_THROW(dump(problems_to_json({{"x", "", std::string("\xFF"), ""}})));
}

}  // namespace
}  // namespace pinwright::api
