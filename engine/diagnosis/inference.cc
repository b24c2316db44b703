#include "engine/diagnosis/inference.h"

#include <cmath>

#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/weighing.h"

namespace pinwright {
namespace {

/// ln P(evidence, sign i there) and ln P(evidence, sign i not there): both summed, neither is one
/// minus the other, so that small chances keep their digits.
Result<double> log_odds_of_sign(const Network& network, Evidence evidence, std::size_t sign) {
  const Likelihood observed = evidence[sign];
  evidence[sign] = {observed.if_seen, 0.0};
  Result<Weighing> there = Weighing::make(network, evidence);
  if (!there && there.problems().front().code != "evidence-impossible") return there.problems();
  double absent = 0.0;
  evidence[sign] = {0.0, observed.if_unseen};
  if (there) {
    absent = there->log_evidence(evidence);
    return there->marginals().log_evidence - absent;
  }
  return -HUGE_VAL;
}

}  // namespace

Result<Posterior> posterior(const Network& network, const Evidence& evidence) {
  if (Problems problems = check(network, evidence); !problems.empty()) return problems;
  const Result<Weighing> weighed = Weighing::make(network, evidence);
  if (!weighed) return weighed.problems();
  return Posterior{weighed->marginals().on, std::exp(weighed->marginals().log_evidence)};
}

Result<std::vector<double>> predict_signs(const Network& network, const Evidence& evidence) {
  if (Problems problems = check(network, evidence); !problems.empty()) return problems;
  if (const auto possible = Weighing::make(network, evidence); !possible) {
    return possible.problems();
  }
  std::vector<double> seen(network.signs.size());
  for (std::size_t s = 0; s < seen.size(); ++s) {
    if (evidence[s].certain()) {
      seen[s] = evidence[s].if_seen > 0.0 ? 1.0 : 0.0;
      continue;
    }
    const Result<double> log_odds = log_odds_of_sign(network, evidence, s);
    if (!log_odds) return log_odds.problems();
    seen[s] = *log_odds > 0.0 ? 1.0 / (1.0 + std::exp(-*log_odds))
                              : std::exp(*log_odds) / (1.0 + std::exp(*log_odds));
  }
  return seen;
}

}  // namespace pinwright
