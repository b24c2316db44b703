#include "knowledge/consultation.h"

#include <algorithm>
#include <set>

#include "engine/diagnosis/question.h"
#include "knowledge/verdict.h"

namespace pinwright::knowledge {
namespace {

constexpr double kLeastAsked = 0.03;  ///< causes that a question may be about
constexpr double kMainly = 0.6;       ///< part of a sign's weight that these causes must have

/// Signs whose answer is known, or known not to be had.
std::set<std::string> not_again(const KindNetwork& n, const Evidence& evidence,
                                const TryOn& tryon) {
  std::set<std::string> known(tryon.asked.begin(), tryon.asked.end());
  for (const Finding& f : tryon.findings)
    if (f.state == FindingState::not_looked_at) known.insert(f.sign);
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    if (evidence[s].certain()) known.insert(n.signs[s]->id);
    if (evidence[s].leans() == Seen::present) known.insert(n.signs[s]->kind_of);
  }
  return known;
}

QuestionOptions options_of(const KindNetwork& n, const Evidence& evidence,
                           const Posterior& posterior, const TryOn& tryon) {
  std::set<std::size_t> about;
  for (const std::size_t c : causes_in_play(n, evidence, posterior))
    if (posterior.cause[c] >= kLeastAsked) about.insert(c);
  const std::set<std::string> known = not_again(n, evidence, tryon);
  QuestionOptions options;
  options.settled = 1.0;  // the verdict says when it is
  options.cost.assign(n.signs.size(), 1.0);
  options.may_ask.assign(n.signs.size(), false);
  // Only what speaks mainly of these causes: a sign that other, unconcerned causes make as readily
  // would be informative about those.
  std::vector<double> mine(n.signs.size(), 0.0);
  std::vector<double> all(n.signs.size(), 0.0);
  for (const auto& link : n.network.links) {
    const double weight = posterior.cause[link.cause] * link.strength;
    all[link.sign] += weight;
    if (about.contains(link.cause)) mine[link.sign] += weight;
  }
  for (std::size_t i = 0; i < n.signs.size(); ++i) {
    options.cost[i] = n.signs[i]->cost;
    options.may_ask[i] = !n.signs[i]->ask.empty() && mine[i] > 0.0 && mine[i] >= kMainly * all[i] &&
                         !known.contains(n.signs[i]->id);
  }
  return options;
}

NextStep ended(std::string why) { return {std::nullopt, 0, std::move(why)}; }

}  // namespace

Result<NextStep> next_step(const KindNetwork& network, const Evidence& evidence,
                           const Posterior& posterior, const TryOn& tryon, bool settled) {
  if (settled) return ended("It is settled: nothing more needs to be asked.");
  const std::size_t asked = std::set(tryon.asked.begin(), tryon.asked.end()).size();
  if (asked >= kMostQuestions)
    return ended("Five questions were asked; what is still open is left open.");
  const auto next =
      next_question(network.network, evidence, options_of(network, evidence, posterior, tryon));
  if (!next) return next.problems();
  if (!next->has_value()) return ended("No further look or measure would tell much more.");
  const Question& q = **next;
  const Sign& sign = *network.signs[q.sign];
  return NextStep{QuestionAsked{sign.id, sign.ask, q.gain, sign.cost}, kMostQuestions - asked, ""};
}

}  // namespace pinwright::knowledge
