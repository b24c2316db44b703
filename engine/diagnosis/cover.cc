#include "engine/diagnosis/cover.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace pinwright {
namespace {

constexpr double kLeast = 1e-300;
constexpr double kNothingYet = -std::numeric_limits<double>::infinity();
constexpr int kRounds = 3;        ///< of coordinate descent a node
constexpr double kSlack = 1e-10;  ///< sets that differ by less are equally good

enum class State : unsigned char { undecided, in, out };

/// How far a sign is made: P(there | causes taken) and P(not there), both kept.
struct Made {
  double there = 0.0;
  double not_there = 1.0;
  Made with(double strength) const {
    return {there + not_there * strength, not_there * (1.0 - strength)};
  }
};

double log_likelihood(const Likelihood& observed, const Made& made) {
  return std::log(
      std::max(kLeast, observed.if_seen * made.there + observed.if_unseen * made.not_there));
}

class Search {
 public:
  Search(const Cover& cover, std::size_t most_nodes) : cover_(cover), left_(most_nodes) {
    state_.assign(cover.weights.size(), State::undecided);
    for (const CoverSign& sign : cover.signs) made_.push_back({sign.leak, 1.0 - sign.leak});
    of_cause_.resize(cover.weights.size());
    for (std::size_t s = 0; s < cover.signs.size(); ++s) {
      for (std::size_t i = 0; i < cover.signs[s].causes.size(); ++i) {
        of_cause_[cover.signs[s].causes[i]].push_back({s, cover.signs[s].strengths[i]});
      }
    }
    gain_.resize(cover.signs.size());
  }

  std::optional<std::vector<CoverSet>> run() {
    std::vector<double> share(cover_.signs.size(), 0.5);
    offer();
    if (!branch(share)) return std::nullopt;
    return std::move(found_);
  }

 private:
  struct Linked {
    std::size_t sign = 0;
    double strength = 0.0;
  };

  double score() const {
    double sum = taken_weight_;
    for (std::size_t s = 0; s < made_.size(); ++s) {
      sum += log_likelihood(cover_.signs[s].observed, made_[s]);
    }
    return sum;
  }

  /// The causes taken in, all undecided ones out, as a candidate. Every set is offered once.
  void offer() {
    const double mine = score();
    if (found_.size() == 2 && mine <= found_[1].score) return;
    CoverSet set{{}, mine};
    for (std::size_t c = 0; c < state_.size(); ++c) {
      if (state_[c] == State::in) set.taken.push_back(c);
    }
    const bool first = found_.empty() || mine > found_[0].score;
    found_.insert(first ? found_.begin() : found_.begin() + 1, std::move(set));
    if (found_.size() > 2) found_.pop_back();
  }

  double to_beat() const { return found_.size() < 2 ? kNothingYet : found_[1].score; }

  bool branch(std::vector<double> share) {
    if (left_ == 0) return false;
    --left_;
    const double most = bound(share);
    if (most <= to_beat() + kSlack) return true;
    std::size_t next = state_.size();
    for (std::size_t c = 0; c < state_.size(); ++c) {
      if (state_[c] != State::undecided) continue;
      if (next == state_.size() || worth_[c] > worth_[next]) next = c;
    }
    if (next == state_.size()) return true;
    const std::vector<Made> before = made_;
    const double weight_before = taken_weight_;
    state_[next] = State::in;
    taken_weight_ += cover_.weights[next];
    for (const Linked& at : of_cause_[next]) made_[at.sign] = made_[at.sign].with(at.strength);
    offer();
    if (!branch(share)) return false;
    made_ = before;
    taken_weight_ = weight_before;
    state_[next] = State::out;
    if (!branch(std::move(share))) return false;
    state_[next] = State::undecided;
    return true;
  }

