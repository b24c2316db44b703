#include "knowledge/verdict.h"

#include <algorithm>

#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

std::string named(const KindNetwork& n, const Posterior& p, std::size_t cause) {
  return small_first(n.causes[cause]->name) + " (" + said_probability(p.cause[cause]) + ")";
}

/// Where the leading causes are mended.
std::string place_of_mending(const KindNetwork& n, const std::vector<std::size_t>& leading) {
  const auto kind_is = [&](auto... kinds) {
    return std::all_of(leading.begin(), leading.end(),
                       [&](std::size_t c) { return ((n.causes[c]->kind == kinds) || ...); });
  };
  if (kind_is(CauseKind::sewing)) return " It is mended in the sewing; the pattern stays as it is.";
  if (kind_is(CauseKind::fabric)) return " It is a matter of the cloth, not of the pattern.";
  if (kind_is(CauseKind::sewing, CauseKind::fabric))
    return " It is a matter of sewing and cloth, not of the pattern.";
  return "";
}

}  // namespace

bool counts_as_seen(const Likelihood& observed) {
  return observed.if_seen >= kSeenOdds * observed.if_unseen && observed.if_seen > 0.0;
}

std::vector<std::size_t> causes_in_play(const KindNetwork& network, const Evidence& evidence,
                                        const Posterior& posterior) {
  std::vector<bool> in(network.causes.size(), false);
  for (const auto& link : network.network.links)
    if (evidence[link.sign].leans() == Seen::present) in[link.cause] = true;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < in.size(); ++i)
    if (in[i]) order.push_back(i);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return posterior.cause[a] > posterior.cause[b];
  });
  return order;
}

Verdict verdict(const KindNetwork& network, const Evidence& evidence, const Posterior& posterior) {
  const std::vector<std::size_t> order = causes_in_play(network, evidence, posterior);
  const auto p = [&](std::size_t cause) { return posterior.cause[cause]; };
  bool any_seen = false;
  bool any_told = false;
  bool settled = true;
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    any_told = any_told || evidence[s].leans() == Seen::present;
    if (!counts_as_seen(evidence[s])) continue;
    any_seen = true;
    bool led = false;
    for (const auto& link : network.network.links) {
      if (link.sign != s) continue;
      led = led || p(link.cause) >= kLeadingAtLeast;
      settled = settled && (p(link.cause) >= kLeadingAtLeast || p(link.cause) <= kRivalAtMost);
    }
    settled = settled && led;
  }
  settled = settled && any_seen;
  if (!any_told) return {false, "Nothing that wants mending was told: cannot tell yet."};
  if (order.empty()) return {false, "Cannot tell yet: no known cause makes what was seen here."};

  std::vector<std::size_t> leading;
  std::vector<std::string> names;
  for (const std::size_t c : order)
    if (p(c) >= kLeadingAtLeast) {
      leading.push_back(c);
      names.push_back(named(network, posterior, c));
    }
  if (settled)
    return {true,
            "Most probably " + listed(names, " and ") + "." + place_of_mending(network, leading)};
  if (!leading.empty()) {
    return {false, "Cannot tell all of it yet: " + listed(names, " and ") +
                       (names.size() == 1 ? " is" : " are") +
                       " probable, but something else may be behind part of what was seen."};
  }
  names.clear();
  for (std::size_t i = 0; i < order.size() && i < 3; ++i)
    if (i == 0 || p(order[i]) >= 0.4 * p(order[0]))
      names.push_back(named(network, posterior, order[i]));
  if (names.size() == 1)
    return {false, "Cannot tell yet: at best " + names[0] + ", and that is weak."};
  return {false, "Cannot tell yet: " + listed(names, " or ") + "."};
}

}  // namespace pinwright::knowledge
