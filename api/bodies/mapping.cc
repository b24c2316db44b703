#include "api/bodies/mapping.h"

#include <algorithm>
#include <cmath>

#include "engine/base/units.h"
#include "engine/pattern/measurement.h"

namespace pinwright::api {
namespace {

constexpr double kNeckSideBelowCervicaleMm = 12.0;
constexpr double kScyeOverSurface = 1.065;
constexpr double kUnderBustShare = 0.849;
constexpr double kForwardShare = 0.62;
constexpr double kNeckHalfWidthShare = 0.178;  // of the neck base, as the draft draws it
constexpr double kNeckRiseShare = 0.30;        // of that half width

}  // namespace

const std::vector<std::string_view>& survey_columns() {
  static const std::vector<std::string_view> columns = {"chestcircumference",
                                                        "waistcircumference",
                                                        "buttockcircumference",
                                                        "neckcircumference",
                                                        "neckcircumferencebase",
                                                        "shoulderlength",
                                                        "waistbacklength",
                                                        "interscyei",
                                                        "bicepscircumferenceflexed",
                                                        "handcircumference",
                                                        "headcircumference",
                                                        "sleeveoutseam",
                                                        "shoulderelbowlength",
                                                        "chestdepth",
                                                        "stature",
                                                        "cervicaleheight",
                                                        "acromialheight",
                                                        "axillaheight",
                                                        "chestheight",
                                                        "waistheightomphalion",
                                                        "buttockheight",
                                                        "verticaltrunkcircumferenceusa"};
  return columns;
}

Measurements measurements_of(const SurveyRow& row) {
  const auto mm = [&](const char* column) { return row.mm.at(column); };
  Measurements body;
  body["bust-girth"] = mm("chestcircumference");
  body["waist-girth"] = mm("waistcircumference");
  body["hip-girth"] = mm("buttockcircumference");
  body["neck-base-girth"] = mm("neckcircumferencebase");
  body["neck-girth"] = mm("neckcircumference");
  body["head-girth"] = mm("headcircumference");
  body["hand-girth"] = mm("handcircumference");
  body["shoulder-length"] = mm("shoulderlength");
  body["across-back-width"] = mm("interscyei");
  body["back-waist-length"] = mm("waistbacklength");
  body["upper-arm-girth"] = mm("bicepscircumferenceflexed");
  body["arm-length"] = mm("sleeveoutseam");
  body["upper-arm-length"] = mm("shoulderelbowlength");
  body["trunk-girth"] = mm("verticaltrunkcircumferenceusa");
  body["stature"] = mm("stature");
  body["back-neck-height"] = mm("cervicaleheight");
  body["waist-to-hip-height"] = std::max(100.0, mm("waistheightomphalion") - mm("buttockheight"));

  body["scye-depth"] = kScyeOverSurface * (mm("cervicaleheight") - mm("axillaheight"));
  const double neck_side = mm("cervicaleheight") - kNeckSideBelowCervicaleMm;
  const double along = body["shoulder-length"];
  body["shoulder-drop"] =
      std::clamp(neck_side - mm("acromialheight"), along * std::sin(radians(8.0)),
                 along * std::sin(radians(34.0)));
  body["across-front-width"] = body["across-back-width"] - 15.0;
  body["bust-point-width"] = 0.2 * body["bust-girth"];
  body["under-bust-girth"] = kUnderBustShare * body["bust-girth"];
  const double half_neck = kNeckHalfWidthShare * body["neck-base-girth"];
  const double aside = body["bust-point-width"] / 2.0 - half_neck;
  body["neck-shoulder-point-to-bust-point"] =
      std::hypot(neck_side - mm("chestheight"), kForwardShare * mm("chestdepth"), aside);
  body["front-waist-length"] = body["back-waist-length"] + kNeckRiseShare * half_neck +
                               (body["bust-girth"] - body["under-bust-girth"]) / 6.0;
  return body;
}

Result<std::vector<Wearer>> read_bodies(std::string_view text, std::string_view name) {
  const Result<std::vector<SurveyRow>> rows = read_survey(text, name, survey_columns());
  if (!rows) return rows.problems();
  std::vector<Wearer> wearers;
  Problems problems;
  for (const SurveyRow& row : *rows) {
    Wearer wearer;
    wearer.id = "body-" + std::to_string(wearers.size() + 1);
    wearer.body = measurements_of(row);
    for (Problem& problem :
         check_measurements(wearer.body, std::string(name) + ":" + std::to_string(row.line))) {
      if (problems.size() < kMostProblems) problems.push_back(std::move(problem));
    }
    wearers.push_back(std::move(wearer));
  }
  if (!problems.empty()) return problems;
  return wearers;
}

const std::vector<MappingLine>& mapping_lines() {
  static const std::vector<MappingLine> lines = {
      {"bust-girth", "chestcircumference"},
      {"waist-girth", "waistcircumference (at the navel, not the natural waist)"},
      {"hip-girth", "buttockcircumference"},
      {"neck-base-girth", "neckcircumferencebase"},
      {"neck-girth", "neckcircumference"},
      {"head-girth", "headcircumference"},
      {"hand-girth", "handcircumference"},
      {"shoulder-length", "shoulderlength"},
      {"across-back-width", "interscyei (at the back folds of the arms, over the surface)"},
      {"back-waist-length", "waistbacklength (to the navel's level)"},
      {"upper-arm-girth", "bicepscircumferenceflexed (bent and flexed)"},
      {"arm-length", "sleeveoutseam"},
      {"upper-arm-length", "shoulderelbowlength"},
      {"trunk-girth", "verticaltrunkcircumferenceusa"},
      {"stature", "stature"},
      {"back-neck-height", "cervicaleheight"},
      {"waist-to-hip-height", "waistheightomphalion less buttockheight"},
      {"scye-depth", "estimate: 1.065 x (cervicaleheight less axillaheight)"},
      {"shoulder-drop", "estimate: cervicaleheight less 12 less acromialheight, 8 to 34 degrees"},
      {"across-front-width", "estimate: across-back-width less 15"},
      {"bust-point-width", "estimate: 0.2 x bust-girth"},
      {"under-bust-girth", "estimate: 0.849 x bust-girth"},
      {"neck-shoulder-point-to-bust-point", "estimate: from chestheight and chestdepth"},
      {"front-waist-length",
       "estimate: back-waist-length, neck's rise, a sixth of the bust's fullness"}};
  return lines;
}

}  // namespace pinwright::api
