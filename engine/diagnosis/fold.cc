#include "engine/diagnosis/fold.h"

#include <cmath>
#include <utility>

namespace pinwright {
namespace {

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
    if (evidence[s] == Seen::absent) folded.log_scale += std::log1p(-network.signs[s].leak);
  }
  for (const Link& link : network.links) {
    if (evidence[link.sign] != Seen::absent) continue;
    folded.on[link.cause] *= 1.0 - link.strength;
    normalise(folded, link.cause);
  }
}

/// Present signs with the causes that are still possible; nothing else of the network matters now.
std::vector<SharedSign> present_signs(const Network& network, const Evidence& evidence,
                                      const Folded& folded) {
  std::vector<SharedSign> by_sign(network.signs.size());
  std::vector<std::vector<std::pair<std::size_t, double>>> by_cause(network.causes.size());
  for (const Link& link : network.links) {
    if (evidence[link.sign] != Seen::present || folded.on[link.cause] == 0.0) continue;
    by_cause[link.cause].emplace_back(link.sign, link.strength);
  }
  for (std::size_t c = 0; c < by_cause.size(); ++c) {
    for (const auto& [sign, strength] : by_cause[c]) {
      by_sign[sign].causes.push_back(c);
      by_sign[sign].strengths.push_back(strength);
    }
  }
  std::vector<SharedSign> present;
  for (std::size_t s = 0; s < by_sign.size(); ++s) {
    if (evidence[s] != Seen::present) continue;
    by_sign[s].leak = network.signs[s].leak;
    present.push_back(std::move(by_sign[s]));
  }
  return present;
}

}  // namespace

Folded fold(const Network& network, const Evidence& evidence) {
  Folded folded;
  for (const CauseNode& cause : network.causes) {
    folded.on.push_back(cause.prior);
    folded.off.push_back(1.0 - cause.prior);
  }
  fold_absent(network, evidence, folded);
  for (SharedSign& sign : present_signs(network, evidence, folded)) {
    if (sign.causes.size() > 1) {
      folded.shared.push_back(std::move(sign));
    } else if (sign.causes.empty()) {
      folded.impossible = folded.impossible || sign.leak == 0.0;
      folded.log_scale += std::log(sign.leak);
    } else {
      const std::size_t c = sign.causes.front();
      folded.on[c] *= sign.leak + (1.0 - sign.leak) * sign.strengths.front();
      folded.off[c] *= sign.leak;
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
  return problems;
}

}  // namespace pinwright
