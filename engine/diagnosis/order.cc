#include "engine/diagnosis/order.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <tuple>

namespace pinwright {
namespace {

// Work from which other orders are worth a look, each of which takes some 20 us.
constexpr double kWorthALook = 4e4;
constexpr double kDear = 1e6;
constexpr double kVeryDear = 8e6;
constexpr std::uint64_t kTries = 8;
constexpr std::uint64_t kMoreTries = 40;

using Row = std::vector<std::uint64_t>;

void put(Row& row, std::size_t v) { row[v / 64] |= std::uint64_t{1} << (v % 64); }
void drop(Row& row, std::size_t v) { row[v / 64] &= ~(std::uint64_t{1} << (v % 64)); }

template <class Act>
void each(const Row& row, const Act& act) {
  for (std::size_t w = 0; w < row.size(); ++w) {
    for (std::uint64_t rest = row[w]; rest != 0; rest &= rest - 1) {
      act(64 * w + static_cast<std::size_t>(std::countr_zero(rest)));
    }
  }
}

std::size_t count(const Row& row) {
  std::size_t n = 0;
  for (const std::uint64_t word : row) n += static_cast<std::size_t>(std::popcount(word));
  return n;
}

/// Which vertices go first, whatever they tie.
enum class First { any, causes, signs };

struct Way {
  bool fill_first = true;
  std::uint64_t seed = 0;  ///< 0: ties by number
  First first = First::any;
};

/// A fixed scramble of a number (the finaliser of SplitMix64).
std::uint64_t scrambled(std::uint64_t x) {
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9U;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebU;
  return x ^ (x >> 31);
}

class Graph {
 public:
  explicit Graph(const Part& part) : part_(part), rows_(part.edges.size()) {
    const std::size_t words = (rows_.size() + 63) / 64;
    for (std::size_t v = 0; v < rows_.size(); ++v) {
      rows_[v].assign(words, 0);
      for (const std::size_t u : part.edges[v]) put(rows_[v], u);
      waiting_.push_back(v);
    }
    keys_.resize(rows_.size());
    stale_.assign(rows_.size(), true);
  }

  /// Takes out the vertices that have one neighbour at most, again and again.
  std::vector<TakenOut> take_ends() {
    std::vector<TakenOut> taken;
    for (bool some = true; some;) {
      some = false;
      for (const std::size_t v : std::vector<std::size_t>(waiting_)) {
        if (count(rows_[v]) > 1) continue;
        taken.push_back(take(v));
        some = true;
      }
    }
    return taken;
  }

  /// Takes out all that is left, in one way.
  std::vector<TakenOut> take_all(Way way) {
    way_ = way;
    std::vector<TakenOut> taken;
    while (!waiting_.empty()) taken.push_back(take(next()));
    return taken;
  }

 private:
  using Key = std::tuple<bool, std::size_t, std::size_t, std::uint64_t>;

  std::size_t next() {
    std::size_t best = waiting_.front();
    for (const std::size_t v : waiting_) {
      if (stale_[v]) keys_[v] = key(v);
      stale_[v] = false;
      if (keys_[v] < keys_[best]) best = v;
    }
    return best;
  }

  Key key(std::size_t v) const {
    const std::size_t degree = count(rows_[v]);
    const std::uint64_t tie = way_.seed == 0 ? v : scrambled(way_.seed * 0x9e3779b97f4a7c15U + v);
    if (degree <= 1) return {false, 0, 0, tie};
    const bool later = way_.first == (part_.vertices[v].is_cause ? First::signs : First::causes);
    const std::size_t missing = fill(v, degree);
    return way_.fill_first ? Key{later, 1 + missing, degree, tie}
                           : Key{later, 1 + degree, missing, tie};
  }

  /// Pairs of neighbours that are not tied yet.
  std::size_t fill(std::size_t v, std::size_t degree) const {
    std::size_t tied = 0;
    each(rows_[v], [&](std::size_t u) {
      for (std::size_t w = 0; w < rows_[v].size(); ++w) {
        tied += static_cast<std::size_t>(std::popcount(rows_[v][w] & rows_[u][w]));
      }
    });
    return (degree * (degree - 1) - tied) / 2;
  }

  TakenOut take(std::size_t v) {
    TakenOut taken{v, {}};
    each(rows_[v], [&](std::size_t u) { taken.neighbours.push_back(u); });
    for (const std::size_t u : taken.neighbours) {
      for (std::size_t w = 0; w < rows_[u].size(); ++w) rows_[u][w] |= rows_[v][w];
      drop(rows_[u], u);
      drop(rows_[u], v);
    }
    for (const std::size_t u : taken.neighbours) {
      stale_[u] = true;
      each(rows_[u], [&](std::size_t w) { stale_[w] = true; });
    }
    std::erase(waiting_, v);
    return taken;
  }

