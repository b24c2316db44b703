#include "engine/diagnosis/fold.h"

#include <cmath>
#include <utility>

namespace pinwright {
namespace {

bool surely_absent(const Likelihood& observed) {
  return observed.if_seen == 0.0 && observed.if_unseen > 0.0;
}

/// A sign whose states still have to be told apart.
bool open(const Likelihood& observed) {
  return observed.if_seen > 0.0 && observed.if_seen != observed.if_unseen;
}

/// Makes on + off = 1 and keeps the factor in the scale.
void normalise(Folded& folded, std::size_t cause) {
  const double sum = folded.on[cause] + folded.off[cause];
  if (!(sum > 0.0)) {
    folded.impossible = true;
    return;
  }
  folded.on[cause] /= sum;
  folded.off[cause] /= sum;
  folded.log_scale += std::log(sum);
}

void fold_absent(const Network& network, const Evidence& evidence, Folded& folded) {
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    if (!surely_absent(evidence[s])) continue;
    folded.log_scale += std::log1p(-network.signs[s].leak) + std::log(evidence[s].if_unseen);
  }
  for (const Link& link : network.links) {
    if (!surely_absent(evidence[link.sign])) continue;
    folded.on[link.cause] *= 1.0 - link.strength;
    normalise(folded, link.cause);
  }
}

/// P(observed | the sign is there with this probability): both terms positive.
double seen_with(const Likelihood& observed, double probability) {
  return observed.if_seen * probability + observed.if_unseen * (1.0 - probability);
}

/// Open signs with the causes that are still possible; nothing else of the network matters now.
std::vector<SharedSign> open_signs(const Network& network, const Evidence& evidence,
                                   const Folded& folded) {
  std::vector<SharedSign> by_sign(network.signs.size());
  std::vector<std::vector<std::pair<std::size_t, double>>> by_cause(network.causes.size());
  for (const Link& link : network.links) {
    if (!open(evidence[link.sign]) || folded.on[link.cause] == 0.0) continue;
    by_cause[link.cause].emplace_back(link.sign, link.strength);
  }
  for (std::size_t c = 0; c < by_cause.size(); ++c) {
    for (const auto& [sign, strength] : by_cause[c]) {
      by_sign[sign].causes.push_back(c);
      by_sign[sign].strengths.push_back(strength);
    }
  }
  std::vector<SharedSign> found;
  for (std::size_t s = 0; s < by_sign.size(); ++s) {
    if (!open(evidence[s])) continue;
    by_sign[s].observed = evidence[s];
    by_sign[s].leak = network.signs[s].leak;
    found.push_back(std::move(by_sign[s]));
  }
  return found;
}

}  // namespace

Folded fold(const Network& network, const Evidence& evidence) {
  Folded folded;
  for (const CauseNode& cause : network.causes) {
    folded.on.push_back(cause.prior);
    folded.off.push_back(1.0 - cause.prior);
  }
  for (const Likelihood& observed : evidence) {
    if (observed.if_seen != observed.if_unseen) continue;
    folded.impossible = folded.impossible || observed.if_seen == 0.0;
    folded.log_scale += std::log(observed.if_seen);
  }
  fold_absent(network, evidence, folded);
  for (SharedSign& sign : open_signs(network, evidence, folded)) {
    if (sign.causes.size() > 1) {
      folded.shared.push_back(std::move(sign));
    } else if (sign.causes.empty()) {
      const double weight = seen_with(sign.observed, sign.leak);
      folded.impossible = folded.impossible || !(weight > 0.0);
      folded.log_scale += std::log(weight);
    } else {
      const std::size_t c = sign.causes.front();
      const double made = sign.leak + (1.0 - sign.leak) * sign.strengths.front();
      folded.on[c] *= seen_with(sign.observed, made);
      folded.off[c] *= seen_with(sign.observed, sign.leak);
      normalise(folded, c);
    }
  }
  return folded;
}

Problems check(const Network& network, const Evidence& evidence) {
  Problems problems = check(network);
  if (evidence.size() != network.signs.size()) {
    problems.push_back({"evidence-size", "evidence",
                        "There are " + std::to_string(evidence.size()) + " entries for " +
                            std::to_string(network.signs.size()) + " signs.",
                        "Give one entry for each sign, unknown where nobody looked."});
  }
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    const auto sound = [](double p) { return std::isfinite(p) && p >= 0.0; };
    if (sound(evidence[s].if_seen) && sound(evidence[s].if_unseen)) continue;
    problems.push_back({"likelihood-range", "evidence " + std::to_string(s),
                        "The likelihood of what was observed is no number from 0 on.",
                        "Give two chances from 0 to 1: with the sign there, and without it."});
  }
  return problems;
}

}  // namespace pinwright
