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
    for (const auto& m : c.makes)
      if (const auto it = at.find(m.sign); it != at.end())
        n.network.links.push_back({cause, it->second, m.strength});
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
  return evidence;
}

}  // namespace pinwright::knowledge
