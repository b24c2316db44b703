#include "api/desk/together_json.h"

#include <cctype>
#include <cmath>

#include "api/exchange/measures_json.h"
#include "api/exchange/step_json.h"
#include "engine/base/units.h"

namespace pinwright::api {

namespace {

using knowledge::Joint;
using knowledge::JointStep;
using knowledge::LeftOut;
using Part = JointStep::Part;

Json or_null(const std::string& text) { return text.empty() ? Json() : Json(text); }

template <class T, class Write>
Json list(const std::vector<T>& items, Write write) {
  Json out = Json::array();
  for (const T& item : items) out.push_back(write(item));
  return out;
}

Json cure_to_json(const Joint& joint, const SizedCure& cure, const StepNote* note) {
  Json out = to_json(cure.step);
  if (!cure.used) out["amount_mm"] = 0.0;
  Json proposals = Json::array();
  Json by_itself;
  bool assumed = false;
  for (const JointStep& step : joint.input.steps) {
    if (step.part != Part::sized || &knowledge::sized_cure(joint, step) != &cure) continue;
    proposals.push_back(step.proposal);
    assumed = assumed || step.proposed.assumed;
    // Asked for twice: the larger.
    const double amount = step.proposed.step.amount;
    if (by_itself.is_null() || std::abs(amount) > std::abs(by_itself.get<double>()))
      by_itself = amount;
  }
  out["proposals"] = std::move(proposals);
  out["asked_by"] = cure.asked_by;
  out["alone_mm"] = std::move(by_itself);
  out["assumed"] = assumed;
  out["least_mm"] = cure.least;
  out["most_mm"] = cure.most;
  out["at_least"] = cure.at_least;
  out["at_most"] = cure.at_most;
  out["bound_reason"] = or_null(cure.bound_reason);
  out["used"] = cure.used;
  out["text"] = note == nullptr ? Json() : Json(note->text);
  return out;
}

Json steps_to_json(const Joint& joint) {
  Json out = Json::array();
  std::size_t used = 0;
  for (const SizedCure& cure : joint.sizing.cures) {
    const bool told = cure.used && used < joint.sizing.notes.size();
    out.push_back(cure_to_json(joint, cure, told ? &joint.sizing.notes[used] : nullptr));
    if (cure.used) ++used;
  }
  return out;
}

Json plain_steps(const Joint& joint, Part part) {
  Json out = Json::array();
  for (const JointStep& step : joint.input.steps) {
    if (step.part != part) continue;
    Json one = to_json(step.proposed.step);
    one["proposals"] = Json::array({step.proposal});
    one["asked_by"] = Json::array({step.asked_by});
    one["text"] = step.proposed.text;
    out.push_back(std::move(one));
  }
  return out;
}

Json measure_to_json(const Joint& joint, const SizedMeasure& m, bool target) {
  const bool angle = m.kind == MeasureKind::angle;
  const std::string unit = angle ? "_deg" : "_mm";
  const auto said = [angle](double value) { return angle ? degrees(value) : value; };
  Json out = {{"measure", m.measure}, {"name", m.name}, {"kind", to_text(m.kind)}};
  if (m.kind == MeasureKind::girth) out["of"] = "whole";
  out["before" + unit] = said(m.before);
  if (target) out["wanted" + unit] = said(m.wanted);
  out["after" + unit] = said(m.after);
  out[(target ? "left_over" : "drift") + unit] = said(target ? m.left_over : m.after - m.before);
  out["met"] = m.met;
  if (target) out["asked_by"] = m.asked_by;
  out["shares"] = list(m.shares, [&](const Share& share) {
    return Json{{"step", share.cure},
                {"operation", joint.sizing.cures[share.cure].step.operation},
                {"change" + unit, said(share.change)}};
  });
  return out;
}

std::string_view to_text(ConflictMember::Kind kind) {
  switch (kind) {
    case ConflictMember::Kind::target:
      return "target";
    case ConflictMember::Kind::bound:
      return "bound";
    case ConflictMember::Kind::limit:
      return "limit";
  }
  return "";
}

Json member_to_json(const Joint& joint, const ConflictMember& m) {
  const bool angle = m.kind == ConflictMember::Kind::target &&
                     joint.sizing.targets[m.index].kind == MeasureKind::angle;
  Json out = {{"kind", to_text(m.kind)}, {"says", m.says}};
  out[angle ? "would_do_deg" : "would_do_mm"] =
      m.would_do ? Json(angle ? degrees(*m.would_do) : *m.would_do) : Json();
  out["relax"] = or_null(m.relax);
  return out;
}

std::string sentence(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text.ends_with('.') ? text : text + ".";
}

}  // namespace

Json together_to_json(const Joint& joint) {
  const Sizing& sizing = joint.sizing;
  return {{"proposals", joint.input.proposals},
          {"met", sizing.met},
          {"steps", steps_to_json(joint)},
          {"kept", plain_steps(joint, Part::kept)},
          {"sewn", plain_steps(joint, Part::sewn)},
          {"left_out", list(joint.input.left_out,
                            [](const LeftOut& left) {
                              return Json{{"sign", or_null(left.sign)},
                                          {"proposal", or_null(left.proposal)},
                                          {"text", left.text}};
                            })},
          {"targets", list(sizing.targets,
                           [&](const SizedMeasure& m) { return measure_to_json(joint, m, true); })},
          {"held", list(sizing.held,
                        [&](const SizedMeasure& m) { return measure_to_json(joint, m, false); })},
          {"conflicts", list(sizing.conflicts, [&](const SizingConflict& conflict) {
             return Json{{"text", sentence(conflict.text)},
                         {"members", list(conflict.members, [&](const ConflictMember& m) {
                            return member_to_json(joint, m);
                          })}};
           })}};
}

Problems not_met(const Joint& joint) {
  constexpr const char* kMend =
      "Ask for less of one of them, leave one of the proposals out, or take what gives way; "
      "nothing was changed.";
  Problems problems;
  for (const SizingConflict& conflict : joint.sizing.conflicts)
    problems.push_back({"together-conflict", "/together", sentence(conflict.text), kMend});
  if (!problems.empty()) return problems;
  std::string missed;
  for (const SizedMeasure& m : joint.sizing.targets)
    if (!m.met) missed += (missed.empty() ? "" : ", ") + m.name;
  return {{"together-not-met", "/together",
           "No amounts were found with which all comes out as asked" +
               (missed.empty() ? "." : "; it fails at: " + missed + "."),
           kMend}};
}

}  // namespace pinwright::api
