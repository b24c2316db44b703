#include "api/exchange/seam_json.h"

namespace pinwright::api {
namespace {

std::string text(const Json& value, const char* name) { return value.at(name).get<std::string>(); }

Json run(const std::vector<RunPart>& parts) {
  Json out = Json::array();
  for (const RunPart& part : parts) {
    out.push_back({{"piece", part.piece}, {"edge", part.edge}, {"reversed", part.reversed}});
  }
  return out;
}

std::vector<RunPart> run_from(const Json& list) {
  std::vector<RunPart> out;
  for (const Json& v : list) {
    out.push_back({text(v, "piece"), text(v, "edge"), v.at("reversed").get<bool>()});
  }
  return out;
}

}  // namespace

Json to_json(const Seam& seam) {
  Json sections = Json::array();
  for (const SeamSection& s : seam.sections) {
    sections.push_back({{"notch_a", s.notch_a}, {"notch_b", s.notch_b}, {"ease_mm", s.ease_mm}});
  }
  return {{"id", seam.id},
          {"name", seam.name},
          {"a", run(seam.a)},
          {"b", run(seam.b)},
          {"sections", std::move(sections)}};
}

Seam seam_from(const Json& value) {
  Seam out{
      text(value, "id"), text(value, "name"), run_from(value.at("a")), run_from(value.at("b")), {}};
  for (const Json& v : value.at("sections")) {
    out.sections.push_back({text(v, "notch_a"), text(v, "notch_b"), v.at("ease_mm").get<double>()});
  }
  return out;
}

Json to_json(const Join& join) {
  Json corners = Json::array();
  for (const CornerRef& c : join.corners) {
    corners.push_back({{"piece", c.piece}, {"before", c.before}, {"after", c.after}});
  }
  return {{"id", join.id},
          {"name", join.name},
          {"corners", std::move(corners)},
          {"target_rad", join.target_rad}};
}

Join join_from(const Json& value) {
  Join out{text(value, "id"), text(value, "name"), {}, value.at("target_rad").get<double>()};
  for (const Json& v : value.at("corners")) {
    out.corners.push_back({text(v, "piece"), text(v, "before"), text(v, "after")});
  }
  return out;
}

Json to_json(const Binding& binding) {
  return {{"id", binding.id},
          {"piece", binding.piece},
          {"opening", run(binding.opening)},
          {"copies", binding.copies},
          {"ratio", binding.ratio},
          {"finished_width_mm", binding.finished_width_mm}};
}

Binding binding_from(const Json& value) {
  return {text(value, "id"),
          text(value, "piece"),
          run_from(value.at("opening")),
          value.at("copies").get<int>(),
          value.at("ratio").get<double>(),
          value.at("finished_width_mm").get<double>()};
}

Json to_json(const Lining& lining) { return {{"piece", lining.piece}, {"shell", lining.shell}}; }

Lining lining_from(const Json& value) { return {text(value, "piece"), text(value, "shell")}; }

}  // namespace pinwright::api
