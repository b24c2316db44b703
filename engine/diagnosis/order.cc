#include "engine/diagnosis/order.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <tuple>

namespace pinwright {
namespace {

constexpr std::size_t kWide = 10;  ///< open signs from which a better order is worth looking for

struct Occurrence {
  std::size_t sign = 0;
  double strength = 0.0;
};

class Planner {
 public:
  explicit Planner(const Folded& folded) : folded_(folded), of_cause_(folded.on.size()) {
    for (std::size_t s = 0; s < folded.shared.size(); ++s) {
      const SharedSign& sign = folded.shared[s];
      for (std::size_t i = 0; i < sign.causes.size(); ++i) {
        of_cause_[sign.causes[i]].push_back({s, sign.strengths[i]});
      }
    }
    for (std::size_t c = 0; c < of_cause_.size(); ++c) {
      if (!of_cause_[c].empty()) causes_.push_back(c);
    }
  }

  const std::vector<std::size_t>& causes() const { return causes_; }

  std::vector<Turn> plan(std::optional<std::size_t> first) const {
    State state{std::vector<std::size_t>(folded_.shared.size()), {}, causes_};
    for (std::size_t s = 0; s < folded_.shared.size(); ++s) {
      state.left[s] = folded_.shared[s].causes.size();
    }
    std::vector<Turn> turns;
    if (first) turns.push_back(take(*first, state));
    while (!state.waiting.empty()) turns.push_back(take(best(state), state));
    return turns;
  }

 private:
  struct State {
    std::vector<std::size_t> left;     ///< causes still to come, by shared sign
    std::vector<std::size_t> open;     ///< open signs, by bit position
    std::vector<std::size_t> waiting;  ///< causes still to come
  };

  bool fresh(const State& state, std::size_t s) const {
    return state.left[s] == folded_.shared[s].causes.size();
  }

  std::size_t best(const State& state) const {
    using Key = std::tuple<std::size_t, std::size_t, std::size_t>;
    std::optional<Key> least;
    for (std::size_t c : state.waiting) {
      std::size_t opens = 0;
      std::size_t closes = 0;
      for (const Occurrence& at : of_cause_[c]) {
        if (fresh(state, at.sign)) ++opens;
        if (state.left[at.sign] == 1) ++closes;
      }
      const Key key{state.open.size() + opens - closes, opens, c};
      if (!least || key < *least) least = key;
    }
    return std::get<2>(*least);
  }

  Turn take(std::size_t cause, State& state) const {
    Turn turn;
    turn.cause = cause;
    turn.before = state.open.size();
    for (const Occurrence& at : of_cause_[cause]) {
      if (!fresh(state, at.sign)) continue;
      turn.opens.push_back(folded_.shared[at.sign].leak);
      state.open.push_back(at.sign);
    }
    turn.within = state.open.size();
    for (const Occurrence& at : of_cause_[cause]) {
      const auto found = std::find(state.open.begin(), state.open.end(), at.sign);
      const auto position = static_cast<std::size_t>(found - state.open.begin());
      turn.bits.push_back({position, at.strength});
      if (--state.left[at.sign] == 0) {
        turn.closes.push_back({position, folded_.shared[at.sign].observed});
      }
    }
    std::sort(turn.closes.begin(), turn.closes.end(),
              [](const Turn::Close& a, const Turn::Close& b) { return a.position > b.position; });
    for (const Turn::Close& close : turn.closes) {
      state.open.erase(state.open.begin() + static_cast<std::ptrdiff_t>(close.position));
    }
    std::erase(state.waiting, cause);
    return turn;
  }

  const Folded& folded_;
  std::vector<std::vector<Occurrence>> of_cause_;
  std::vector<std::size_t> causes_;
};

double cost(const std::vector<Turn>& turns) {
  double sum = 0.0;
  for (const Turn& turn : turns) {
    sum += std::ldexp(static_cast<double>(1 + turn.bits.size()), static_cast<int>(turn.within));
  }
  return sum;
}

}  // namespace

std::vector<Turn> order_turns(const Folded& folded) {
  const Planner planner(folded);
  std::vector<Turn> kept = planner.plan(std::nullopt);
  const bool wide =
      std::any_of(kept.begin(), kept.end(), [](const Turn& turn) { return turn.within > kWide; });
  if (!wide) return kept;
  for (std::size_t first : planner.causes()) {
    std::vector<Turn> tried = planner.plan(first);
    if (cost(tried) < cost(kept)) kept = std::move(tried);
  }
  return kept;
}

}  // namespace pinwright
