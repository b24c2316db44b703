#include "engine/diagnosis/fold.h"

#include <cmath>
#include <utility>

namespace pinwright {
namespace {

bool says_nothing(const Likelihood& observed) { return observed.if_seen == observed.if_unseen; }

bool surely_absent(const Likelihood& observed) {
  return observed.if_seen == 0.0 && observed.if_unseen > 0.0;
}

/// P(observed | the sign is there with this probability): both terms positive.
double weight(const Likelihood& observed, double probability) {
  return observed.if_seen * probability + observed.if_unseen * (1.0 - probability);
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

void scale(Folded& folded, double factor) {
  if (factor == 1.0) return;
  if (!(factor > 0.0)) folded.impossible = true;
  folded.log_scale += std::log(factor);
}

void fold_absent(const Network& network, const Evidence& evidence, const std::vector<bool>& tied,
                 Folded& folded) {
  for (std::size_t s = 0; s < evidence.size(); ++s) {
    if (tied[s]) continue;
    if (says_nothing(evidence[s])) scale(folded, evidence[s].if_seen);
    if (surely_absent(evidence[s])) {
      folded.log_scale += std::log1p(-network.signs[s].leak) + std::log(evidence[s].if_unseen);
    }
  }
  std::vector<bool> touched(network.causes.size(), false);
  for (const Link& link : network.links) {
    if (tied[link.sign] || !surely_absent(evidence[link.sign])) continue;
    folded.on[link.cause] *= 1.0 - link.strength;
    touched[link.cause] = true;
  }
  for (std::size_t c = 0; c < touched.size(); ++c) {
    if (touched[c]) normalise(folded, c);
  }
}

void fold_lone(const Network& network, const Evidence& evidence, const LoneSign& lone,
               Folded& folded) {
  const Likelihood& observed = evidence[lone.sign];
  if (says_nothing(observed) || surely_absent(observed)) return;  // done with the other signs
  const double leak = network.signs[lone.sign].leak;
  if (!lone.cause) {
    scale(folded, weight(observed, leak));
    return;
  }
  folded.on[*lone.cause] *= weight(observed, leak + (1.0 - leak) * lone.strength);
  folded.off[*lone.cause] *= weight(observed, leak);
  normalise(folded, *lone.cause);
}

}  // namespace

Shape shape_of(const Network& network, const Evidence& evidence) {
  std::vector<SharedSign> by_sign(network.signs.size());
  std::vector<std::vector<std::pair<std::size_t, double>>> by_cause(network.causes.size());
  for (const Link& link : network.links) {
    if (says_nothing(evidence[link.sign]) || surely_absent(evidence[link.sign])) continue;
    by_cause[link.cause].emplace_back(link.sign, link.strength);
  }
  for (std::size_t c = 0; c < by_cause.size(); ++c) {
    for (const auto& [sign, strength] : by_cause[c]) {
      by_sign[sign].causes.push_back(c);
      by_sign[sign].strengths.push_back(strength);
    }
  }
  Shape shape;
  for (std::size_t s = 0; s < by_sign.size(); ++s) {
    if (says_nothing(evidence[s]) || surely_absent(evidence[s])) continue;
    by_sign[s].sign = s;
    if (by_sign[s].causes.size() > 1) {
      shape.shared.push_back(std::move(by_sign[s]));
    } else if (by_sign[s].causes.empty()) {
      shape.lone.push_back({s, std::nullopt, 0.0});
    } else {
      shape.lone.push_back({s, by_sign[s].causes.front(), by_sign[s].strengths.front()});
    }
  }
  return shape;
}

Folded fold(const Network& network, const Evidence& evidence, const Shape& shape) {
  Folded folded;
  for (const CauseNode& cause : network.causes) {
    folded.on.push_back(cause.prior);
    folded.off.push_back(1.0 - cause.prior);
  }
  std::vector<bool> tied(evidence.size(), false);
  for (const SharedSign& shared : shape.shared) {
    tied[shared.sign] = true;
    folded.seen.push_back(evidence[shared.sign]);
  }
  fold_absent(network, evidence, tied, folded);
  for (const LoneSign& lone : shape.lone) fold_lone(network, evidence, lone, folded);
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
