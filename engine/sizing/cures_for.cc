// The choice of operations for targets that came without words.
#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

#include "engine/sizing/amounts.h"
#include "engine/sizing/search.h"
#include "engine/sizing/targets.h"

namespace pinwright {
namespace {

constexpr double kFirmHold = 0.7;  // weight of 1 mm of drift against 1 tolerance
constexpr double kAtMost = 0.3;    // weight of an amount as large as the catalogue's largest
constexpr double kEnough = 0.25;   // share of the tolerance, where exact_to is less
constexpr int kPasses = 4;
constexpr int kSweeps = 3;
constexpr double kSeen = 0.6;       // mm of drift that is worth another choice
constexpr double kStill = 0.25;     // mm of drift that nobody sees
constexpr double kHelps = 0.98;     // an operation that leaves more than this share is no help
constexpr double kNeedless = 1.02;  // dropping one that costs less than this share
constexpr double kSees = 1e-4;      // effects below this, mm a mm, are rounding

// Every operation that moves lines, with every choice of its options.
std::vector<Cure> all_cures() {
  std::vector<Cure> all;
  for (const OperationInfo& info : operation_catalogue()) {
    if (info.amount == AmountKind::none || info.amount == AmountKind::ratio) continue;
    std::vector<Step> steps(1);
    steps[0].operation = info.id;
    for (const OptionInfo& option : info.options) {
      std::vector<Step> more;
      for (const Step& step : steps) {
        for (const std::string_view value : option.values) {
          more.push_back(step);
          more.back().options[std::string(option.key)] = value;
        }
      }
      steps = std::move(more);
    }
    for (Step& step : steps) all.push_back({std::move(step), {}, {}, {}});
  }
  return all;
}

struct Wish {
  Eigen::Index row = 0;
  double change = 0.0;
  double tolerance = 1.0;
  double enough = 0.0;
  std::size_t target = 0;
};

class Choice {
 public:
  Choice(const Block& block, const std::vector<Target>& targets)
      : block_(block), targets_(targets), list_{measures(block)} {
    const Eigen::VectorXd now = start_ = list_.of(block);
    for (std::size_t i = 0; i < targets.size(); ++i) {
      const int at = list_.find(targets[i].measure);
      if (at < 0 || !std::isfinite(targets[i].wanted) || !(targets[i].tolerance > 0.0)) continue;
      const GarmentMeasure& m = list_.names[static_cast<std::size_t>(at)];
      wishes_.push_back({at, targets[i].wanted * MeasureList::scale(m) - now[at],
                         targets[i].tolerance,
                         std::max(kEnough * targets[i].tolerance, targets[i].exact_to), i});
    }
    held_ = held_measures(list_, targets, {});
    if (wishes_.empty()) return;
    for (Cure& cure : all_cures()) {
      Result<std::vector<Unknown>> unknown = unknowns_of(block, {cure});
      if (!unknown) continue;
      cures_.push_back(std::move(cure));
      unknowns_.push_back(std::move(unknown->front()));
    }
    int alterations = 0;
    effect_ = first_jacobian(block, list_, unknowns_, alterations);
    one_sided(alterations);
  }

  std::vector<Cure> choose() {
    if (cures_.empty()) return {};
    std::vector<std::size_t> best;
    double least = 0.0;
    for (int pass = 0; pass < kPasses; ++pass) {
      select();
      if (chosen_.empty()) break;
      const double left = try_out();
      if (best.empty() || left < least) {
        best = chosen_;
        least = left;
      }
      if (least == 0.0) break;
    }
    chosen_ = std::move(best);
    const Cost sized = cost(chosen_);
    std::vector<Cure> cures;
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
      Cure cure = cures_[chosen_[i]];
      cure.asked_by = served_by(chosen_[i], sized.x[static_cast<Eigen::Index>(i)]);
      cures.push_back(std::move(cure));
    }
    return cures;
  }

 private:
  struct Cost {
    double merit = 0.0;
    Eigen::VectorXd x;
  };

  // An operation that the block refuses the other way has its bound there.
  void one_sided(int& alterations) {
    for (std::size_t k = 0; k < unknowns_.size(); ++k) {
      Unknown& u = unknowns_[k];
      if (u.least == u.most) continue;
      for (const double h : {-1.0, 1.0}) {
        Eigen::VectorXd x(1);
        x[0] = h;
        if (try_amounts(block_, list_, {u}, x, alterations).trial) continue;
        (h < 0.0 ? u.least : u.most) = 0.0;
      }
    }
  }

