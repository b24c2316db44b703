#include "engine/diagnosis/explanation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/diagnosis/cover.h"
#include "engine/diagnosis/fold.h"
#include "engine/diagnosis/order.h"
#include "engine/diagnosis/weighing.h"

namespace pinwright {
namespace {

constexpr std::size_t kMostNodes = 65536;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

Problem too_many_sets() {
  return {"evidence-too-wide", "evidence",
          "Too many sets of causes come near to explaining the findings to try them all.",
          "Give fewer findings at a time: the clearest first."};
}

/// Causes that may be in the best set.
std::vector<bool> in_play(const Network& network, const Evidence& evidence, const Folded& folded) {
  std::vector<bool> in(network.causes.size(), false);
  for (const Link& link : network.links) {
    if (evidence[link.sign].leans() == Seen::present) in[link.cause] = true;
  }
  for (std::size_t c = 0; c < in.size(); ++c) {
    if (folded.on[c] >= folded.off[c]) in[c] = true;
    if (folded.on[c] == 0.0) in[c] = false;  // ruled out
  }
  return in;
}

/// One part as a cover; `causes[i]` is the cause of its i-th weight.
struct PartCover {
  Cover cover;
  std::vector<std::size_t> causes;
};

/// `must[c]`: the cause is certain, so it is always taken: its signs start from it.
PartCover cover_of(const Part& part, const Shape& shape, const Network& network,
                   const Folded& folded, const std::vector<bool>& in) {
  PartCover made;
  std::vector<std::size_t> number(network.causes.size(), 0);
  for (const Vertex& v : part.vertices) {
    if (!v.is_cause || !in[v.index] || folded.off[v.index] == 0.0) continue;
    number[v.index] = made.causes.size();
    made.causes.push_back(v.index);
    made.cover.weights.push_back(std::log(folded.on[v.index]) - std::log(folded.off[v.index]));
  }
  for (const Vertex& v : part.vertices) {
    if (v.is_cause) continue;
    const SharedSign& shared = shape.shared[v.index];
    CoverSign sign;
    sign.leak = network.signs[shared.sign].leak;
    sign.observed = folded.seen[v.index];
    for (std::size_t i = 0; i < shared.causes.size(); ++i) {
      const std::size_t c = shared.causes[i];
      if (!in[c]) continue;
      if (folded.off[c] == 0.0) {
        sign.leak += (1.0 - sign.leak) * shared.strengths[i];
        continue;
      }
      sign.causes.push_back(number[c]);
      sign.strengths.push_back(shared.strengths[i]);
    }
    made.cover.signs.push_back(std::move(sign));
  }
  return made;
}

/// Turns the state of the causes in `set` about.
void turn(std::vector<bool>& state, const std::vector<std::size_t>& set) {
  for (const std::size_t c : set) state[c] = !state[c];
}

std::vector<std::size_t> listed(const std::vector<bool>& state) {
  std::vector<std::size_t> all;
  for (std::size_t c = 0; c < state.size(); ++c) {
    if (state[c]) all.push_back(c);
  }
  return all;
}

/// The cheapest change away from the best set.
struct Change {
  double loss = kInfinity;
  std::vector<std::size_t> turned;
  void offer(double by, std::vector<std::size_t> which) {
    if (by >= loss) return;
    loss = by;
    turned = std::move(which);
  }
};

}  // namespace

Result<BestExplanation> best_explanation(const Network& network, const Evidence& evidence) {
  if (Problems problems = check(network, evidence); !problems.empty()) return problems;
  const Shape shape = shape_of(network, evidence);
  const Folded folded = fold(network, evidence, shape);
  if (const auto possible = Weighing::make(network, evidence); !possible) {
    return possible.problems();
  }
  const std::vector<bool> in = in_play(network, evidence, folded);
  std::vector<bool> best(network.causes.size(), false);
  std::vector<bool> tied(network.causes.size(), false);
  double log_joint = folded.log_scale;
  for (std::size_t c = 0; c < best.size(); ++c) {
    if (folded.off[c] > 0.0) log_joint += std::log(folded.off[c]);
  }
  Change change;
  for (const Part& part : connected_parts(shape)) {
    const PartCover made = cover_of(part, shape, network, folded, in);
    const auto two = best_two(made.cover, kMostNodes);
    if (!two) return too_many_sets();
    std::vector<bool> taken(network.causes.size(), false);
    const auto put = [&](const CoverSet& set, std::vector<bool>& state) {
      for (const std::size_t i : set.taken) turn(state, {made.causes[i]});
    };
    put(two->front(), best);
    for (const Vertex& v : part.vertices) {
      if (v.is_cause) tied[v.index] = true;
      if (v.is_cause && in[v.index] && folded.off[v.index] == 0.0) best[v.index] = true;
    }
    log_joint += two->front().score;
    if (two->size() < 2) continue;
    put(two->front(), taken);
    put(two->back(), taken);  // what differs between the two
    change.offer(two->front().score - two->back().score, listed(taken));
  }
  for (std::size_t c = 0; c < best.size(); ++c) {
    if (tied[c] || !in[c]) continue;
    const double gain = std::log(folded.on[c]) - std::log(folded.off[c]);
    best[c] = gain > 0.0;
    if (best[c]) log_joint += folded.off[c] > 0.0 ? gain : std::log(folded.on[c]);
    change.offer(std::abs(gain), {c});
  }
  BestExplanation found;
  found.best = {listed(best), log_joint};
  if (change.loss < kInfinity) {
    turn(best, change.turned);
    found.next = Explanation{listed(best), log_joint - change.loss};
  }
  found.times_next = std::exp(change.loss);
  return found;
}

}  // namespace pinwright
