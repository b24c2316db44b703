#include "engine/sizing/amounts.h"

#include <algorithm>
#include <cmath>

namespace pinwright {
namespace {

constexpr double kSmallChangeMm = 1.0;
constexpr double kRatioUnit = 0.002;  // of a strip to a neckline of 500 mm: 1 mm
constexpr double kLeastRatio = 0.5;
constexpr double kMostRatio = 1.2;

std::optional<double> ratio_of(const Block& block, const Step& step) {
  const auto named = step.options.find("binding");
  for (const Binding& b : block.bindings)
    if (b.id == (named == step.options.end() ? "neck-binding" : named->second)) return b.ratio;
  return {};
}

bool same_operation(const Step& a, const Step& b) {
  return a.operation == b.operation && a.options == b.options && a.side == b.side && a.of == b.of;
}

// The step made whole with its default options, so that the same operation said in two ways is one.
Step spelled_out(Step step, const OperationInfo& info) {
  for (const OptionInfo& o : info.options)
    if (!o.required) step.options.try_emplace(std::string(o.key), std::string(o.values.front()));
  if (info.amount == AmountKind::distance || info.amount == AmountKind::ratio) step.of = Of::half;
  return step;
}

Step with_amount(const Unknown& u, double x) {
  Step step = u.step;
  step.amount = u.amount(x);
  return step;
}

}  // namespace

Result<std::vector<Unknown>> unknowns_of(const Block& block, const std::vector<Cure>& cures) {
  Problems problems;
  std::vector<Unknown> unknowns;
  for (std::size_t i = 0; i < cures.size(); ++i) {
    const std::string place = "/cures/" + std::to_string(i);
    Step probe = cures[i].step;
    probe.amount = 1.0;
    const Problems found = check_step(probe, place);
    problems.insert(problems.end(), found.begin(), found.end());
    if (!found.empty()) continue;
    const OperationInfo& info = *find_operation(probe.operation);
    if (info.amount == AmountKind::none) {
      problems.push_back(
          {"operation-not-here", place,
           "'" + std::string(info.name) + "' moves no line and has no amount to find",
           "leave it out of the sizing"});
      continue;
    }
    Unknown u;
    u.step = spelled_out(cures[i].step, info);
    u.asked_by.push_back(cures[i].asked_by);
    const double whole = info.amount == AmountKind::half && u.step.of == Of::whole ? 2.0 : 1.0;
    double least = cures[i].least.value_or(-info.most * whole);
    double most = cures[i].most.value_or(info.most * whole);
    if (info.amount == AmountKind::ratio) {
      const auto ratio = ratio_of(block, u.step);
      if (!ratio) {
        problems.push_back(
            {"operation-not-here", place, "this block has no such binding", "leave the step out"});
        continue;
      }
      u.rest = *ratio;
      u.unit = kRatioUnit;
      least = cures[i].least.value_or(kLeastRatio);
      most = cures[i].most.value_or(kMostRatio);
    }
    if (!(least <= most) || !std::isfinite(least) || !std::isfinite(most)) {
      problems.push_back({"bounds-crossed", place,
                          "the least amount is above the most, or no number",
                          "give least <= most"});
      continue;
    }
    u.least = (least - u.rest) / u.unit;
    u.most = (most - u.rest) / u.unit;
    const auto twin = std::find_if(unknowns.begin(), unknowns.end(), [&](const Unknown& other) {
      return same_operation(other.step, u.step);
    });
    if (twin == unknowns.end()) {
      unknowns.push_back(std::move(u));
      continue;
    }
    twin->asked_by.push_back(cures[i].asked_by);
    twin->least = std::max(twin->least, u.least);
    twin->most = std::min(twin->most, u.most);
    if (twin->least > twin->most)
      problems.push_back({"bounds-crossed", place,
                          "the bounds contradict those of the same operation asked for before",
                          "widen one of them"});
  }
  if (!problems.empty()) return problems;
  return unknowns;
}

Eigen::VectorXd MeasureList::of(const Block& block) const {
  const std::vector<GarmentMeasure> now = measures(block);
  Eigen::VectorXd value(static_cast<Eigen::Index>(names.size()));
  for (std::size_t i = 0; i < names.size(); ++i) {
    // Both lists are in the same fixed order, so mostly the same place.
    const GarmentMeasure* m =
        i < now.size() && now[i].id == names[i].id ? &now[i] : find_measure(now, names[i].id);
    value[static_cast<Eigen::Index>(i)] = (m != nullptr ? m->value : 0.0) * scale(names[i]);
  }
  return value;
}

int MeasureList::find(std::string_view id) const {
  for (std::size_t i = 0; i < names.size(); ++i)
    if (names[i].id == id) return static_cast<int>(i);
  return -1;
}

TrialResult try_amounts(const Block& block, const MeasureList& list,
                        const std::vector<Unknown>& unknowns, const Eigen::VectorXd& x,
                        int& alterations) {
  const auto rows = static_cast<Eigen::Index>(list.names.size());
  Trial trial{block, {}, list.of(block), Eigen::MatrixXd::Zero(rows, x.size())};
  for (Eigen::Index i = 0; i < x.size(); ++i) {
    const auto at = static_cast<std::size_t>(i);
    if (std::abs(x[i]) < kNothingMm) continue;
    ++alterations;
    Result<Altered> altered = alter(trial.block, {with_amount(unknowns[at], x[i])});
    if (!altered) return {{}, Refusal{at, altered.problems().front()}};
    for (StepNote& note : altered->notes) {
      note.step = trial.notes.size();
      trial.notes.push_back(std::move(note));
    }
    trial.block = std::move(altered->block);
    const Eigen::VectorXd next = list.of(trial.block);
    trial.by_step.col(i) = next - trial.value;
    trial.value = next;
  }
  if (!trial.value.allFinite())
    return {{}, Refusal{0, {"no-solution", "", "a measure is no number any more", ""}}};
  return {std::move(trial), {}};
}

Eigen::MatrixXd first_jacobian(const Block& block, const MeasureList& list,
                               std::vector<Unknown>& unknowns, int& alterations) {
  const Eigen::VectorXd now = list.of(block);
  Eigen::MatrixXd jacobian =
      Eigen::MatrixXd::Zero(now.size(), static_cast<Eigen::Index>(unknowns.size()));
  for (std::size_t i = 0; i < unknowns.size(); ++i) {
    Unknown& u = unknowns[i];
    const bool up_first = u.most >= -u.least;
    Problem refused;
    bool done = false;
    for (const double h : {up_first ? kSmallChangeMm : -kSmallChangeMm,
                           up_first ? -kSmallChangeMm : kSmallChangeMm}) {
      ++alterations;
      const Result<Altered> altered = alter(block, {with_amount(u, h)});
      if (!altered) {
        refused = altered.problems().front();
        continue;
      }
      jacobian.col(static_cast<Eigen::Index>(i)) = (list.of(altered->block) - now) / h;
      done = true;
      break;
    }
    if (done) continue;
    u.least = u.most = 0.0;
    u.least_reason = u.most_reason = refused.what;
  }
  return jacobian;
}

}  // namespace pinwright
