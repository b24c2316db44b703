#include "engine/diagnosis/reasons.h"

#include <algorithm>
#include <cmath>

#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/sweep.h"

namespace pinwright {
namespace {

constexpr double kLeastWeight = 0.05;
constexpr double kCertain = 50.0;  ///< log-odds that stand for certainty

Result<double> log_odds(const Network& network, const Evidence& evidence, std::size_t cause) {
  const Result<Marginals> marginals = sweep(fold(network, evidence));
  if (!marginals) return marginals.problems();
  return std::clamp(std::log(marginals->on[cause]) - std::log(marginals->off[cause]), -kCertain,
                    kCertain);
}

}  // namespace

Result<std::vector<Reason>> reasons(const Network& network, const Evidence& evidence,
                                    std::size_t cause) {
  Problems problems = check(network, evidence);
  if (cause >= network.causes.size()) {
    problems.push_back({"cause-index", "cause", "The network has no cause of that number.",
                        "Ask about one of its causes."});
  }
  if (!problems.empty()) return problems;
  const Result<double> all = log_odds(network, evidence, cause);
  if (!all) return all.problems();
  std::vector<Reason> found;
  Evidence without = evidence;
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    if (evidence[s] == Seen::unknown) continue;
    without[s] = Seen::unknown;
    const Result<double> rest = log_odds(network, without, cause);
    if (!rest) return rest.problems();
    without[s] = evidence[s];
    if (std::abs(*all - *rest) >= kLeastWeight) found.push_back({s, *all - *rest});
  }
  std::stable_sort(found.begin(), found.end(), [](const Reason& a, const Reason& b) {
    return std::abs(a.log_odds) > std::abs(b.log_odds);
  });
  return found;
}

}  // namespace pinwright
