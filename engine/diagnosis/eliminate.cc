#include "engine/diagnosis/eliminate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace pinwright {
namespace {

using Pair = std::array<double, 2>;  ///< by the state of one vertex

/// Divides by a power of two, so exactly, and returns the exponent; nothing when all are zero.
std::optional<int> rescale(double* first, std::size_t n) {
  const double most = *std::max_element(first, first + n);
  if (!(most > 0.0)) return std::nullopt;
  const int exponent = std::max(std::ilogb(most), -1000);  // 2^1000 is still a number
  if (exponent == 0) return 0;
  const double factor = std::ldexp(1.0, -exponent);
  for (std::size_t i = 0; i < n; ++i) first[i] *= factor;
  return exponent;
}

/// Calls act(q) for every q whose bits lie in `mask`, ascending.
template <class Act>
void each_within(std::uint32_t mask, const Act& act) {
  std::uint32_t q = 0;
  do {
    act(q);
    q = (q - mask) & mask;
  } while (q != 0);
}

class Run {
 public:
  Run(const Plan& plan, const Shape& shape, const Network& network, const Folded& folded,
      Store& store)
      : plan_(plan), shape_(shape), network_(network), folded_(folded) {
    if (store.numbers.size() < plan.numbers) store.numbers.resize(plan.numbers);
    if (store.work.size() < 10 * plan.widest) store.work.resize(10 * plan.widest);
    at_ = store.numbers.data();
    work_ = store.work.data();
  }

  double up() {
    long exponents = 0;
    for (const Bucket& b : plan_.buckets) {
      fill(b);
      act(b);
      const Pair close = closing(b);
      const std::size_t half = std::size_t{1} << (b.bits - 1);
      const double* table = at_ + b.table;
      double* message = at_ + b.message;
      for (std::size_t i = 0; i < half; ++i) {
        message[i] = close[0] * table[i] + close[1] * table[half + i];
      }
      const std::optional<int> exponent = rescale(message, half);
      if (!exponent) return kImpossibleLog;
      exponents += *exponent;
    }
    const double last = at_[plan_.buckets.back().message];
    return static_cast<double>(exponents) * std::numbers::ln2 + std::log(last);
  }

  bool down(Marginals& marginals) {
    at_[plan_.buckets.back().outside] = 1.0;
    for (std::size_t t = plan_.buckets.size(); t-- > 0;) {
      if (!down(plan_.buckets[t], marginals)) return false;
    }
    return true;
  }

 private:
  // Up.

  void fill(const Bucket& b) {
    const std::size_t size = std::size_t{1} << b.bits;
    double* table = at_ + b.table;
    std::fill(table, table + size, 0.0);
    if (b.wide.empty()) {
      each_within(b.cause_mask, [&](std::uint32_t q) { table[q] = 1.0; });
      return;
    }
    const Bucket& first = plan_.buckets[b.wide.front()];
    const double* message = at_ + first.message;
    each_within(b.cause_mask & ~first.placed_mask, [&](std::uint32_t rest) {
      for (std::size_t i = 0; i < first.place.size(); ++i)
        table[first.place[i] | rest] = message[i];
    });
    for (std::size_t j = 1; j < b.wide.size(); ++j) {
      double* partial = at_ + b.partials + (j - 1) * size;
      std::copy(table, table + size, partial);
      join(b.joins[j - 1], partial, at_ + plan_.buckets[b.wide[j]].message, table, work_);
    }
  }

  void act(const Bucket& b) {
    double* table = at_ + b.table;
    for (const Bucket::Act& a : b.acts) {
      each_within(mask_of(b) & ~(a.cause | a.sign), [&](std::uint32_t rest) {
        const std::uint32_t q = rest | a.cause;
        table[q | a.sign] += a.strength * table[q];
        table[q] *= 1.0 - a.strength;
      });
    }
  }

  // Of the vertex alone.

  Pair message_of(std::size_t narrow) const {
    const double* message = at_ + plan_.buckets[narrow].message;
    return {message[0], message[1]};
  }

  Pair own(const Bucket& b) const {
    if (b.vertex.is_cause) return {folded_.off[b.vertex.index], folded_.on[b.vertex.index]};
    const double leak = network_.signs[shape_.shared[b.vertex.index].sign].leak;
    return {1.0 - leak, leak};
  }

  /// Two things known of a vertex: both hold of a cause, either switches a sign on.
  static Pair met(const Bucket& b, const Pair& x, const Pair& y) {
    if (b.vertex.is_cause) return {x[0] * y[0], x[1] * y[1]};
    return {x[0] * y[0], x[1] * y[1] + x[0] * y[1] + x[1] * y[0]};
  }

  /// Weights of the two states of the table, given all that is known of the vertex alone.
  Pair weights(const Bucket& b, const Pair& known) const {
    if (b.vertex.is_cause) return known;
    const Likelihood& seen = folded_.seen[b.vertex.index];
    return {known[0] * seen.if_unseen + known[1] * seen.if_seen,
            (known[0] + known[1]) * seen.if_seen};
  }

