#include "engine/diagnosis/question.h"

#include <algorithm>
#include <cmath>

#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/weighing.h"

namespace pinwright {
namespace {

constexpr double kWorkOfAll = 2e7;  ///< of weighing candidates: some 5 ms
constexpr int kLeastWeighed = 12;   ///< candidates that are weighed however dear it is

Problems check(const QuestionOptions& options, std::size_t signs) {
  Problems problems;
  if (options.cost.size() != signs || options.may_ask.size() != signs) {
    problems.push_back({"options-size", "options", "Costs or permissions do not match the signs.",
                        "Give one cost and one permission for each sign."});
  }
  for (std::size_t s = 0; s < options.cost.size(); ++s) {
    if (options.cost[s] > 0.0 && std::isfinite(options.cost[s])) continue;
    problems.push_back({"cost-range", "options/cost/" + std::to_string(s),
                        "The cost of asking is not a number above 0.",
                        "Write 1 for a look and more for what takes longer."});
  }
  return problems;
}

bool settled(std::vector<double> probabilities, double enough) {
  if (probabilities.empty()) return true;
  std::sort(probabilities.rbegin(), probabilities.rend());
  return probabilities[0] >= enough &&
         (probabilities.size() < 2 || probabilities[1] < 1.0 - enough);
}

/// p log2(p / (a b)), 0 where p is 0: one term of mutual information.
double term(double both, double a, double b) {
  return both > 0.0 && b > 0.0 ? both * std::log2(both / (a * b)) : 0.0;
}

/// Mutual information of each cause and the sign, summed. With the sign found absent it stays a
/// product, so it costs no more than the evidence did; what is there otherwise is the difference.
double gain(const Marginals& before, const Marginals& absent, double p_absent) {
  const double p_present = std::max(0.0, 1.0 - p_absent);
  double bits = 0.0;
  for (std::size_t c = 0; c < before.on.size(); ++c) {
    if (before.on[c] == absent.on[c]) continue;
    const double on_absent = p_absent * absent.on[c];
    const double off_absent = p_absent * absent.off[c];
    bits += std::max(0.0, term(on_absent, before.on[c], p_absent) +
                              term(off_absent, before.off[c], p_absent) +
                              term(before.on[c] - on_absent, before.on[c], p_present) +
                              term(before.off[c] - off_absent, before.off[c], p_present));
  }
  return bits;
}

/// What a sign would tell if all causes stood by themselves: good enough to leave the dull ones
/// out.
double gain_apart(const Network& network, const std::vector<Link>& links, std::size_t sign,
                  const Marginals& before) {
  double p_absent = 1.0 - network.signs[sign].leak;
  for (const Link& link : links) p_absent *= 1.0 - link.strength * before.on[link.cause];
  Marginals one{{0.0}, {0.0}, 0.0};
  Marginals absent = one;
  double bits = 0.0;
  for (const Link& link : links) {
    one.on[0] = before.on[link.cause];
    one.off[0] = before.off[link.cause];
    const double left = 1.0 - link.strength * one.on[0];
    if (!(left > 0.0)) continue;
    absent.on[0] = one.on[0] * (1.0 - link.strength) / left;
    absent.off[0] = one.off[0] / left;
    bits += gain(one, absent, p_absent);
  }
  return bits;
}

/// Signs that may be asked, in their order; where weighing them all would be dear, those that seem
/// to tell most for their cost.
std::vector<std::size_t> candidates(const Network& network, const Evidence& evidence,
                                    const QuestionOptions& options, const Weighing& weighed) {
  std::vector<std::size_t> all;
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    if (!evidence[s].certain() && options.may_ask[s]) all.push_back(s);
  }
  const auto most = static_cast<std::size_t>(
      std::max(double{kLeastWeighed}, kWorkOfAll / std::max(1.0, weighed.work())));
  if (all.size() <= most) return all;
  std::vector<std::vector<Link>> links(evidence.size());
  for (const Link& link : network.links) links[link.sign].push_back(link);
  std::vector<double> value(evidence.size(), 0.0);
  for (const std::size_t s : all) {
    value[s] = gain_apart(network, links[s], s, weighed.marginals()) / options.cost[s];
  }
  std::stable_sort(all.begin(), all.end(),
                   [&](std::size_t a, std::size_t b) { return value[a] > value[b]; });
  all.resize(most);
  std::sort(all.begin(), all.end());
  return all;
}

}  // namespace

Result<std::optional<Question>> next_question(const Network& network, const Evidence& evidence,
                                              const QuestionOptions& options) {
  Problems problems = check(network, evidence);
  for (Problem& problem : check(options, network.signs.size())) problems.push_back(problem);
  if (!problems.empty()) return problems;
  Result<Weighing> weighed = Weighing::make(network, evidence);
  if (!weighed) return weighed.problems();
  const Marginals& before = weighed->marginals();
  std::optional<Question> best;
  if (settled(before.on, options.settled)) return best;
  Evidence answered = evidence;
  for (const std::size_t s : candidates(network, evidence, options, *weighed)) {
    answered[s] = {0.0, evidence[s].if_unseen};
    const std::optional<Marginals> absent = weighed->with(answered);
    answered[s] = evidence[s];
    if (!absent) continue;  // it will be there for certain
    const double p_absent = std::exp(std::min(0.0, absent->log_evidence - before.log_evidence));
    const double bits = gain(before, *absent, p_absent);
    if (bits < options.least_gain_bits) continue;
    const double value = bits / options.cost[s];
    if (!best || value > best->value) best = Question{s, bits, value};
  }
  return best;
}

}  // namespace pinwright
