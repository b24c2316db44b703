#include "api/exchange/measures_json.h"

namespace pinwright::api {

std::string_view to_text(MeasureKind kind) {
  switch (kind) {
    case MeasureKind::girth:
      return "girth";
    case MeasureKind::each:
      return "each";
    case MeasureKind::distance:
      return "distance";
    case MeasureKind::angle:
      return "angle";
  }
  return "";
}

Json to_json(const std::vector<GarmentMeasure>& measures) {
  Json out = Json::array();
  for (const GarmentMeasure& m : measures) {
    Json one = {{"id", m.id}, {"name", m.name}, {"kind", to_text(m.kind)}};
    if (m.kind == MeasureKind::angle) {
      one["value_deg"] = degrees(m.value);
    } else {
      one["value_mm"] = m.value;
    }
    if (m.kind == MeasureKind::girth) one["of"] = "whole";
    if (m.body) one["body"] = *m.body;
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace pinwright::api