  Pair closing(const Bucket& b) const {
    Pair known = own(b);
    for (const std::size_t narrow : b.narrow) known = met(b, known, message_of(narrow));
    return weights(b, known);
  }

  // Down.

  bool down(const Bucket& b, Marginals& marginals) {
    const std::size_t half = std::size_t{1} << (b.bits - 1);
    const double* table = at_ + b.table;
    const double* outside = at_ + b.outside;
    Pair sum = {0.0, 0.0};
    for (std::size_t i = 0; i < half; ++i) {
      sum[0] += outside[i] * table[i];
      sum[1] += outside[i] * table[half + i];
    }
    const Pair close = closing(b);
    if (!(sum[0] * close[0] + sum[1] * close[1] > 0.0)) return false;
    if (b.vertex.is_cause) {
      const double off = sum[0] * close[0];
      const double on = sum[1] * close[1];
      marginals.on[b.vertex.index] = on / (on + off);
      marginals.off[b.vertex.index] = off / (on + off);
    }
    to_narrow(b, sum);
    if (b.wide.empty()) return true;
    double* given = work_;
    for (std::size_t i = 0; i < half; ++i) {
      given[i] = outside[i] * close[0];
      given[half + i] = outside[i] * close[1];
    }
    act_back(b, given);
    for (std::size_t j = b.wide.size(); j-- > 1;) join_back(b, j, given);
    const Bucket& first = plan_.buckets[b.wide.front()];
    double* theirs = at_ + first.outside;
    std::fill(theirs, theirs + first.place.size(), 0.0);
    each_within(b.cause_mask & ~first.placed_mask, [&](std::uint32_t rest) {
      for (std::size_t i = 0; i < first.place.size(); ++i)
        theirs[i] += given[first.place[i] | rest];
    });
    return rescale(theirs, first.place.size()).has_value();
  }

  /// What each narrow message is weighed with: the table's sums and all the other narrow ones.
  void to_narrow(const Bucket& b, const Pair& sum) {
    const std::size_t n = b.narrow.size();
    if (n == 0) return;
    std::vector<Pair> later(n);  // all after the j-th
    for (std::size_t j = n - 1; j > 0; --j) {
      const Pair message = message_of(b.narrow[j]);
      later[j - 1] = j == n - 1 ? message : met(b, later[j], message);
    }
    Pair before = own(b);
    for (std::size_t j = 0; j < n; ++j) {
      const Pair rest = j + 1 < n ? met(b, before, later[j]) : before;
      double* theirs = at_ + plan_.buckets[b.narrow[j]].outside;
      if (b.vertex.is_cause) {
        theirs[0] = sum[0] * rest[0];
        theirs[1] = sum[1] * rest[1];
      } else {
        const Likelihood& seen = folded_.seen[b.vertex.index];
        const double if_off = seen.if_unseen * sum[0] + seen.if_seen * sum[1];
        const double if_on = seen.if_seen * (sum[0] + sum[1]);
        theirs[0] = rest[0] * if_off + rest[1] * if_on;
        theirs[1] = (rest[0] + rest[1]) * if_on;
      }
      rescale(theirs, 2);
      before = met(b, before, message_of(b.narrow[j]));
    }
  }

  /// From weights of the states after the links acted to weights of those before.
  static void act_back(const Bucket& b, double* given) {
    for (auto a = b.acts.rbegin(); a != b.acts.rend(); ++a) {
      each_within(mask_of(b) & ~(a->cause | a->sign), [&](std::uint32_t rest) {
        const std::uint32_t q = rest | a->cause;
        given[q] = (1.0 - a->strength) * given[q] + a->strength * given[q | a->sign];
      });
    }
  }

  void join_back(const Bucket& b, std::size_t j, double* given) {
    const std::size_t size = std::size_t{1} << b.bits;
    const Bucket& from = plan_.buckets[b.wide[j]];
    const double* before = at_ + b.partials + (j - 1) * size;
    double* theirs = at_ + from.outside;
    pinwright::join_back(b.joins[j - 1], before, at_ + from.message, given, given, theirs,
                         work_ + plan_.widest);
    rescale(theirs, from.place.size());
  }

  static std::uint32_t mask_of(const Bucket& b) {
    return static_cast<std::uint32_t>((std::uint64_t{1} << b.bits) - 1);
  }

  const Plan& plan_;
  const Shape& shape_;
  const Network& network_;
  const Folded& folded_;
  double* at_ = nullptr;
  double* work_ = nullptr;
};

}  // namespace

double up(const Plan& plan, const Shape& shape, const Network& network, const Folded& folded,
          Store& store) {
  return Run(plan, shape, network, folded, store).up();
}

bool down(const Plan& plan, const Shape& shape, const Network& network, const Folded& folded,
          Store& store, Marginals& marginals) {
  return Run(plan, shape, network, folded, store).down(marginals);
}

}  // namespace pinwright
