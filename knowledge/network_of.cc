#include "knowledge/network_of.h"

#include <algorithm>
#include <map>

namespace pinwright::knowledge {

double prior_of(const Cause& cause, const std::string& kind) {
  const auto it = cause.prior_by_kind.find(kind);
  return it == cause.prior_by_kind.end() ? cause.prior : it->second;
}

bool has_kind(const std::vector<std::string>& kinds, const std::string& kind) {
  return kinds.empty() || std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

std::vector<std::pair<std::string, double>> made_by(const Knowledge& k, const Cause& cause) {
  std::vector<std::pair<std::string, double>> all;
  for (const auto& m : cause.makes) all.emplace_back(m.sign, m.strength);
  const std::size_t named = all.size();
  for (std::size_t i = 0; i < named; ++i) {
    const Sign* s = find_sign(k, all[i].first);
    if (s == nullptr || s->kind_of.empty()) continue;
    const auto plainer = std::find_if(all.begin(), all.end(),
                                      [&](const auto& one) { return one.first == s->kind_of; });
    if (plainer == all.end())
      all.emplace_back(s->kind_of, all[i].second);
    else
      plainer->second = std::max(plainer->second, all[i].second);
  }
  return all;
}

KindNetwork network_of(const Knowledge& k, const std::string& kind) {
  KindNetwork n;
  std::map<std::string, std::size_t> at;
  for (const auto& s : k.signs) {
    const Zone* zone = find_zone(k, s.zone);
    if (zone != nullptr && !has_kind(zone->kinds, kind)) continue;
    at[s.id] = n.signs.size();
    n.signs.push_back(&s);
    n.network.signs.push_back({s.id, s.leak});
  }
  for (const auto& c : k.causes) {
    const double prior = prior_of(c, kind);
    if (prior <= 0.0) continue;
    const std::size_t cause = n.causes.size();
    n.causes.push_back(&c);
    n.network.causes.push_back({c.id, prior, c.kind});
    for (const auto& [sign, strength] : made_by(k, c))
      if (const auto it = at.find(sign); it != at.end())
        n.network.links.push_back({cause, it->second, strength});
  }
  return n;
}

Evidence evidence_of(const KindNetwork& network, const std::vector<Finding>& findings,
                     std::vector<std::string>& elsewhere) {
  Evidence evidence(network.signs.size(), Seen::unknown);
  for (const auto& f : findings) {
    std::size_t i = 0;
    while (i < network.signs.size() && network.signs[i]->id != f.sign) ++i;
    if (i == network.signs.size()) {
      elsewhere.push_back(f.sign);
    } else if (f.state == FindingState::present) {
      evidence[i] = Seen::present;
    } else if (f.state == FindingState::absent && evidence[i] == Seen::unknown) {
      evidence[i] = Seen::absent;
    }
  }
  const auto index = [&](const std::string& id) {
    std::size_t i = 0;
    while (i < network.signs.size() && network.signs[i]->id != id) ++i;
    return i;
  };
  for (std::size_t i = 0; i < network.signs.size(); ++i) {
    if (network.signs[i]->kind_of.empty()) continue;
    const std::size_t plainer = index(network.signs[i]->kind_of);
    if (plainer == network.signs.size()) continue;
    if (evidence[i] == Seen::present)
      evidence[plainer] = Seen::unknown;
    else if (evidence[i] == Seen::unknown && evidence[plainer] == Seen::absent)
      evidence[i] = Seen::absent;
  }
  return evidence;
}

void weigh_in(const KindNetwork& network, const std::string& sign, const Likelihood& observed,
              Evidence& evidence) {
  for (std::size_t i = 0; i < network.signs.size(); ++i)
    if (network.signs[i]->id == sign && !evidence[i].certain())
      evidence[i] = evidence[i] * observed;
}

}  // namespace pinwright::knowledge
