#include "api/desk/proposal.h"

#include <algorithm>

#include "engine/alteration/catalogue.h"

namespace pinwright::api {

namespace {

using knowledge::Advice;
using knowledge::Proposal;
using knowledge::ProposedStep;

Problem unknown(const Advice& advice, const std::string& id) {
  std::string offered;
  for (const Proposal& proposal : advice.proposals) {
    offered += (offered.empty() ? "" : ", ") + proposal.id;
  }
  return {"proposal-unknown", "/proposal",
          "The advice on what was told holds no proposal \"" + id + "\".",
          offered.empty() ? "Nothing is proposed for it: say more of what was seen."
                          : "Take one of: " + offered + "."};
}

void set_amount(Step& step, const ChangeRequest::Amount& amount, Problems& problems) {
  const OperationInfo* operation = find_operation(step.operation);
  const AmountKind kind = operation != nullptr ? operation->amount : AmountKind::none;
  const bool divides = kind == AmountKind::half || kind == AmountKind::whole;
  if (amount.plain && kind != AmountKind::ratio) {
    problems.push_back({"amount-without-unit", amount.place, "The amount does not say its unit.",
                        "Write it with its unit, e.g. \"12 mm half\" or \"3/8 in half\"."});
  } else if (!amount.plain && kind == AmountKind::ratio) {
    problems.push_back({"amount-kind", amount.place, "This step takes a ratio, not a length.",
                        "Write a plain number, e.g. 0.9."});
  } else if (divides && !amount.of) {
    problems.push_back({"of-missing", amount.place, "The amount does not say what it counts.",
                        "Add \"half\" (of the half pattern) or \"whole\" (of the whole garment), "
                        "e.g. \"12 mm half\"."});
  }
  step.amount = amount.amount;
  if (amount.of) step.of = *amount.of;
  const Problems wrong = check_step(step, amount.place);
  problems.insert(problems.end(), wrong.begin(), wrong.end());
}

}  // namespace

Result<std::vector<Step>> proposed_steps(const Advice& advice, const ChangeRequest& request) {
  const auto found =
      std::find_if(advice.proposals.begin(), advice.proposals.end(),
                   [&request](const Proposal& p) { return p.id == request.proposal; });
  if (found == advice.proposals.end()) return unknown(advice, request.proposal);
  if (!found->on_pattern) {
    return Problem{
        "proposal-not-on-pattern", "/proposal",
        "\"" + found->name + "\" is not a change of the pattern: no line moves.",
        "Do it in sewing, pressing or in the choice of size or cloth; or take a proposal "
        "that is on the pattern."};
  }
  std::vector<Step> steps;
  std::vector<std::size_t> amounted;
  for (const ProposedStep& step : found->steps) {
    if (step.has_amount) amounted.push_back(steps.size());
    steps.push_back(step.step);
  }
  if (request.amounts.size() > amounted.size()) {
    return Problem{"amounts-count", "/amounts",
                   std::to_string(request.amounts.size()) + " amounts are given, but " +
                       std::to_string(amounted.size()) + " of the proposal's steps take one.",
                   "Give at most that many, in the order of the steps."};
  }
  Problems problems;
  for (std::size_t i = 0; i < request.amounts.size(); ++i) {
    if (request.amounts[i]) set_amount(steps[amounted[i]], *request.amounts[i], problems);
  }
  if (!problems.empty()) return problems;
  return steps;
}

}  // namespace pinwright::api
