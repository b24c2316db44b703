#include "engine/diagnosis/weighing.h"

#include <cmath>

namespace pinwright {
namespace {

Problem impossible() {
  return {"evidence-impossible", "evidence",
          "The findings cannot stand together: nothing that is left can make one of them.",
          "Look again at the findings that contradict, or give the sign a leak above 0."};
}

}  // namespace

Result<Weighing> Weighing::make(const Network& network, const Evidence& evidence) {
  Weighing w(network);
  w.evidence_ = evidence;
  w.of_sign_.resize(network.signs.size());
  for (const Link& link : network.links) w.of_sign_[link.sign].push_back(link);
  w.shape_ = shape_of(network, evidence);
  w.folded_ = fold(network, evidence, w.shape_);
  if (w.folded_.impossible) return impossible();

  for (Part& part : connected_parts(w.shape_)) {
    Result<Plan> plan = plan_of(w.shape_, part);
    if (!plan) return plan.problems();

    w.parts_.push_back({std::move(part), std::move(plan).value(), 0.0});
  }
  w.base_ = {w.folded_.on, w.folded_.off, w.folded_.log_scale};
  for (Tied& tied : w.parts_) {
    tied.log_sum = up(tied.plan, w.shape_, network, w.folded_, w.store_);
    if (tied.log_sum == kImpossibleLog ||
        !down(tied.plan, w.shape_, network, w.folded_, w.store_, w.base_)) {
      return impossible();
    }
    w.base_.log_evidence += tied.log_sum;
  }
  return w;
}

double Weighing::work() const {
  double sum = 0.0;
  for (const Tied& tied : parts_) sum += tied.plan.work;
  return sum;
}

bool Weighing::same(const Tied& tied, const Folded& other) const {
  for (const Vertex& v : tied.part.vertices) {
    const bool alike = v.is_cause ? folded_.on[v.index] == other.on[v.index] &&
                                        folded_.off[v.index] == other.off[v.index]
                                  : folded_.seen[v.index] == other.seen[v.index];
    if (!alike) return false;
  }
  return true;
}

Folded Weighing::folded_with(const Evidence& other) const {
  std::size_t changed = 0;
  std::size_t sign = 0;
  for (std::size_t s = 0; s < other.size(); ++s) {
    if (other[s] == evidence_[s]) continue;
    ++changed;
    sign = s;
  }
  const bool one_absent =
      changed == 1 && evidence_[sign] == Seen::unknown && other[sign] == Likelihood{0.0, 1.0};
  if (!one_absent) return fold(*network_, other, shape_);
  Folded folded = folded_;
  folded.log_scale += std::log1p(-network_->signs[sign].leak);
  for (const Link& link : of_sign_[sign]) {
    double& on = folded.on[link.cause];
    double& off = folded.off[link.cause];
    on *= 1.0 - link.strength;
    const double sum = on + off;
    if (!(sum > 0.0)) folded.impossible = true;
    on /= sum;
    off /= sum;
    folded.log_scale += std::log(sum);
  }
  return folded;
}

std::optional<Marginals> Weighing::with(const Evidence& other) {
  const Folded folded = folded_with(other);
  if (folded.impossible) return std::nullopt;
  Marginals found{folded.on, folded.off, folded.log_scale};
  for (const Tied& tied : parts_) {
    if (same(tied, folded)) {
      found.log_evidence += tied.log_sum;
      for (const Vertex& v : tied.part.vertices) {
        if (!v.is_cause) continue;
        found.on[v.index] = base_.on[v.index];
        found.off[v.index] = base_.off[v.index];
      }
      continue;
    }
    const double sum = up(tied.plan, shape_, *network_, folded, store_);
    if (sum == kImpossibleLog || !down(tied.plan, shape_, *network_, folded, store_, found)) {
      return std::nullopt;
    }
    found.log_evidence += sum;
  }
  return found;
}

double Weighing::log_evidence(const Evidence& other) {
  const Folded folded = fold(*network_, other, shape_);
  if (folded.impossible) return kImpossibleLog;
  double sum = folded.log_scale;
  for (const Tied& tied : parts_) {
    sum += same(tied, folded) ? tied.log_sum : up(tied.plan, shape_, *network_, folded, store_);
  }
  return sum;
}

}  // namespace pinwright
