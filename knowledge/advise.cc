#include "knowledge/advise.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "engine/diagnosis/reasons.h"
#include "engine/pattern/measurement.h"
#include "knowledge/measured.h"
#include "knowledge/network_of.h"
#include "knowledge/posture.h"
#include "knowledge/proposals.h"
#include "knowledge/tried_out.h"
#include "knowledge/verdict.h"
#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

constexpr double kLeastTold = 0.02;       ///< causes below are left out
constexpr double kLeastProposed = 0.1;    ///< remedies are given from here on
constexpr std::size_t kMostProposed = 5;  ///< causes whose remedies are given

/// The finding that stands for a sign: the present one with an amount, else any of its state.
const Finding* finding_of(const std::vector<Finding>& findings, const std::string& sign,
                          Seen seen) {
  const FindingState state = seen == Seen::present ? FindingState::present : FindingState::absent;
  const Finding* best = nullptr;
  for (const auto& f : findings)
    if (f.sign == sign && f.state == state && (best == nullptr || (!best->amount && f.amount)))
      best = &f;
  return best;
}

/// What is known beside the findings: what was measured, what was noted of the wearer.
struct Beside {
  std::vector<MeasuredFound> measured;
  std::vector<PostureHeard> posture;
};

/// Weighs both in and gives what weighed; what is told in words goes before what was measured.
Beside weigh_beside(const Knowledge& k, const Block& block, const TryOn& tryon,
                    const Values& values, KindNetwork& network, Evidence& evidence) {
  Beside beside;
  if (tryon.wearer) beside.posture = posture_heard(k, tryon.wearer->posture);
  weigh_posture(beside.posture, network);
  for (const auto& m : measured_on(k, block.kind, values)) {
    if (is_told(k, m.entry->sign, tryon.findings)) continue;
    weigh_in(network, m.entry->sign, m.likelihood(), evidence);
    beside.measured.push_back(m);
  }
  return beside;
}

/// The reason that a note gives: from the odds of the prior without it to those with it.
void say_posture(const Cause& cause, double before, const std::vector<PostureHeard>& posture,
                 CauseFound& found) {
  for (const auto& h : posture) {
    if (h.entry == nullptr || h.entry->cause != cause.id || h.entry->prior <= before) continue;
    found.reasons_for.push_back(
        {"", "noted of the wearer: " + h.note,
         std::log(h.entry->prior / (1.0 - h.entry->prior)) - std::log(before / (1.0 - before))});
  }
}

CauseFound cause_found(const KindNetwork& n, const Evidence& evidence, double probability,
                       std::size_t cause, const std::vector<Reason>& why,
                       const std::vector<Finding>& findings,
                       const std::vector<MeasuredFound>& measured) {
  const Cause& c = *n.causes[cause];
  CauseFound found{c.id, c.name, c.kind, c.what, c.check, probability, {}, {}, c.sources};
  for (const auto& r : why) {
    const Sign& sign = *n.signs[r.sign];
    const Finding* f = finding_of(findings, sign.id, evidence[r.sign].leans());
    const auto m = std::find_if(measured.begin(), measured.end(), [&](const MeasuredFound& one) {
      return one.entry->sign == sign.id;
    });
    if (f == nullptr && m == measured.end()) continue;
    (r.log_odds > 0.0 ? found.reasons_for : found.reasons_against)
        .push_back({sign.id, f != nullptr ? said_finding(sign, *f) : m->text, r.log_odds});
  }
  return found;
}

