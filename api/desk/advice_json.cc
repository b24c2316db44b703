#include "api/desk/advice_json.h"

#include <cmath>

#include "api/desk/knowledge_json.h"
#include "api/exchange/finding_json.h"
#include "api/exchange/step_json.h"
#include "engine/alteration/catalogue.h"
#include "engine/diagnosis/network.h"

namespace pinwright::api {

namespace {

using knowledge::CauseFound;
using knowledge::Knowledge;
using knowledge::Proposal;
using knowledge::ProposedStep;
using knowledge::ReasonSaid;

template <class T, class Write>
Json list(const std::vector<T>& items, Write write) {
  Json out = Json::array();
  for (const T& item : items) out.push_back(write(item));
  return out;
}

Json finding_to_json(const Finding& finding) {
  const bool told = finding.amount.has_value();
  return {{"sign", finding.sign},
          {"zone", finding.zone},
          {"side", to_text(finding.side)},
          {"amount_mm", told ? Json(finding.amount->mm) : Json()},
          {"of", told ? Json(to_text(finding.amount->of)) : Json()},
          {"taken", told ? Json(to_text(finding.amount->taken)) : Json()},
          {"takes_up_mm", told ? Json(finding.amount->cloth_mm()) : Json()},
          {"state", to_text(finding.state)},
          {"posture", finding.posture},
          {"words", finding.words},
          {"begin", finding.end > 0 ? Json(finding.begin) : Json()},
          {"end", finding.end > 0 ? Json(finding.end) : Json()},
          {"sure", finding.sure}};
}

Json reason_to_json(const ReasonSaid& reason) {
  return {{"sign", reason.sign}, {"text", reason.text}, {"log_odds", reason.log_odds}};
}

Json cause_to_json(const Knowledge& k, const CauseFound& cause) {
  return {{"id", cause.id},
          {"name", cause.name},
          {"kind", to_text(cause.kind)},
          {"probability", cause.probability},
          {"for", list(cause.reasons_for, reason_to_json)},
          {"against", list(cause.reasons_against, reason_to_json)},
          {"what", cause.what},
          {"check", cause.check},
          {"sources", sources_to_json(k, cause.sources)}};
}

Json step_to_json(const ProposedStep& step) {
  const OperationInfo* operation = find_operation(step.step.operation);
  const bool ratio = operation != nullptr && operation->amount == AmountKind::ratio;
  Json out = {{"operation", step.step.operation}};
  for (const auto& [key, value] : step.step.options) out[key] = value;
  const Json plain = to_json(step.step);  // knows what of the amount is written for which operation
  if (ratio) out["amount"] = step.step.amount;
  out["amount_mm"] = step.has_amount && !ratio ? Json(step.step.amount) : Json();
  out["of"] = step.has_amount && !ratio && plain.contains("of") ? plain["of"] : Json();
  out["side"] = to_text(step.step.side);
  out["assumed"] = step.assumed;
  out["worth_making"] = step.worth_making;
  out["limit"] = step.limit.empty() ? Json() : Json(step.limit);
  out["text"] = step.text;
  return out;
}

Json proposal_to_json(const Knowledge& k, const Proposal& proposal) {
  return {{"id", proposal.id},
          {"cause", proposal.cause},
          {"name", proposal.name},
          {"on_pattern", proposal.on_pattern},
          {"suits", proposal.suits},
          {"beyond", proposal.beyond.empty() ? Json() : Json(proposal.beyond)},
          {"steps", list(proposal.steps, step_to_json)},
          {"follow", proposal.follow},
          {"sources", sources_to_json(k, proposal.sources)}};
}

}  // namespace

Json findings_to_json(const std::vector<Finding>& findings) {
  return list(findings, finding_to_json);
}

Json not_understood_to_json(const std::vector<knowledge::NotUnderstood>& words) {
  return list(words, [](const knowledge::NotUnderstood& run) {
    return Json{{"words", run.words}, {"at", run.at}, {"nearest", run.nearest}};
  });
}

Json remarks_to_json(const knowledge::Understood& heard) {
  const auto answer = [](const knowledge::AskBack::Answer& one) {
    return Json{{"text", one.text}, {"finding", finding_to_json(one.finding)}};
  };
  return {{"style", heard.style},
          {"beyond_pattern",
           list(heard.beyond_pattern,
                [](const knowledge::ScopeNote& note) {
                  return Json{{"words", note.words}, {"at", note.at}, {"note", note.note}};
                })},
          {"ask_back", list(heard.ask_back,
                            [&](const knowledge::AskBack& ask) {
                              return Json{{"finding", ask.finding},
                                          {"question", ask.question},
                                          {"answers", list(ask.answers, answer)}};
                            })},
          {"contradictions", list(heard.contradictions, [](const knowledge::Contradiction& two) {
             return Json{{"present", two.present}, {"absent", two.absent}, {"what", two.what}};
           })}};
}

Json causes_to_json(const Knowledge& k, const std::vector<CauseFound>& causes) {
  return list(causes, [&k](const CauseFound& cause) { return cause_to_json(k, cause); });
}

Json proposals_to_json(const Knowledge& k, const std::vector<Proposal>& proposals) {
  return list(proposals, [&k](const Proposal& p) { return proposal_to_json(k, p); });
}

Json advice_to_json(const Knowledge& k, const knowledge::Advice& advice) {
  Json question;
  if (advice.question) {
    question = {{"sign", advice.question->sign},
                {"asks", advice.question->ask},
                {"gain_bits", advice.question->gain_bits},
                {"cost", advice.question->cost}};
  }
  Json explanation;
  if (const auto& best = advice.explanation) {
    explanation = {
        {"causes", best->causes},
        {"next", best->next},
        {"times_next", std::isfinite(best->times_next) ? Json(best->times_next) : Json()},
        {"text", best->text}};
  }
  return {{"findings", findings_to_json(advice.findings)},
          {"not_understood", not_understood_to_json(advice.not_understood)},
          {"verdict", advice.verdict},
          {"settled", advice.settled},
          {"causes",
           list(advice.causes, [&k](const CauseFound& cause) { return cause_to_json(k, cause); })},
          {"explanation", std::move(explanation)},
          {"question", std::move(question)},
          {"questions_left", advice.questions_left},
          {"stopped", advice.stopped.empty() ? Json() : Json(advice.stopped)},
          {"proposals",
           list(advice.proposals, [&k](const Proposal& p) { return proposal_to_json(k, p); })},
          {"cautions", advice.cautions}};
}

}  // namespace pinwright::api
