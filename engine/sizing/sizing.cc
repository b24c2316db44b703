#include "engine/sizing/sizing.h"

#include <algorithm>
#include <cmath>

#include "engine/sizing/conflict.h"

namespace pinwright {
namespace {

constexpr double kShownMm = 0.05;
constexpr double kHeldMm = 1.0;
constexpr double kAtBound = 1e-6;

SizedMeasure sized(const Rows& rows, const Found& found, Eigen::Index row, double wanted,
                   double tolerance) {
  const GarmentMeasure& m = rows.list.names[static_cast<std::size_t>(row)];
  const double scale = MeasureList::scale(m);
  SizedMeasure s;
  s.measure = m.id;
  s.name = m.name;
  s.kind = m.kind;
  s.before = rows.start[row] / scale;
  s.wanted = wanted / scale;
  s.after = found.trial.value[row] / scale;
  s.left_over = s.wanted - s.after;
  s.met = std::abs(wanted - found.trial.value[row]) <= tolerance;
  for (Eigen::Index i = 0; i < found.x.size(); ++i) {
    const double change = found.trial.by_step(row, i);
    if (std::abs(change) >= kShownMm)
      s.shares.push_back({static_cast<std::size_t>(i), change / scale});
  }
  return s;
}

SizedCure sized(const Unknown& u, double x) {
  SizedCure s{u.step, u.asked_by, u.amount(u.least), u.amount(u.most), false, false, {}, false};
  s.used = std::abs(x) >= kNothingMm;
  s.step.amount = s.used ? u.amount(x) : u.rest;
  s.at_least = x <= u.least + kAtBound;
  s.at_most = x >= u.most - kAtBound;
  if (s.at_most && !u.most_reason.empty()) s.bound_reason = u.most_reason;
  if (s.at_least && !u.least_reason.empty()) s.bound_reason = u.least_reason;
  return s;
}

}  // namespace

Result<Sizing> size_jointly(const Block& block, const SizingInput& input) {
  Result<Rows> rows = rows_of(block, input);
  Result<std::vector<Unknown>> unknowns = unknowns_of(block, input.cures);
  Problems problems = rows.problems();
  problems.insert(problems.end(), unknowns.problems().begin(), unknowns.problems().end());
  if (!problems.empty()) return problems;

  Sizing sizing;
  Found found = search_amounts(block, *rows, *unknowns, sizing.alterations);
  sizing.met = found.met;
  for (std::size_t i = 0; i < unknowns->size(); ++i) {
    sizing.cures.push_back(sized((*unknowns)[i], found.x[static_cast<Eigen::Index>(i)]));
    if (sizing.cures.back().used) sizing.steps.push_back(sizing.cures.back().step);
  }
  for (std::size_t i = 0; i < rows->targets.size(); ++i) {
    const TargetRow& t = rows->targets[i];
    sizing.targets.push_back(sized(*rows, found, t.row, t.wanted, t.tolerance));
    sizing.targets.back().asked_by = input.targets[i].asked_by;
  }
  for (const Eigen::Index row : rows->held)
    sizing.held.push_back(sized(*rows, found, row, rows->start[row], kHeldMm));
  if (!found.met) sizing.conflicts = conflicts_of(input, *rows, *unknowns, found);
  sizing.block = std::move(found.trial.block);
  sizing.notes = std::move(found.trial.notes);
  return sizing;
}

}  // namespace pinwright