std::vector<std::string> cautions(const Advice& advice, const std::vector<std::string>& elsewhere,
                                  const Knowledge& k, const std::string& kind) {
  std::vector<std::string> all;
  bool cut = false;
  bool sew = false;
  for (const auto& p : advice.proposals) {
    cut = cut || p.on_pattern;
    for (const auto& s : p.steps) sew = sew || s.step.operation == "sew";
  }
  if (cut)
    all.push_back(
        "Alter a copy and keep the old pattern until the new one has been tried on; cut "
        "away from the hand that holds.");
  if (sew)
    all.push_back(
        "Unpick with the blade away from wearer and hand; never press cloth on the "
        "wearer: steam scalds. Switch the machine off to thread it.");
  if (advice.question && advice.question->cost >= 2.0)
    all.push_back(
        "Pin with the points away from the skin, and unpick or snip only with the top "
        "taken off.");
  for (const auto& f : advice.findings) {
    const bool presses = f.sign == "armhole-too-tight" || f.sign == "neckline-too-tight" ||
                         f.sign == "upper-arm-too-tight";
    if (f.state == FindingState::present && presses) {
      all.push_back(
          "This is advice on fit: pain, numbness or swelling that stays is a doctor's "
          "matter.");
      break;
    }
  }
  for (const auto& id : std::set<std::string>(elsewhere.begin(), elsewhere.end())) {
    const Sign* sign = find_sign(k, id);
    all.push_back("Left out: \"" + (sign == nullptr ? id : small_first(sign->name)) +
                  "\" is not looked for on a " + kind + ".");
  }
  return all;
}

}  // namespace

Result<Advice> advise(const Knowledge& k, const Block& block, const TryOn& tryon,
                      std::vector<NotUnderstood> not_understood) {
  Problems problems = check_findings(k, tryon.findings, "/findings");
  if (tryon.wearer) {
    const Problems body = check_measurements(tryon.wearer->body, "/wearer/body");
    problems.insert(problems.end(), body.begin(), body.end());
  }
  if (std::find(k.kinds.begin(), k.kinds.end(), block.kind) == k.kinds.end())
    problems.push_back({"block-kind-unknown", "/block/kind",
                        "nothing is known about a block of kind \"" + block.kind + "\"",
                        "use a block of one of the kinds that the knowledge lists"});
  if (!problems.empty()) return problems;

  Advice advice;
  advice.findings = tryon.findings;
  advice.not_understood = std::move(not_understood);
  const Features features = features_of(k, block, tryon);
  KindNetwork n = network_of(k, block.kind, features);
  std::vector<std::string> elsewhere;
  Evidence evidence = evidence_of(n, tryon.findings, elsewhere);
  const Values values = values_of(block, tryon);
  const Beside beside = weigh_beside(k, block, tryon, values, n, evidence);
  const auto belief = posterior(n.network, evidence);
  if (!belief) return belief.problems();
  std::vector<std::size_t> told = causes_in_play(n, evidence, *belief);
  std::erase_if(told, [&](std::size_t c) { return belief->cause[c] < kLeastTold; });
  const auto why = reasons(n.network, evidence, told);
  if (!why) return why.problems();

  std::size_t proposed = 0;
  for (std::size_t i = 0; i < told.size(); ++i) {
    const std::size_t c = told[i];
    const double p = belief->cause[c];
    advice.causes.push_back(
        cause_found(n, evidence, p, c, (*why)[i], tryon.findings, beside.measured));
    say_posture(*n.causes[c], prior_of(*n.causes[c], block.kind, features), beside.posture,
                advice.causes.back());
    if (p < kLeastProposed || proposed == kMostProposed) continue;
    ++proposed;
    for (auto& one : proposals_for(k, *n.causes[c], block, tryon, values)) {
      try_out(block, one);
      advice.proposals.push_back(std::move(one));
    }
  }

  const Verdict v = verdict(n, evidence, *belief);
  advice.settled = v.settled;
  advice.verdict = v.text;
  auto next = next_step(n, evidence, *belief, tryon, v.settled);
  if (!next) return next.problems();
  advice.question = std::move(next->question);
  advice.questions_left = next->questions_left;
  advice.stopped = std::move(next->stopped);
  auto together = explained(n, evidence, *belief);
  if (together) advice.explanation = std::move(together).value();
  advice.cautions = cautions(advice, elsewhere, k, block.kind);
  if (!together)
    for (const Problem& problem : together.problems())
      advice.cautions.push_back(problem.what + " " + problem.mend);
  return advice;
}

}  // namespace pinwright::knowledge
