#include "engine/diagnosis/sweep.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "engine/diagnosis/order.h"

namespace pinwright {
namespace {

constexpr double kMostNumbers = 16777216.0;  ///< 2^24 doubles in all tables: 128 MB
constexpr double kImpossible = -std::numeric_limits<double>::infinity();

/// Indexed by the set of open signs that are on: bit p is the p-th open sign.
using Table = std::vector<double>;

Problem too_wide() {
  return {"evidence-too-wide", "evidence",
          "Too many present signs share their causes to weigh them exactly.",
          "Give fewer findings at a time: the clearest first."};
}

Problem impossible() {
  return {"evidence-impossible", "evidence",
          "The findings cannot stand together: nothing that is left can make one of them.",
          "Look again at the findings that contradict, or give the sign a leak above 0."};
}

/// Divides by a power of two, so exactly, and returns the exponent; nothing when all are zero.
std::optional<int> rescale(Table& table) {
  const double most = *std::max_element(table.begin(), table.end());
  if (!(most > 0.0)) return std::nullopt;
  const int exponent = std::max(std::ilogb(most), -1000);  // 2^1000 is still a number
  const double factor = std::ldexp(1.0, -exponent);
  for (double& value : table) value *= factor;
  return exponent;
}

/// `low` with a zero put in at `position`.
std::size_t with_gap(std::size_t low, std::size_t position) {
  const std::size_t below = (std::size_t{1} << position) - 1;
  return ((low & ~below) << 1) | (low & below);
}

// Forward: P(signs switched on so far, all closed ones on).

void open_forward(const Turn& turn, Table& table) {
  for (double leak : turn.opens) {
    const std::size_t n = table.size();
    table.resize(2 * n);
    for (std::size_t i = 0; i < n; ++i) {
      table[n + i] = table[i] * leak;
      table[i] *= 1.0 - leak;
    }
  }
}

void act_forward(const Turn& turn, double on, double off, Table& table) {
  Table held = table;
  for (const Turn::Bit& bit : turn.bits) {
    const std::size_t mask = std::size_t{1} << bit.position;
    for (std::size_t i = 0; i < held.size(); ++i) {
      if (i & mask) continue;
      held[i | mask] += held[i] * bit.strength;
      held[i] *= 1.0 - bit.strength;
    }
  }
  for (std::size_t i = 0; i < table.size(); ++i) table[i] = off * table[i] + on * held[i];
}

void close_forward(const Turn& turn, Table& table) {
  for (const Turn::Close& close : turn.closes) {
    const std::size_t n = table.size() / 2;
    const std::size_t bit = std::size_t{1} << close.position;
    for (std::size_t i = 0; i < n; ++i) {
      const std::size_t off = with_gap(i, close.position);
      table[i] = close.observed.if_unseen * table[off] + close.observed.if_seen * table[off | bit];
    }
    table.resize(n);
  }
}

// Backward: P(all signs still open end on | those that are on now).

void close_backward(const Turn& turn, Table& table) {
  for (auto close = turn.closes.rbegin(); close != turn.closes.rend(); ++close) {
    Table wider(2 * table.size());
    const std::size_t bit = std::size_t{1} << close->position;
    for (std::size_t i = 0; i < table.size(); ++i) {
      const std::size_t off = with_gap(i, close->position);
      wider[off] = close->observed.if_unseen * table[i];
      wider[off | bit] = close->observed.if_seen * table[i];
    }
    table = std::move(wider);
  }
}

/// What the table becomes when the cause holds; without it the table stays as it is.
Table held_backward(const Turn& turn, Table table) {
  for (const Turn::Bit& bit : turn.bits) {
    const std::size_t mask = std::size_t{1} << bit.position;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (i & mask) continue;
      table[i] = (1.0 - bit.strength) * table[i] + bit.strength * table[i | mask];
    }
  }
  return table;
}

void open_backward(const Turn& turn, Table& table) {
  for (auto leak = turn.opens.rbegin(); leak != turn.opens.rend(); ++leak) {
    const std::size_t n = table.size() / 2;
    for (std::size_t i = 0; i < n; ++i) table[i] = (1.0 - *leak) * table[i] + *leak * table[n + i];
    table.resize(n);
  }
}

/// Forward tables are kept only at every `stride`-th turn and made again from there, which bounds
/// memory by the square root of the turns.
std::size_t stride(std::size_t turns) {
  return static_cast<std::size_t>(std::ceil(std::sqrt(static_cast<double>(turns))));
}

double numbers_needed(const std::vector<Turn>& turns) {
  double kept = 0.0;
  double run = 0.0;
  double most_run = 0.0;
  double widest = 1.0;
  for (std::size_t t = 0; t < turns.size(); ++t) {
    if (t % stride(turns.size()) == 0) {
      kept += std::ldexp(1.0, static_cast<int>(turns[t].before));
      run = 0.0;
    }
    run += std::ldexp(1.0, static_cast<int>(turns[t].within));
    widest = std::max(widest, std::ldexp(1.0, static_cast<int>(turns[t].within)));
    most_run = std::max(most_run, run);
  }
  return kept + most_run + 4.0 * widest;  // a table, a copy at work, and two backward
}

class Sweep {
 public:
  explicit Sweep(const Folded& folded) : folded_(folded), turns_(order_turns(folded)) {}

