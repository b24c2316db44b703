#include "engine/diagnosis/weighing.h"

#include <cmath>
#include <limits>

namespace pinwright {
namespace {

constexpr double kImpossible = -std::numeric_limits<double>::infinity();

Problem impossible() {
  return {"evidence-impossible", "evidence",
          "The findings cannot stand together: nothing that is left can make one of them.",
          "Look again at the findings that contradict, or give the sign a leak above 0."};
}

}  // namespace

Result<Weighing> Weighing::make(const Network& network, const Evidence& evidence) {
  Weighing w(network);
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
    if (tied.log_sum == kImpossible ||
        !down(tied.plan, w.shape_, network, w.folded_, w.store_, w.base_)) {
      return impossible();
    }
    w.base_.log_evidence += tied.log_sum;
  }
  return w;
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

std::optional<Marginals> Weighing::with(const Evidence& other) {
  const Folded folded = fold(*network_, other, shape_);
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
    if (sum == kImpossible || !down(tied.plan, shape_, *network_, folded, store_, found)) {
      return std::nullopt;
    }
    found.log_evidence += sum;
  }
  return found;
}

double Weighing::log_evidence(const Evidence& other) {
  const Folded folded = fold(*network_, other, shape_);
  if (folded.impossible) return kImpossible;
  double sum = folded.log_scale;
  for (const Tied& tied : parts_) {
    sum += same(tied, folded) ? tied.log_sum : up(tied.plan, shape_, *network_, folded, store_);
  }
  return sum;
}

}  // namespace pinwright
