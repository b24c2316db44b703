#include "api/desk/foresight_json.h"

#include "api/desk/advice_json.h"
#include "engine/pattern/tryon.h"

namespace pinwright::api {

namespace {

Json foreseen_to_json(const knowledge::Foreseen& f) {
  return {{"sign", f.sign},
          {"name", f.name},
          {"zone", f.zone},
          {"measured", f.measured},
          {"probability", f.probability},
          {"amount_mm", f.amount ? Json(f.amount->mm) : Json()},
          {"of", f.amount && f.of_girth ? Json(to_text(f.amount->of)) : Json()},
          {"why", f.why},
          {"cures", f.cures}};
}

Json compared_to_json(const knowledge::Compared& m) {
  return {{"measure", m.measure},
          {"name", m.name},
          {"garment_mm", m.garment_mm},
          {"body_mm", m.body_mm},
          {"ease_mm", m.ease_mm},
          {"lacks_mm", m.lacks_mm()},
          {"of", m.of_girth ? Json("whole") : Json()}};
}

Json note_to_json(const knowledge::Knowledge& k, const knowledge::PostureHeard& heard) {
  const auto* cause = heard.entry == nullptr ? nullptr : find_cause(k, heard.entry->cause);
  return {{"note", heard.note},
          {"cause", cause == nullptr ? Json() : Json(cause->id)},
          {"text", cause == nullptr ? Json() : Json(cause->name)}};
}

}  // namespace

Json foresight_to_json(const knowledge::Knowledge& k, const knowledge::Foresight& foresight) {
  Json out{{"verdict", foresight.verdict},
           {"findings", Json::array()},
           {"measures", Json::array()},
           {"posture", Json::array()}};
  for (const auto& f : foresight.findings) out["findings"].push_back(foreseen_to_json(f));
  for (const auto& m : foresight.measures) out["measures"].push_back(compared_to_json(m));
  for (const auto& h : foresight.posture) out["posture"].push_back(note_to_json(k, h));
  out["causes"] = causes_to_json(k, foresight.causes);
  out["proposals"] = proposals_to_json(k, foresight.proposals);
  return out;
}

}  // namespace pinwright::api
