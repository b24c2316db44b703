#include "knowledge/explained.h"

#include <algorithm>
#include <cmath>

#include "engine/diagnosis/explanation.h"
#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

std::vector<std::size_t> by_probability(std::vector<std::size_t> causes, const Posterior& p) {
  std::stable_sort(causes.begin(), causes.end(),
                   [&](std::size_t a, std::size_t b) { return p.cause[a] > p.cause[b]; });
  return causes;
}

std::vector<std::string> ids_of(const KindNetwork& n, const std::vector<std::size_t>& causes) {
  std::vector<std::string> ids;
  for (const std::size_t c : causes) ids.push_back(n.causes[c]->id);
  return ids;
}

std::vector<std::size_t> in_first_alone(const std::vector<std::size_t>& first,
                                        const std::vector<std::size_t>& second) {
  std::vector<std::size_t> alone;
  for (const std::size_t c : first)
    if (std::find(second.begin(), second.end(), c) == second.end()) alone.push_back(c);
  return alone;
}

std::string named(const KindNetwork& n, const std::vector<std::size_t>& causes) {
  std::vector<std::string> names;
  for (const std::size_t c : causes) names.push_back(small_first(n.causes[c]->name));
  return listed(names, " and ");
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 32);
  return text;
}

/// How the next best set differs: "the same without X", "Y in place of X", ...
std::string difference(const KindNetwork& n, const std::vector<std::size_t>& best,
                       const std::vector<std::size_t>& next) {
  const std::vector<std::size_t> gone = in_first_alone(best, next);
  const std::vector<std::size_t> come = in_first_alone(next, best);
  if (next.empty()) return "none of the known causes";
  if (come.empty()) return "the same without " + named(n, gone);
  if (gone.empty())
    return best.empty() ? named(n, come) : "the same with " + named(n, come) + " besides";
  return named(n, come) + " in place of " + named(n, gone);
}

std::string said_times(double times) {
  if (times < 1.05) return "about as probable as";
  if (!(times < 1000.0)) return "more than 1000 times as probable as";
  const double said = times < 10.0 ? std::round(10.0 * times) / 10.0 : std::round(times);
  return said_ratio(said) + " times as probable as";
}

}  // namespace

Result<std::optional<ExplanationSaid>> explained(const KindNetwork& network,
                                                 const Evidence& evidence,
                                                 const Posterior& posterior) {
  const auto found = best_explanation(network.network, evidence);
  if (!found) return found.problems();
  if (!found->next) return std::optional<ExplanationSaid>();
  const std::vector<std::size_t> best = by_probability(found->best.causes, posterior);
  const std::vector<std::size_t> next = by_probability(found->next->causes, posterior);
  ExplanationSaid said{ids_of(network, best), ids_of(network, next), found->times_next, ""};
  if (best.empty())
    said.text = "No known cause stands out behind what was seen";
  else
    said.text = capital(named(network, best)) +
                (best.size() == 1 ? " by itself explains" : " together explain") +
                " best what was seen";
  said.text += ", " + said_times(said.times_next) +
               " the next best: " + difference(network, best, next) + ".";
  return std::optional(std::move(said));
}

}  // namespace pinwright::knowledge
