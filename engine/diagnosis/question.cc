#include "engine/diagnosis/question.h"

#include <algorithm>
#include <cmath>

#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/sweep.h"

namespace pinwright {
namespace {

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

/// p log2(p / q), 0 where p is 0.
double term(double p, double q) { return p > 0.0 ? p * std::log2(p / q) : 0.0; }

/// Kullback-Leibler distance of all causes, each by itself, after an answer from before it.
double moved(const Marginals& before, const Marginals& after) {
  double bits = 0.0;
  for (std::size_t c = 0; c < before.on.size(); ++c) {
    bits += std::max(0.0, term(after.on[c], before.on[c]) + term(after.off[c], before.off[c]));
  }
  return bits;
}

/// Mutual information = the distance moved, averaged over the answers.
Result<double> gain(const Network& network, Evidence evidence, std::size_t sign,
                    const Marginals& before) {
  double bits = 0.0;
  for (const Seen answer : {Seen::present, Seen::absent}) {
    evidence[sign] = answer;
    const Folded folded = fold(network, evidence);
    const Result<Marginals> after = sweep(folded);
    if (!after) {
      if (after.problems().front().code == "evidence-impossible") continue;  // will not be answered
      return after.problems();
    }
    bits += std::exp(after->log_evidence - before.log_evidence) * moved(before, *after);
  }
  return bits;
}

}  // namespace

Result<std::optional<Question>> next_question(const Network& network, const Evidence& evidence,
                                              const QuestionOptions& options) {
  Problems problems = check(network, evidence);
  for (Problem& problem : check(options, network.signs.size())) problems.push_back(problem);
  if (!problems.empty()) return problems;
  const Result<Marginals> before = sweep(fold(network, evidence));
  if (!before) return before.problems();
  std::optional<Question> best;
  if (settled(before->on, options.settled)) return best;
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    if (evidence[s] != Seen::unknown || !options.may_ask[s]) continue;
    const Result<double> bits = gain(network, evidence, s, *before);
    if (!bits) return bits.problems();
    if (*bits < options.least_gain_bits) continue;
    const double value = *bits / options.cost[s];
    if (!best || value > best->value) best = Question{s, *bits, value};
  }
  return best;
}

}  // namespace pinwright
