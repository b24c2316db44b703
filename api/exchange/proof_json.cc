#include "api/exchange/proof_json.h"

#include "api/exchange/measures_json.h"

namespace pinwright::api {
namespace {

Json one(const SectionProof& s) {
  return {{"upto", s.upto},
          {"a_mm", s.a_mm},
          {"b_mm", s.b_mm},
          {"ease_wanted_mm", s.ease_wanted},
          {"ease_found_mm", s.ease_found},
          {"notch_offset_mm", s.notch_offset_mm},
          {"ok", s.ok}};
}

Json one(const BindingProof& b) {
  return {{"binding", b.binding},         {"opening_mm", b.opening_mm},
          {"strip_mm", b.strip_mm},       {"ratio_wanted", b.ratio_wanted},
          {"ratio_found", b.ratio_found}, {"ok", b.ok}};
}

Json one(const JoinProof& j) {
  return {{"join", j.join}, {"name", j.name}, {"deviation_deg", j.deviation_deg}, {"ok", j.ok}};
}

Json one(const LimitProof& l) {
  return {{"id", l.id},
          {"name", l.name},
          {"quantity", l.quantity},
          {"sense", l.at_most ? "at-most" : "at-least"},
          {"bound_mm", l.bound_mm},
          {"found_mm", l.found_mm},
          {"ok", l.ok}};
}

Json one(const OutlineProof& o) {
  return {{"piece", o.piece}, {"problems", problems_to_json(o.problems)}, {"ok", o.ok}};
}

Json one(const Moved& m) {
  return {{"piece", m.piece},         {"edge", m.edge},         {"most_mm", m.most_mm},
          {"before_mm", m.before_mm}, {"after_mm", m.after_mm}, {"same_bits", m.same_bits}};
}

Json one(const MeasureProof& m) {
  const bool angle = m.kind == MeasureKind::angle;
  const std::string unit = angle ? "_deg" : "_mm";
  const auto said = [angle](double value) { return angle ? degrees(value) : value; };
  Json out = {{"id", m.id}, {"name", m.name}, {"kind", to_text(m.kind)}};
  out["before" + unit] = said(m.before);
  out["after" + unit] = said(m.after);
  if (m.target) out["target" + unit] = said(*m.target);
  if (m.kind == MeasureKind::girth) out["of"] = "whole";
  return out;
}

Json one(const SeamProof& s);

template <class Part>
Json all(const std::vector<Part>& parts) {
  Json out = Json::array();
  for (const Part& part : parts) out.push_back(one(part));
  return out;
}

Json one(const SeamProof& s) {
  return {{"seam", s.seam},
          {"name", s.name},
          {"a_mm", s.a_mm},
          {"b_mm", s.b_mm},
          {"ease_wanted_mm", s.ease_wanted},
          {"ease_found_mm", s.ease_found},
          {"sections", all(s.sections)},
          {"ok", s.ok}};
}

}  // namespace

Json to_json(const Proof& proof) {
  return {{"pass", proof.pass},
          {"failures", problems_to_json(proof.failures)},
          {"seams", all(proof.seams)},
          {"bindings", all(proof.bindings)},
          {"joins", all(proof.joins)},
          {"limits", all(proof.limits)},
          {"outlines", all(proof.outlines)},
          {"moved", all(proof.moved)},
          {"measures", all(proof.measures)}};
}

Json to_json(const std::vector<StepNote>& notes) {
  Json out = Json::array();
  for (const StepNote& note : notes) {
    out.push_back({{"step", note.step},
                   {"text", note.text},
                   {"pieces", note.pieces},
                   {"follow", note.follow}});
  }
  return out;
}

}  // namespace pinwright::api
