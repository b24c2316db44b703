#include "engine/diagnosis/reasons.h"

#include <algorithm>
#include <cmath>

#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/weighing.h"

namespace pinwright {
namespace {

constexpr double kLeastWeight = 0.05;
constexpr double kCertain = 50.0;  ///< log-odds that stand for certainty

double log_odds(const Marginals& marginals, std::size_t cause) {
  return std::clamp(std::log(marginals.on[cause]) - std::log(marginals.off[cause]), -kCertain,
                    kCertain);
}

}  // namespace

Result<std::vector<std::vector<Reason>>> reasons(const Network& network, const Evidence& evidence,
                                                 const std::vector<std::size_t>& causes) {
  Problems problems = check(network, evidence);
  for (const std::size_t cause : causes) {
    if (cause < network.causes.size()) continue;
    problems.push_back({"cause-index", "cause", "The network has no cause of that number.",
                        "Ask about one of its causes."});
  }
  if (!problems.empty()) return problems;
  Result<Weighing> weighed = Weighing::make(network, evidence);
  if (!weighed) return weighed.problems();
  std::vector<std::vector<Reason>> found(causes.size());
  Evidence without = evidence;
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    if (evidence[s].leans() == Seen::unknown) continue;
    without[s] = Seen::unknown;
    // Possible, as it takes something back from what is possible.
    const std::optional<Marginals> rest = weighed->with(without);
    without[s] = evidence[s];
    for (std::size_t i = 0; rest && i < causes.size(); ++i) {
      const double weight = log_odds(weighed->marginals(), causes[i]) - log_odds(*rest, causes[i]);
      if (std::abs(weight) >= kLeastWeight) found[i].push_back({s, weight});
    }
  }
  for (std::vector<Reason>& of_cause : found) {
    std::stable_sort(of_cause.begin(), of_cause.end(), [](const Reason& a, const Reason& b) {
      return std::abs(a.log_odds) > std::abs(b.log_odds);
    });
  }
  return found;
}

Result<std::vector<Reason>> reasons(const Network& network, const Evidence& evidence,
                                    std::size_t cause) {
  Result<std::vector<std::vector<Reason>>> found =
      reasons(network, evidence, std::vector<std::size_t>{cause});
  if (!found) return found.problems();
  return std::move(found->front());
}

}  // namespace pinwright
