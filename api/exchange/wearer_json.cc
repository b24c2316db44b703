#include "api/exchange/wearer_json.h"

#include "api/exchange/amount_text.h"
#include "api/exchange/object_reader.h"
#include "engine/pattern/measurement.h"

namespace pinwright::api {

Json to_json(const Measurements& body) {
  Json out = Json::object();
  for (const auto& [id, mm] : body) out[id] = mm;
  return out;
}

Measurements read_measurements(const Json& value, const std::string& place, Problems& problems) {
  Measurements out;
  if (!value.is_object()) {
    problems.push_back({"type-wrong", place, "Here stands " + shown(value) + ".",
                        "Write an object of measurements: {\"bust-girth\": 920}."});
    return out;
  }
  for (const auto& item : value.items()) {
    const std::string where = member(place, item.key());
    if (item.value().is_number()) {
      out[item.key()] = item.value().get<double>();
    } else if (item.value().is_string()) {
      auto mm = read_amount(item.value().get_ref<const std::string&>(), where);
      if (mm.ok()) {
        out[item.key()] = mm.value();
      } else {
        problems.insert(problems.end(), mm.problems().begin(), mm.problems().end());
      }
    } else {
      problems.push_back({"type-wrong", where, "Here stands " + shown(item.value()) + ".",
                          "Write a number of mm, or text with a unit: \"92 cm\"."});
    }
  }
  const Problems unsound = check_measurements(out, place);
  problems.insert(problems.end(), unsound.begin(), unsound.end());
  return out;
}

Json to_json(const Wearer& wearer) {
  return {{"id", wearer.id}, {"body", to_json(wearer.body)}, {"posture", wearer.posture}};
}

Wearer read_wearer(const Json& value, const std::string& place, Problems& problems) {
  ObjectReader in(value, place, problems);
  Wearer out;
  out.id = in.text("id", Need::optional, 64);
  if (const Json* body = in.field("body", Need::required)) {
    out.body = read_measurements(*body, in.place_of("body"), problems);
  }
  out.posture = in.texts("posture", Need::optional);
  in.refuse_rest();
  return out;
}

}  // namespace pinwright::api
