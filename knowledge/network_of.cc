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

double prior_of(const Cause& cause, const std::string& kind, const Features& features) {
  for (const PriorWhen& when : cause.prior_when)
    if (has_all(features, when.features)) return when.prior;
  return prior_of(cause, kind);
}

namespace {

template <class OnIt, class Prior>
KindNetwork network_with(const Knowledge& k, const OnIt& on_it, const Prior& prior_now) {
  KindNetwork n;
  std::map<std::string, std::size_t> at;
  for (const auto& s : k.signs) {
    const Zone* zone = find_zone(k, s.zone);
    if (zone != nullptr && !on_it(*zone)) continue;
    at[s.id] = n.signs.size();
    n.signs.push_back(&s);
    n.network.signs.push_back({s.id, s.leak});
  }
  for (const auto& c : k.causes) {
    const double prior = prior_now(c);
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

/// The surer of two statements of one kind about one sign.
struct Told {
  double present = 0.0;
  double absent = 0.0;
};

Likelihood likelihood_of(const Told& told) {
  if (told.present > 0.0) return stated(Seen::present, told.present);
  return stated(Seen::absent, told.absent);
}

}  // namespace

KindNetwork network_of(const Knowledge& k, const std::string& kind) {
  return network_with(
      k, [&](const Zone& zone) { return has_kind(zone.kinds, kind); },
      [&](const Cause& cause) { return prior_of(cause, kind); });
}

KindNetwork network_of(const Knowledge& k, const std::string& kind, const Features& features) {
  return network_with(
      k,
      [&](const Zone& zone) {
        return has_kind(zone.kinds, kind) && has_all(features, zone.features);
      },
      [&](const Cause& cause) { return prior_of(cause, kind, features); });
}

Evidence evidence_of(const KindNetwork& network, const std::vector<Finding>& findings,
                     std::vector<std::string>& elsewhere) {
  std::map<std::string, std::size_t> at;
  for (std::size_t i = 0; i < network.signs.size(); ++i) at[network.signs[i]->id] = i;
  std::vector<Told> told(network.signs.size());
  for (const auto& f : findings) {
    const auto i = at.find(f.sign);
    if (i == at.end()) {
      elsewhere.push_back(f.sign);
      continue;
    }
    if (f.state == FindingState::not_looked_at) continue;
    double& surest =
        f.state == FindingState::present ? told[i->second].present : told[i->second].absent;
    surest = std::max(surest, f.sure);
  }
  Evidence evidence;
  for (const Told& one : told) evidence.push_back(likelihood_of(one));
  for (std::size_t i = 0; i < network.signs.size(); ++i) {
    const auto plainer = at.find(network.signs[i]->kind_of);
    if (plainer == at.end()) continue;
    if (evidence[i] == Seen::present)
      evidence[plainer->second] = Seen::unknown;
    else if (evidence[i] == Seen::unknown && evidence[plainer->second].leans() == Seen::absent)
      evidence[i] = evidence[plainer->second];
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
