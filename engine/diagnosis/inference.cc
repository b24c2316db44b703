#include "engine/diagnosis/inference.h"

#include <cmath>

#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/sweep.h"

namespace pinwright {
namespace {

/// The same evidence with one sign more, and how probable it is.
Result<double> log_evidence_with(const Network& network, Evidence evidence, std::size_t sign,
                                 Likelihood observed) {
  evidence[sign] = observed;
  return log_evidence(fold(network, evidence));
}

}  // namespace

Result<Posterior> posterior(const Network& network, const Evidence& evidence) {
  if (Problems problems = check(network, evidence); !problems.empty()) return problems;
  Result<Marginals> marginals = sweep(fold(network, evidence));
  if (!marginals) return marginals.problems();
  return Posterior{std::move(marginals->on), std::exp(marginals->log_evidence)};
}

Result<std::vector<double>> predict_signs(const Network& network, const Evidence& evidence) {
  if (Problems problems = check(network, evidence); !problems.empty()) return problems;
  if (Result<Marginals> possible = sweep(fold(network, evidence)); !possible) {
    return possible.problems();
  }
  std::vector<double> seen(network.signs.size());
  for (std::size_t s = 0; s < seen.size(); ++s) {
    if (evidence[s].certain()) {
      seen[s] = evidence[s].if_seen > 0.0 ? 1.0 : 0.0;
      continue;
    }
    // Both sides are summed, neither is one minus the other: small chances keep their digits.
    const Result<double> present =
        log_evidence_with(network, evidence, s, {evidence[s].if_seen, 0.0});
    if (!present) return present.problems();
    const Result<double> absent =
        log_evidence_with(network, evidence, s, {0.0, evidence[s].if_unseen});
    if (!absent) return absent.problems();
    const double log_odds = *present - *absent;
    seen[s] = log_odds > 0.0 ? 1.0 / (1.0 + std::exp(-log_odds))
                             : std::exp(log_odds) / (1.0 + std::exp(log_odds));
  }
  return seen;
}

}  // namespace pinwright