  bool fits() const { return numbers_needed(turns_) <= kMostNumbers; }

  /// Log of the evidence's probability; keeps the tables that backward() starts from.
  double forward(bool keep) {
    Table table{1.0};
    long exponents = 0;
    for (std::size_t t = 0; t < turns_.size(); ++t) {
      if (keep && t % stride(turns_.size()) == 0) kept_.push_back(table);
      step(turns_[t], table, nullptr);
      const std::optional<int> exponent = rescale(table);
      if (!exponent) return kImpossible;
      exponents += *exponent;
    }
    return folded_.log_scale + static_cast<double>(exponents) * std::numbers::ln2 +
           std::log(table.front());
  }

  /// False when the two halves meet nowhere within the range of numbers.
  bool backward(Marginals& marginals) {
    Table after{1.0};
    for (std::size_t block = kept_.size(); block-- > 0;) {
      const std::size_t first = block * stride(turns_.size());
      const std::size_t last = std::min(turns_.size(), first + stride(turns_.size()));
      std::vector<Table> before = run(first, last, kept_[block]);
      for (std::size_t t = last; t-- > first;) {
        if (!back_step(turns_[t], before[t - first], after, marginals)) return false;
        before.pop_back();
      }
    }
    return true;
  }

 private:
  /// `opened`, when asked for, receives the table as the cause finds it.
  void step(const Turn& turn, Table& table, Table* opened) const {
    open_forward(turn, table);
    if (opened) *opened = table;
    act_forward(turn, folded_.on[turn.cause], folded_.off[turn.cause], table);
    close_forward(turn, table);
  }

  std::vector<Table> run(std::size_t first, std::size_t last, Table table) const {
    std::vector<Table> opened(last - first);
    for (std::size_t t = first; t < last; ++t) {
      step(turns_[t], table, &opened[t - first]);
      rescale(table);
    }
    return opened;
  }

  bool back_step(const Turn& turn, const Table& before, Table& after, Marginals& marginals) const {
    close_backward(turn, after);
    const Table held = held_backward(turn, after);
    const double on = folded_.on[turn.cause];
    const double off = folded_.off[turn.cause];
    double sum_on = 0.0;
    double sum_off = 0.0;
    for (std::size_t i = 0; i < before.size(); ++i) {
      sum_on += before[i] * held[i];
      sum_off += before[i] * after[i];
      after[i] = off * after[i] + on * held[i];
    }
    sum_on *= on;
    sum_off *= off;
    if (!(sum_on + sum_off > 0.0)) return false;
    marginals.on[turn.cause] = sum_on / (sum_on + sum_off);
    marginals.off[turn.cause] = sum_off / (sum_on + sum_off);
    open_backward(turn, after);
    rescale(after);
    return true;
  }

  const Folded& folded_;
  std::vector<Turn> turns_;
  std::vector<Table> kept_;
};

}  // namespace

Result<Marginals> sweep(const Folded& folded) {
  if (folded.impossible) return impossible();
  Sweep sweep(folded);
  if (!sweep.fits()) return too_wide();
  Marginals marginals{folded.on, folded.off, sweep.forward(true)};
  if (marginals.log_evidence == kImpossible) return impossible();
  if (!sweep.backward(marginals)) return impossible();
  return marginals;
}

Result<double> log_evidence(const Folded& folded) {
  if (folded.impossible) return kImpossible;
  Sweep sweep(folded);
  if (!sweep.fits()) return too_wide();
  return sweep.forward(false);
}

}  // namespace pinwright