  /// No set that contains those taken in and none of those out scores more. Improves `share`, and
  /// leaves in worth_ what each undecided cause would bring by it.
  double bound(std::vector<double>& share) {
    worth_ = cover_.weights;
    double sum = taken_weight_;
    for (std::size_t s = 0; s < made_.size(); ++s) {
      const Likelihood& observed = cover_.signs[s].observed;
      sum += log_likelihood(observed, made_[s]);
      if (observed.leans() == Seen::present) {
        gains(s);
        for (const Gain& gain : gain_[s].each) worth_[gain.cause] += share[s] * gain.most;
      } else {
        losses(s);
      }
    }
    for (int round = 0; round < kRounds; ++round) {
      for (std::size_t s = 0; s < made_.size(); ++s) {
        if (cover_.signs[s].observed.leans() == Seen::present) settle(s, share[s]);
      }
    }
    for (std::size_t s = 0; s < made_.size(); ++s) {
      if (cover_.signs[s].observed.leans() == Seen::present) sum += (1.0 - share[s]) * gain_[s].all;
    }
    for (std::size_t c = 0; c < state_.size(); ++c) {
      if (state_[c] == State::undecided) sum += std::max(0.0, worth_[c]);
    }
    return sum;
  }

  struct Gain {
    std::size_t cause = 0;
    double most = 0.0;
  };
  struct Gains {
    double all = 0.0;  ///< with every undecided cause taken
    std::vector<Gain> each;
  };

  void gains(std::size_t s) {
    const CoverSign& sign = cover_.signs[s];
    const double now = log_likelihood(sign.observed, made_[s]);
    Made all = made_[s];
    gain_[s].each.clear();
    for (std::size_t i = 0; i < sign.causes.size(); ++i) {
      if (state_[sign.causes[i]] != State::undecided) continue;
      all = all.with(sign.strengths[i]);
      const double then = log_likelihood(sign.observed, made_[s].with(sign.strengths[i]));
      if (then > now) gain_[s].each.push_back({sign.causes[i], then - now});
    }
    gain_[s].all = std::max(0.0, log_likelihood(sign.observed, all) - now);
  }

  /// The chord over -ln(not there): every cause by its part of the whole way. Causes that rule the
  /// sign's absence out alone take all of it among them.
  void losses(std::size_t s) {
    const CoverSign& sign = cover_.signs[s];
    Made all = made_[s];
    double way = 0.0;
    double sure = 0.0;
    for (std::size_t i = 0; i < sign.causes.size(); ++i) {
      if (state_[sign.causes[i]] != State::undecided) continue;
      all = all.with(sign.strengths[i]);
      if (sign.strengths[i] == 1.0) {
        sure += 1.0;
      } else {
        way -= std::log1p(-sign.strengths[i]);
      }
    }
    const double loss =
        log_likelihood(sign.observed, all) - log_likelihood(sign.observed, made_[s]);
    if (!(loss < 0.0)) return;
    for (std::size_t i = 0; i < sign.causes.size(); ++i) {
      if (state_[sign.causes[i]] != State::undecided) continue;
      if (sure > 0.0) {
        if (sign.strengths[i] == 1.0) worth_[sign.causes[i]] += loss / sure;
      } else {
        worth_[sign.causes[i]] += loss * (-std::log1p(-sign.strengths[i]) / way);
      }
    }
  }

  /// The share in [0, 1] at which -share * all + sum of max(0, worth) is least, all else as it is.
  void settle(std::size_t s, double& share) {
    std::vector<std::pair<double, double>>& kinks = kinks_;  // where a cause begins to count, gain
    kinks.clear();
    double slope = -gain_[s].all;
    for (const Gain& gain : gain_[s].each) {
      worth_[gain.cause] -= share * gain.most;
      if (worth_[gain.cause] >= 0.0) {
        slope += gain.most;
      } else {
        kinks.emplace_back(-worth_[gain.cause] / gain.most, gain.most);
      }
    }
    std::sort(kinks.begin(), kinks.end());
    share = 0.0;
    for (const auto& [at, gain] : kinks) {
      if (slope >= 0.0 || at >= 1.0) break;
      share = at;
      slope += gain;
    }
    if (slope < 0.0) share = 1.0;
    for (const Gain& gain : gain_[s].each) worth_[gain.cause] += share * gain.most;
  }

  const Cover& cover_;
  std::size_t left_;
  std::vector<State> state_;
  std::vector<Made> made_;
  double taken_weight_ = 0.0;
  std::vector<std::vector<Linked>> of_cause_;
  std::vector<double> worth_;
  std::vector<Gains> gain_;
  std::vector<std::pair<double, double>> kinks_;
  std::vector<CoverSet> found_;
};

}  // namespace

std::optional<std::vector<CoverSet>> best_two(const Cover& cover, std::size_t most_nodes) {
  return Search(cover, most_nodes).run();
}

}  // namespace pinwright
