#include "knowledge/joint_choice.h"

#include <algorithm>

#include "knowledge/expression.h"
#include "knowledge/soundness.h"
#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

std::string in_words(const Knowledge& k, const Finding& finding) {
  if (!finding.words.empty()) return finding.words;
  const Sign* sign = find_sign(k, finding.sign);
  return sign == nullptr ? finding.sign : said_finding(*sign, finding);
}

bool is_reason(const CauseFound& cause, const std::string& sign) {
  return std::any_of(cause.reasons_for.begin(), cause.reasons_for.end(),
                     [&sign](const ReasonSaid& r) { return r.sign == sign; });
}

/// What was told of the strongest reason for the cause; one told with an amount goes first.
std::string asked_for(const Knowledge& k, const Advice& advice, const Proposal& proposal) {
  const auto cause = std::find_if(advice.causes.begin(), advice.causes.end(),
                                  [&](const CauseFound& c) { return c.id == proposal.cause; });
  if (cause == advice.causes.end()) return proposal.cause;
  for (const bool with_amount : {true, false})
    for (const ReasonSaid& reason : cause->reasons_for)
      for (const Finding& f : advice.findings)
        if (f.sign == reason.sign && f.state == FindingState::present &&
            (f.amount.has_value() || !with_amount))
          return in_words(k, f);
  return small_first(cause->name);
}

const Proposal* find_proposal(const Advice& advice, const std::string& id) {
  for (const Proposal& p : advice.proposals)
    if (p.id == id) return &p;
  return nullptr;
}

Result<Choice> choose_named(const Knowledge& k, const Advice& advice,
                            const std::vector<std::string>& named) {
  Choice choice;
  Problems problems;
  for (std::size_t i = 0; i < named.size(); ++i) {
    const std::string place = "/together/proposals/" + std::to_string(i);
    const Proposal* proposal = find_proposal(advice, named[i]);
    if (proposal == nullptr) {
      std::string offered;
      for (const Proposal& p : advice.proposals) offered += (offered.empty() ? "" : ", ") + p.id;
      problems.push_back(
          {"proposal-unknown", place,
           "The advice on what was told holds no proposal \"" + named[i].substr(0, 80) + "\".",
           offered.empty() ? "Nothing is proposed for it: say more of what was seen."
                           : "Take some of: " + offered + "."});
      continue;
    }
    const auto twin =
        std::find_if(choice.chosen.begin(), choice.chosen.end(), [&](const Chosen& c) {
          return c.proposal == proposal || c.proposal->cause == proposal->cause;
        });
    if (twin == choice.chosen.end()) {
      choice.chosen.push_back({proposal, asked_for(k, advice, *proposal)});
    } else if (twin->proposal == proposal) {
      problems.push_back(
          {"proposal-twice", place, "\"" + named[i] + "\" is named twice.", "Name it once."});
    } else {
      problems.push_back({"cause-twice", place,
                          "\"" + named[i] + "\" and \"" + twin->proposal->id +
                              "\" are two ways to cure the same cause: it would be cured twice.",
                          "Keep one of the two."});
    }
  }
  if (!problems.empty()) return problems;
  return choice;
}

std::string why_none(const Advice& advice, const CauseFound* cause) {
  if (cause == nullptr) return "no cause is probable enough to be named";
  const std::string name =
      small_first(cause->name) + " (" + said_probability(cause->probability) + ")";
  for (const Proposal& p : advice.proposals)
    if (p.cause == cause->id)
      return "its most probable cause, " + name +
             ", is no matter of the pattern: " + small_first(p.name);
  return "nothing is proposed for its most probable cause, " + name;
}

/// Some amount of the proposal is worked out from what was told of this sign.
bool asks_by(const Knowledge& k, const Proposal& proposal, const std::string& sign) {
  const Cause* cause = find_cause(k, proposal.cause);
  if (cause == nullptr) return false;
  for (const Remedy& remedy : cause->remedies) {
    if (remedy.id != proposal.id) continue;
    for (const RemedyStep& step : remedy.steps) {
      if (step.amount.empty()) continue;
      const auto e = parse_expression(step.amount, found_dimensions(k, *cause), step.operation);
      if (!e) continue;
      for (const std::string& name : e->found_names())
        if (name.empty() || name == sign) return true;
    }
  }
  return false;
}

/// An amount that was told and that none of the chosen proposals asks for: what was seen is put
/// down to a cause that shows elsewhere, and should go with it.
void tell_unasked(const Knowledge& k, const Advice& advice, const Finding& finding,
                  const Proposal& by, Choice& choice) {
  for (const Chosen& c : choice.chosen)
    if (asks_by(k, *c.proposal, finding.sign)) return;
  std::string others;
  for (const Proposal& p : advice.proposals) {
    if (!p.on_pattern || p.cause == by.cause || !asks_by(k, p, finding.sign)) continue;
    others += (others.empty() ? "" : " or ") + p.id;
  }
  choice.left_out.push_back(
      {finding.sign, "",
       "\"" + in_words(k, finding) + "\" is put down to the cause that " + by.id +
           " cures and should go with it; its own amount is asked of no measure" +
           (others.empty() ? "" : ". If it stays, name " + by.id + " and " + others)});
}

}  // namespace

Result<Choice> choose(const Knowledge& k, const Advice& advice,
                      const std::vector<std::string>& named) {
  if (!named.empty()) return choose_named(k, advice, named);
  Choice choice;
  std::vector<std::pair<const Finding*, const Proposal*>> told;
  for (const Finding& finding : advice.findings) {
    if (finding.state != FindingState::present) continue;
    const auto cause =
        std::find_if(advice.causes.begin(), advice.causes.end(),
                     [&](const CauseFound& c) { return is_reason(c, finding.sign); });
    const Proposal* first = nullptr;
    if (cause != advice.causes.end())
      for (const Proposal& p : advice.proposals)
        if (first == nullptr && p.on_pattern && p.cause == cause->id) first = &p;
    const std::string words = in_words(k, finding);
    if (first == nullptr) {
      choice.left_out.push_back(
          {finding.sign, "",
           "\"" + words +
               "\": " + why_none(advice, cause == advice.causes.end() ? nullptr : &*cause)});
      continue;
    }
    if (finding.amount) told.emplace_back(&finding, first);
    const auto before = std::find_if(choice.chosen.begin(), choice.chosen.end(),
                                     [first](const Chosen& c) { return c.proposal == first; });
    if (before == choice.chosen.end()) {
      choice.chosen.push_back({first, words});
    } else if (before->asked_by != words) {
      before->asked_by += " and " + words;
    }
  }
  for (const auto& [finding, by] : told) tell_unasked(k, advice, *finding, *by, choice);
  return choice;
}

}  // namespace pinwright::knowledge