  const Part& part_;
  Way way_;
  std::vector<Row> rows_;
  std::vector<std::size_t> waiting_;
  std::vector<Key> keys_;
  std::vector<bool> stale_;
};

/// Multiplications, roughly: a table for every vertex, and dearer passes over it where more than
/// one branch meets there, by the signs that the branches share (plan.cc works it out in full).
double cost(const Part& part, const std::vector<TakenOut>& order) {
  std::vector<std::size_t> turn(order.size());
  for (std::size_t t = 0; t < order.size(); ++t) turn[order[t].vertex] = t;
  std::vector<double> meeting(order.size(), 0.0);  // passes, by turn
  std::vector<double> dearest(order.size(), 0.0);
  double sum = 0.0;
  for (std::size_t t = 0; t < order.size(); ++t) {
    const std::vector<std::size_t>& around = order[t].neighbours;
    const double passes =
        kTablePasses + meeting[t] - dearest[t];  // the dearest is taken over as it is
    sum += std::ldexp(passes, static_cast<int>(around.size()) + 1);
    if (around.size() < 2) continue;
    std::size_t target = order.size();
    double pass = kJoinPasses;
    for (const std::size_t u : around) {
      target = std::min(target, turn[u]);
      if (!part.vertices[u].is_cause) pass *= kSignPasses;
    }
    meeting[target] += pass;
    dearest[target] = std::max(dearest[target], pass);
  }
  return sum;
}

}  // namespace

std::vector<Part> connected_parts(const Shape& shape) {
  // Vertices of the whole shape: causes that some sign ties, then signs.
  std::vector<Vertex> vertices;
  std::vector<std::size_t> causes;
  for (const SharedSign& sign : shape.shared) {
    causes.insert(causes.end(), sign.causes.begin(), sign.causes.end());
  }
  std::sort(causes.begin(), causes.end());
  causes.erase(std::unique(causes.begin(), causes.end()), causes.end());
  for (const std::size_t c : causes) vertices.push_back({true, c});
  for (std::size_t s = 0; s < shape.shared.size(); ++s) vertices.push_back({false, s});
  std::vector<std::vector<std::size_t>> edges(vertices.size());
  for (std::size_t s = 0; s < shape.shared.size(); ++s) {
    for (const std::size_t c : shape.shared[s].causes) {
      const auto at = std::lower_bound(causes.begin(), causes.end(), c) - causes.begin();
      edges[static_cast<std::size_t>(at)].push_back(causes.size() + s);
      edges[causes.size() + s].push_back(static_cast<std::size_t>(at));
    }
  }

  std::vector<Part> parts;
  constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  std::vector<std::size_t> part_of(vertices.size(), kNone);
  std::vector<std::size_t> number(vertices.size());
  for (std::size_t start = 0; start < vertices.size(); ++start) {
    if (part_of[start] != kNone) continue;
    std::vector<std::size_t> found = {start};
    part_of[start] = parts.size();
    for (std::size_t i = 0; i < found.size(); ++i) {
      for (const std::size_t u : edges[found[i]]) {
        if (part_of[u] != kNone) continue;
        part_of[u] = parts.size();
        found.push_back(u);
      }
    }
    std::sort(found.begin(), found.end());
    Part part;
    for (const std::size_t v : found) {
      number[v] = part.vertices.size();
      part.vertices.push_back(vertices[v]);
    }
    for (const std::size_t v : found) {
      std::vector<std::size_t>& mine = part.edges.emplace_back();
      for (const std::size_t u : edges[v]) mine.push_back(number[u]);
    }
    parts.push_back(std::move(part));
  }
  return parts;
}

std::vector<TakenOut> elimination_order(const Part& part) {
  Graph core(part);
  const std::vector<TakenOut> ends = core.take_ends();
  std::vector<TakenOut> kept;
  double least = std::numeric_limits<double>::infinity();
  const auto try_way = [&](Way way) {
    std::vector<TakenOut> tried = ends;
    for (TakenOut& out : Graph(core).take_all(way)) tried.push_back(std::move(out));
    const double mine = cost(part, tried);
    if (mine >= least) return;
    least = mine;
    kept = std::move(tried);
  };
  try_way({true, 0});
  if (least > kWorthALook) try_way({false, 0});
  if (least > kDear) {
    try_way({false, 0, First::causes});
    try_way({false, 0, First::signs});
  }
  for (std::uint64_t seed = 1; seed <= kTries && least > kDear; ++seed) {
    try_way({seed % 3 != 0, seed});
  }
  for (std::uint64_t seed = kTries + 1; seed <= kMoreTries && least > kVeryDear; ++seed) {
    try_way({seed % 3 != 0, seed});
  }
  return kept;
}

}  // namespace pinwright