  // Forward selection on the linear effects.
  void select() {
    weigh();
    chosen_.clear();
    last_ = cost({});
    double left = last_.merit;
    while (chosen_.size() < kMostCures && !enough()) {
      std::size_t best = cures_.size();
      double least = left * kHelps;
      for (std::size_t k = 0; k < cures_.size(); ++k) {
        if (contains(k) || effect_.col(static_cast<Eigen::Index>(k)).norm() < kSees) continue;
        std::vector<std::size_t> with = chosen_;
        with.push_back(k);
        const double merit = cost(with).merit;
        if (merit < least) {
          least = merit;
          best = k;
        }
      }
      if (best == cures_.size()) break;
      chosen_.push_back(best);
      left = least;
      last_ = cost(chosen_);
    }
    exchange();
    drop_needless();
    std::sort(chosen_.begin(), chosen_.end());
  }

  // What was chosen first may be served better by another once the others are there.
  void exchange() {
    double left = cost(chosen_).merit;
    for (int sweep = 0; sweep < kSweeps; ++sweep) {
      bool better = false;
      for (std::size_t i = 0; i < chosen_.size(); ++i) {
        std::vector<std::size_t> with = chosen_;
        std::size_t best = chosen_[i];
        for (std::size_t k = 0; k < cures_.size(); ++k) {
          if (contains(k) || effect_.col(static_cast<Eigen::Index>(k)).norm() < kSees) continue;
          with[i] = k;
          const double merit = cost(with).merit;
          if (merit >= left * kHelps) continue;
          left = merit;
          best = k;
        }
        better = better || best != chosen_[i];
        chosen_[i] = best;
      }
      if (!better) break;
    }
    last_ = cost(chosen_);
  }

  // The chosen ones sized on the block itself: what is left over, 0 when nothing that counts. Their
  // effects and bounds are known better afterwards.
  double try_out() {
    SizingInput input;
    for (const std::size_t k : chosen_) input.cures.push_back(cures_[k]);
    for (const Wish& wish : wishes_) input.targets.push_back(targets_[wish.target]);
    const Result<Rows> rows = rows_of(block_, input);
    if (!rows) return 0.0;
    std::vector<Unknown> unknowns;
    for (const std::size_t k : chosen_) unknowns.push_back(unknowns_[k]);
    int alterations = 0;
    const Found found = search_amounts(block_, *rows, unknowns, alterations);
    double left = 0.0;
    for (const Wish& wish : wishes_) {
      const double miss = std::abs(found.trial.value[wish.row] - start_[wish.row] - wish.change);
      if (miss > wish.enough) left += std::pow(miss / wish.tolerance, 2);
    }
    for (const Eigen::Index row : held_) {
      const double drift = std::abs(found.trial.value[row] - start_[row]);
      if (drift > kSeen) left += std::pow(kFirmHold * drift, 2);
    }
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
      const auto at = static_cast<Eigen::Index>(i);
      unknowns_[chosen_[i]].least = unknowns[i].least;
      unknowns_[chosen_[i]].most = unknowns[i].most;
      if (std::abs(found.x[at]) > 1.0)
        effect_.col(static_cast<Eigen::Index>(chosen_[i])) =
            found.trial.by_step.col(at) / found.x[at];
    }
    return left;
  }

  bool contains(std::size_t k) const {
    return std::find(chosen_.begin(), chosen_.end(), k) != chosen_.end();
  }

  // The weighted effects of all operations, and the products of their columns: the many sets that
  // are compared need no more than a small Cholesky factor each.
  void weigh() {
    const auto n = static_cast<Eigen::Index>(cures_.size());
    const auto w = static_cast<Eigen::Index>(wishes_.size());
    const auto h = static_cast<Eigen::Index>(held_.size());
    weighted_ = Eigen::MatrixXd::Zero(w + h, n);
    wanted_ = Eigen::VectorXd::Zero(w + h);
    for (Eigen::Index i = 0; i < w; ++i) {
      const Wish& wish = wishes_[static_cast<std::size_t>(i)];
      weighted_.row(i) = effect_.row(wish.row) / wish.tolerance;
      wanted_[i] = wish.change / wish.tolerance;
    }
    for (Eigen::Index i = 0; i < h; ++i)
      weighted_.row(w + i) = kFirmHold * effect_.row(held_[static_cast<std::size_t>(i)]);
    effort_ = Eigen::VectorXd(n);
    for (Eigen::Index k = 0; k < n; ++k)
      effort_[k] =
          kAtMost / find_operation(cures_[static_cast<std::size_t>(k)].step.operation)->most;
    product_ = weighted_.transpose() * weighted_;
    product_ += effort_.cwiseProduct(effort_).asDiagonal();
    pull_ = weighted_.transpose() * wanted_;
  }

