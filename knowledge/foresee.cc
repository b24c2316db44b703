#include "knowledge/foresee.h"

#include <algorithm>

#include "engine/pattern/measurement.h"
#include "engine/pattern/measures.h"
#include "knowledge/features.h"
#include "knowledge/measured.h"
#include "knowledge/network_of.h"
#include "knowledge/proposals.h"
#include "knowledge/told_signs.h"
#include "knowledge/tried_out.h"
#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

constexpr double kLeastCause = 0.1;
constexpr std::size_t kMostCauses = 5;
constexpr double kCauseRaised = 0.05;

std::vector<Compared> compared(const Block& block, const Measurements& body) {
  std::vector<Compared> all;
  for (const GarmentMeasure& m : measures(block)) {
    if (!m.body || m.kind == MeasureKind::angle) continue;
    const auto measured = body.find(*m.body);
    if (measured == body.end()) continue;
    const auto ease = block.ease.find(*m.body);
    all.push_back({m.id, m.name, m.value, measured->second,
                   ease == block.ease.end() ? 0.0 : ease->second, m.kind == MeasureKind::girth});
  }
  return all;
}

/// Network, evidence and what both say, and the same without them.
struct Belief {
  KindNetwork network;
  Evidence evidence;
  Posterior causes;
  std::vector<double> signs;
  Posterior causes_before;
  std::vector<double> signs_before;
};

Result<Belief> believe(const Knowledge& k, const Block& block, const TryOn& worn,
                       const std::vector<MeasuredFound>& measured,
                       const std::vector<PostureHeard>& heard) {
  Belief b;
  b.network = network_of(k, block.kind, features_of(k, block, worn));
  b.evidence.assign(b.network.signs.size(), Seen::unknown);
  const auto causes_before = posterior(b.network.network, b.evidence);
  if (!causes_before) return causes_before.problems();
  const auto signs_before = predict_signs(b.network.network, b.evidence);
  if (!signs_before) return signs_before.problems();
  weigh_posture(heard, b.network);
  for (const auto& m : measured) weigh_in(b.network, m.entry->sign, m.likelihood(), b.evidence);
  const auto causes = posterior(b.network.network, b.evidence);
  if (!causes) return causes.problems();
  const auto signs = predict_signs(b.network.network, b.evidence);
  if (!signs) return signs.problems();
  b.causes = *causes;
  b.signs = *signs;
  b.causes_before = *causes_before;
  b.signs_before = *signs_before;
  return b;
}

/// Indices of the causes that were raised, most probable first.
std::vector<std::size_t> raised(const Belief& b) {
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < b.network.causes.size(); ++i)
    if (b.causes.cause[i] >= kLeastCause &&
        b.causes.cause[i] - b.causes_before.cause[i] >= kCauseRaised)
      all.push_back(i);
  std::stable_sort(all.begin(), all.end(), [&](std::size_t x, std::size_t y) {
    return b.causes.cause[x] > b.causes.cause[y];
  });
  if (all.size() > kMostCauses) all.resize(kMostCauses);
  return all;
}

std::vector<std::string> cures_of(const Knowledge& k, const std::string& sign,
                                  const std::vector<Proposal>& proposals) {
  std::vector<std::string> ids;
  for (const auto& p : proposals) {
    const Cause* cause = find_cause(k, p.cause);
    if (cause == nullptr || !p.on_pattern) continue;
    const auto made = made_by(k, *cause);
    if (std::any_of(made.begin(), made.end(), [&](const auto& m) { return m.first == sign; }))
      ids.push_back(p.id);
  }
  return ids;
}

/// "expected from: body longer than the block; ..." by the causes that make the sign.
std::string why(const Knowledge& k, const std::string& sign, const Belief& b,
                const std::vector<std::size_t>& causes) {
  std::string text;
  for (const std::size_t c : causes) {
    const auto made = made_by(k, *b.network.causes[c]);
    if (std::none_of(made.begin(), made.end(), [&](const auto& m) { return m.first == sign; }))
      continue;
    text += (text.empty() ? "it would follow from: " : "; ") +
            small_first(b.network.causes[c]->name) + " (" + said_probability(b.causes.cause[c]) +
            ")";
  }
  return text;
}

