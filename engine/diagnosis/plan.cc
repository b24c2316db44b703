#include "engine/diagnosis/plan.h"

#include <algorithm>
#include <bit>
#include <cmath>

namespace pinwright {
namespace {

Problem too_wide() {
  return {"evidence-too-wide", "evidence",
          "Too many of the findings share their causes to weigh them all exactly.",
          "Give fewer findings at a time: the clearest first."};
}

class Planner {
 public:
  Planner(const Shape& shape, const Part& part) : shape_(shape), part_(part) {
    order_ = elimination_order(part);
    turn_.resize(part.vertices.size());
    for (std::size_t t = 0; t < order_.size(); ++t) turn_[order_[t].vertex] = t;
  }

  Result<Plan> plan() {
    if (!bounded()) return too_wide();
    for (const TakenOut& out : order_) plan_.buckets.push_back(bucket(out));
    for (std::size_t t = 0; t < order_.size(); ++t) send(t);
    double numbers = 0.0;
    for (Bucket& b : plan_.buckets) {
      sort_messages(b);
      plan_.work += work(b);
      numbers += std::ldexp(static_cast<double>(std::max<std::size_t>(b.wide.size(), 1) + 1),
                            static_cast<int>(b.bits));
    }
    if (numbers > kMostNumbers || plan_.work > kMostWork) return too_wide();
    for (Bucket& b : plan_.buckets) {
      join(b);
      store(b);
    }
    return std::move(plan_);
  }

 private:
  /// The tables alone, before anything is laid out.
  bool bounded() const {
    double numbers = 0.0;
    for (const TakenOut& out : order_) {
      numbers +=
          std::ldexp(2.0, static_cast<int>(std::min<std::size_t>(out.neighbours.size(), 60)));
    }
    return numbers <= kMostNumbers;
  }

  /// The vertices of a bucket's table by bit: last taken out first, the bucket's own at the end.
  std::vector<std::size_t> members(std::size_t turn) const {
    std::vector<std::size_t> all = order_[turn].neighbours;
    all.push_back(order_[turn].vertex);
    std::sort(all.begin(), all.end(),
              [&](std::size_t a, std::size_t b) { return turn_[a] > turn_[b]; });
    return all;
  }

  Bucket bucket(const TakenOut& out) const {
    Bucket b;
    b.vertex = part_.vertices[out.vertex];
    const std::vector<std::size_t> all = members(turn_[out.vertex]);
    b.bits = static_cast<unsigned>(all.size());
    const std::uint32_t own = std::uint32_t{1} << (b.bits - 1);
    for (unsigned bit = 0; bit < b.bits; ++bit) {
      const Vertex& other = part_.vertices[all[bit]];
      const std::uint32_t mask = std::uint32_t{1} << bit;
      if (other.is_cause) b.cause_mask |= mask;
      if (other.is_cause == b.vertex.is_cause) continue;
      const Vertex& cause = other.is_cause ? other : b.vertex;
      const Vertex& sign = other.is_cause ? b.vertex : other;
      const SharedSign& shared = shape_.shared[sign.index];
      const auto at = std::lower_bound(shared.causes.begin(), shared.causes.end(), cause.index);
      if (at == shared.causes.end() || *at != cause.index) continue;  // tied, but not linked
      b.acts.push_back({other.is_cause ? mask : own, other.is_cause ? own : mask,
                        shared.strengths[static_cast<std::size_t>(at - shared.causes.begin())]});
    }
    return b;
  }

  void send(std::size_t turn) {
    Bucket& b = plan_.buckets[turn];
    if (b.bits == 1) return;
    std::vector<std::size_t> mine = members(turn);
    mine.pop_back();
    const std::size_t target = turn_[mine.back()];
    Bucket& to = plan_.buckets[target];
    if (mine.size() == 1) {
      to.narrow.push_back(turn);
      return;
    }
    to.wide.push_back(turn);
    const std::vector<std::size_t> theirs = members(target);
    b.place.assign(std::size_t{1} << mine.size(), 0);
    for (std::size_t bit = 0; bit < mine.size(); ++bit) {
      const auto at = std::find(theirs.begin(), theirs.end(), mine[bit]) - theirs.begin();
      const std::uint32_t mask = std::uint32_t{1} << at;
      b.placed.push_back(static_cast<unsigned>(at));
      b.placed_mask |= mask;
      const std::size_t half = std::size_t{1} << bit;
      for (std::size_t i = 0; i < half; ++i) b.place[half + i] = b.place[i] | mask;
    }
  }

  int signs_of_message(std::size_t turn, const Bucket& to) const {
    return std::popcount(plan_.buckets[turn].placed_mask & ~to.cause_mask);
  }

  /// The message of most signs is taken over as it is, the others join it.
  void sort_messages(Bucket& b) const {
    std::stable_sort(b.wide.begin(), b.wide.end(), [&](std::size_t x, std::size_t y) {
      return signs_of_message(x, b) > signs_of_message(y, b);
    });
  }

  void join(Bucket& b) const {
    for (std::size_t j = 1; j < b.wide.size(); ++j) {
      b.joins.push_back(join_of(b.bits, b.cause_mask, plan_.buckets[b.wide[j]].placed));
    }
  }

  double work(const Bucket& b) const {
    double passes = kTablePasses;
    for (std::size_t j = 1; j < b.wide.size(); ++j) {
      passes += kJoinPasses * std::pow(kSignPasses, signs_of_message(b.wide[j], b));
    }
    return std::ldexp(passes, static_cast<int>(b.bits));
  }

  void store(Bucket& b) {
    const std::size_t size = std::size_t{1} << b.bits;
    const auto take = [&](std::size_t n) {
      const std::size_t at = plan_.numbers;
      plan_.numbers += n;
      return at;
    };
    b.table = take(size);
    b.partials = take(b.wide.size() > 1 ? size * (b.wide.size() - 1) : 0);
    b.message = take(size / 2);
    b.outside = take(size / 2);
    plan_.widest = std::max(plan_.widest, size);
  }

  const Shape& shape_;
  const Part& part_;
  std::vector<TakenOut> order_;
  std::vector<std::size_t> turn_;  ///< of each vertex in the order
  Plan plan_;
};

}  // namespace

Result<Plan> plan_of(const Shape& shape, const Part& part) { return Planner(shape, part).plan(); }

}  // namespace pinwright