  Cost cost(const std::vector<std::size_t>& set) const {
    const auto n = static_cast<Eigen::Index>(set.size());
    const double all = wanted_.squaredNorm();
    if (n == 0) return {all, Eigen::VectorXd(0)};
    Eigen::MatrixXd product(n, n);
    Eigen::VectorXd pull(n);
    for (Eigen::Index i = 0; i < n; ++i) {
      const auto k = static_cast<Eigen::Index>(set[static_cast<std::size_t>(i)]);
      pull[i] = pull_[k];
      for (Eigen::Index j = 0; j < n; ++j)
        product(i, j) = product_(k, static_cast<Eigen::Index>(set[static_cast<std::size_t>(j)]));
    }
    Eigen::VectorXd x = within_bounds(set, product, pull);
    const double merit = all - 2.0 * pull.dot(x) + x.dot(product * x);
    return {merit, std::move(x)};
  }

  // The least of all - 2 pull x + x product x; amounts that pass their bounds are set there, one
  // round after the other, and not let go again: near enough for a choice that is tried out on the
  // block afterwards.
  Eigen::VectorXd within_bounds(const std::vector<std::size_t>& set, const Eigen::MatrixXd& product,
                                const Eigen::VectorXd& pull) const {
    const Eigen::Index n = pull.size();
    Eigen::VectorXd x = product.llt().solve(pull);
    std::vector<Eigen::Index> fixed;
    for (bool passed = true; passed;) {
      passed = false;
      if (!x.allFinite()) return Eigen::VectorXd::Zero(n);  // no set to be chosen
      for (Eigen::Index i = 0; i < n; ++i) {
        const Unknown& u = unknowns_[set[static_cast<std::size_t>(i)]];
        if (x[i] >= u.least && x[i] <= u.most) continue;
        if (std::find(fixed.begin(), fixed.end(), i) != fixed.end()) continue;  // is set already
        x[i] = std::clamp(x[i], u.least, u.most);
        fixed.push_back(i);
        passed = true;
      }
      if (!passed) break;
      Eigen::MatrixXd rest = product;
      Eigen::VectorXd right = pull;
      for (const Eigen::Index i : fixed) right -= x[i] * product.col(i);
      for (const Eigen::Index i : fixed) {
        rest.row(i).setZero();
        rest.col(i).setZero();
        rest(i, i) = 1.0;
        right[i] = x[i];
      }
      x = rest.llt().solve(right);
      for (const Eigen::Index i : fixed) x[i] = right[i];
    }
    return x;
  }

  bool enough() const {
    for (const Wish& wish : wishes_) {
      double change = 0.0;
      for (std::size_t i = 0; i < chosen_.size(); ++i)
        change += effect_(wish.row, static_cast<Eigen::Index>(chosen_[i])) *
                  last_.x[static_cast<Eigen::Index>(i)];
      if (std::abs(change - wish.change) > wish.enough) return false;
    }
    for (const Eigen::Index row : held_) {
      double drift = 0.0;
      for (std::size_t i = 0; i < chosen_.size(); ++i)
        drift += effect_(row, static_cast<Eigen::Index>(chosen_[i])) *
                 last_.x[static_cast<Eigen::Index>(i)];
      if (std::abs(drift) > kStill) return false;
    }
    return true;
  }

  void drop_needless() {
    for (std::size_t i = chosen_.size(); i-- > 0 && chosen_.size() > 1;) {
      std::vector<std::size_t> without = chosen_;
      without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
      const Cost now = cost(chosen_);
      const auto at = static_cast<Eigen::Index>(i);
      if (std::abs(now.x[at]) < 2.0 * kNothingMm ||
          cost(without).merit <= now.merit * kNeedless + 1e-3)
        chosen_ = std::move(without);
    }
  }

  // The target whose miss this operation lessens most, in the words it came in.
  std::string served_by(std::size_t k, double x) const {
    double most = -1.0;
    std::string words;
    for (const Wish& wish : wishes_) {
      const double does = effect_(wish.row, static_cast<Eigen::Index>(k)) * x / wish.tolerance;
      const double helps = wish.change >= 0.0 ? does : -does;
      if (helps <= most) continue;
      most = helps;
      const Target& target = targets_[wish.target];
      words = list_.names[static_cast<std::size_t>(wish.row)].name;
      if (!target.asked_by.empty()) words += ": " + target.asked_by;
    }
    return words;
  }

  const Block& block_;
  const std::vector<Target>& targets_;
  MeasureList list_;
  Eigen::VectorXd start_;
  std::vector<Wish> wishes_;
  std::vector<Eigen::Index> held_;
  std::vector<Cure> cures_;
  std::vector<Unknown> unknowns_;
  Eigen::MatrixXd effect_;
  Eigen::MatrixXd weighted_;
  Eigen::VectorXd wanted_;
  Eigen::VectorXd effort_;
  Eigen::MatrixXd product_;
  Eigen::VectorXd pull_;
  std::vector<std::size_t> chosen_;
  Cost last_;
};

}  // namespace

std::vector<Cure> cures_for(const Block& block, const std::vector<Target>& targets) {
  return Choice(block, targets).choose();
}

}  // namespace pinwright