std::vector<Foreseen> foreseen(const Knowledge& k, const Belief& b,
                               const std::vector<MeasuredFound>& measured,
                               const std::vector<std::size_t>& causes,
                               const std::vector<Proposal>& proposals) {
  std::vector<Foreseen> all;
  for (std::size_t i = 0; i < b.network.signs.size(); ++i) {
    const Sign& sign = *b.network.signs[i];
    const auto m = std::find_if(measured.begin(), measured.end(), [&](const MeasuredFound& one) {
      return one.entry->sign == sign.id;
    });
    Foreseen f{sign.id, sign.name, sign.zone, {}, false, b.signs[i], m != measured.end(), "", {}};
    if (f.measured) {
      f.amount = m->amount;
      f.of_girth = m->of_girth;
      f.why = m->text;
    } else {
      if (is_told_sign(sign.id)) continue;  // nobody sees it
      if (b.signs[i] < kLeastForeseen || b.signs[i] - b.signs_before[i] < kLeastRaised) continue;
      f.why = why(k, sign.id, b, causes);
      if (f.why.empty()) continue;
    }
    f.cures = cures_of(k, sign.id, proposals);
    all.push_back(std::move(f));
  }
  std::stable_sort(all.begin(), all.end(), [](const Foreseen& x, const Foreseen& y) {
    if (x.measured != y.measured) return x.measured;
    return x.probability > y.probability;
  });
  return all;
}

CauseFound cause_told(const Cause& c, double probability, const Knowledge& k,
                      const std::vector<MeasuredFound>& measured,
                      const std::vector<PostureHeard>& heard) {
  CauseFound found{c.id, c.name, c.kind, c.what, c.check, probability, {}, {}, c.sources};
  const auto made = made_by(k, c);
  for (const auto& m : measured)
    if (std::any_of(made.begin(), made.end(),
                    [&](const auto& one) { return one.first == m.entry->sign; }))
      found.reasons_for.push_back({m.entry->sign, m.text, 0.0});
  for (const auto& h : heard)
    if (h.entry != nullptr && h.entry->cause == c.id)
      found.reasons_for.push_back({"", "noted of the wearer: " + h.note, 0.0});
  return found;
}

std::string said(const Foresight& f) {
  std::size_t read = 0;
  for (const auto& one : f.findings) read += one.measured ? 1 : 0;
  if (f.findings.empty() && f.causes.empty())
    return f.measures.empty() ? "Nothing can be foreseen: no measurement of the wearer stands "
                                "against a measure of "
                                "this block."
                              : "Nothing is to be expected: wherever the wearer was measured the "
                                "block has body and "
                                "ease.";
  std::string text = read == 0 ? "The measures agree; the notes alone give reason to look"
                               : "The measures show " + std::to_string(read) +
                                     (read == 1 ? " thing" : " things") +
                                     " to mend on paper before cutting";
  if (f.findings.size() > read)
    text +=
        ", and a toile would probably show " + std::to_string(f.findings.size() - read) + " more";
  return text + ".";
}

}  // namespace

Result<Foresight> foresee(const Knowledge& k, const Block& block, const TryOn& tryon) {
  TryOn worn = tryon;
  if (!worn.wearer && !block.drafted_for.body.empty()) worn.wearer = block.drafted_for;
  Problems problems;
  if (!worn.wearer)
    problems.push_back({"wearer-missing", "/wearer", "it is not said who is to wear it",
                        "give the wearer's measurements: {\"body\": {\"bust-girth\": 920, ...}}"});
  else
    problems = check_measurements(worn.wearer->body, "/wearer/body");
  if (std::find(k.kinds.begin(), k.kinds.end(), block.kind) == k.kinds.end())
    problems.push_back({"block-kind-unknown", "/block/kind",
                        "nothing is known about a block of kind \"" + block.kind + "\"",
                        "use a block of one of the kinds that the knowledge lists"});
  if (!problems.empty()) return problems;

  Foresight out;
  const Values values = values_of(block, worn);
  const auto measured = measured_on(k, block.kind, values);
  out.measures = compared(block, worn.wearer->body);
  out.posture = posture_heard(k, worn.wearer->posture);
  const auto belief = believe(k, block, worn, measured, out.posture);
  if (!belief) return belief.problems();
  worn.findings = as_findings(k, measured);
  const auto causes = raised(*belief);
  for (const std::size_t c : causes) {
    const Cause& cause = *belief->network.causes[c];
    out.causes.push_back(cause_told(cause, belief->causes.cause[c], k, measured, out.posture));
    for (auto& one : proposals_for(k, cause, block, worn, values)) {
      try_out(block, one);
      out.proposals.push_back(std::move(one));
    }
  }
  out.findings = foreseen(k, *belief, measured, causes, out.proposals);
  out.verdict = said(out);
  return out;
}

}  // namespace pinwright::knowledge
