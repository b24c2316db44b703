#include "engine/sizing/rows.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "engine/base/nearest_word.h"

namespace pinwright {
namespace {

constexpr double kKeptMm = 0.01;

Problem unknown_measure(const MeasureList& list, const std::string& id, const std::string& place) {
  std::vector<std::string> ids;
  for (const GarmentMeasure& m : list.names) ids.push_back(m.id);
  return {
      "measure-unknown", place, "this block has no measure '" + id.substr(0, 80) + "'",
      ids.empty() ? "give a block with pieces" : "did you mean '" + nearest_word(id, ids) + "'?"};
}

void add_targets(const SizingInput& input, Rows& rows, Problems& problems) {
  for (std::size_t i = 0; i < input.targets.size(); ++i) {
    const Target& t = input.targets[i];
    const std::string place = "/targets/" + std::to_string(i);
    const int at = rows.list.find(t.measure);
    if (at < 0) {
      problems.push_back(unknown_measure(rows.list, t.measure, place + "/measure"));
      continue;
    }
    if (!std::isfinite(t.wanted))
      problems.push_back({"target-not-a-number", place + "/wanted", "the target is not a number",
                          "give the finished measure in millimetres"});
    if (!(t.tolerance >= 0.01 && t.tolerance <= 100.0))
      problems.push_back({"tolerance-range", place + "/tolerance", "the tolerance is out of range",
                          "give 0.01 to 100 mm, e.g. 1"});
    const double scale = MeasureList::scale(rows.list.names[static_cast<std::size_t>(at)]);
    if (!(t.exact_to >= 0.0 && t.exact_to <= 100.0))
      problems.push_back({"tolerance-range", place + "/exact_to", "this is no length",
                          "give mm, at most the tolerance, e.g. 0.5"});
    rows.targets.push_back(
        {at, t.wanted * scale, t.tolerance, std::min(t.exact_to, 0.8 * t.tolerance)});
  }
}

void add_limits(const SizingInput& input, Rows& rows, Problems& problems) {
  for (std::size_t i = 0; i < input.limits.size(); ++i) {
    const MeasureLimit& l = input.limits[i];
    const std::string place = "/limits/" + std::to_string(i);
    LimitRow row{Eigen::VectorXd::Zero(rows.start.size()), l.at_least.value_or(-kInfinity),
                 l.at_most.value_or(kInfinity)};
    bool sound = !l.terms.empty() && (l.at_least || l.at_most) && row.least <= row.most;
    for (const MeasureTerm& term : l.terms) {
      const int at = rows.list.find(term.measure);
      if (at < 0) {
        problems.push_back(unknown_measure(rows.list, term.measure, place + "/terms"));
        continue;
      }
      sound = sound && std::isfinite(term.factor);
      row.form[at] +=
          term.factor / MeasureList::scale(rows.list.names[static_cast<std::size_t>(at)]);
    }
    if (!sound)
      problems.push_back({"limit-empty", place, "the limit names no measure or no bound",
                          "give its terms and at_least or at_most"});
    rows.limits.push_back(std::move(row));
  }
}

struct PartOf {
  std::string_view part;
  std::string_view whole;
};

// The strip and the cap are cut to what they are sewn to.
constexpr std::array<PartOf, 10> kParts = {{
    {"front-bust-width", "bust-girth"},
    {"back-bust-width", "bust-girth"},
    {"front-neckline-length", "neckline-length"},
    {"back-neckline-length", "neckline-length"},
    {"neck-binding-length", "neckline-length"},
    {"front-armhole-length", "armhole-length"},
    {"back-armhole-length", "armhole-length"},
    {"cap-length", "armhole-length"},
    {"front-shoulder-slope", "shoulder-slope"},
    {"back-shoulder-slope", "shoulder-slope"},
}};

}  // namespace

std::vector<Eigen::Index> held_measures(const MeasureList& list, const std::vector<Target>& targets,
                                        const std::vector<std::string>& let_go) {
  const auto asked = [&](std::string_view id) {
    return std::any_of(targets.begin(), targets.end(),
                       [&](const Target& t) { return t.measure == id; });
  };
  std::vector<Eigen::Index> held;
  for (std::size_t i = 0; i < list.names.size(); ++i) {
    const std::string& id = list.names[i].id;
    bool free = asked(id) || std::find(let_go.begin(), let_go.end(), id) != let_go.end();
    for (const PartOf& p : kParts)
      free = free || (p.part == id && asked(p.whole)) || (p.whole == id && asked(p.part));
    if (!free) held.push_back(static_cast<Eigen::Index>(i));
  }
  return held;
}

Result<Rows> rows_of(const Block& block, const SizingInput& input) {
  Rows rows;
  Problems problems;
  rows.list.names = measures(block);
  rows.start = rows.list.of(block);
  if (input.cures.empty())
    problems.push_back({"cures-missing", "/cures", "there is no step whose amount could be found",
                        "name at least one operation, or ask for the cures of the targets"});
  if (input.targets.empty())
    problems.push_back({"targets-missing", "/targets", "nothing is asked for",
                        "give at least one measure and what it is to become"});
  add_targets(input, rows, problems);
  add_limits(input, rows, problems);
  for (std::size_t i = 0; i < input.let_go.size(); ++i)
    if (rows.list.find(input.let_go[i]) < 0)
      problems.push_back(
          unknown_measure(rows.list, input.let_go[i], "/let_go/" + std::to_string(i)));
  if (!problems.empty()) return problems;
  rows.held = held_measures(rows.list, input.targets, input.let_go);
  return rows;
}

double Rows::merit(const Eigen::VectorXd& value, const Eigen::VectorXd& x, double hold) const {
  double sum = kSmall * x.squaredNorm();
  for (const TargetRow& t : targets) {
    const double miss = std::max(0.0, std::abs(value[t.row] - t.wanted) - t.exact_to) / t.tolerance;
    sum += miss * miss;
  }
  for (const Eigen::Index row : held) {
    const double drift = value[row] - start[row];
    sum += hold * drift * drift;
  }
  for (const LimitRow& l : limits) {
    const double v = l.form.dot(value);
    const double broken = std::max({0.0, l.least - v, v - l.most});
    sum += kBroken * broken * broken;
  }
  return sum;
}

bool Rows::met(const Eigen::VectorXd& value, bool exactly) const {
  for (const TargetRow& t : targets)
    if (std::abs(value[t.row] - t.wanted) > (exactly ? t.exact_to : t.tolerance)) return false;
  for (const LimitRow& l : limits) {
    const double v = l.form.dot(value);
    if (v < l.least - kKeptMm || v > l.most + kKeptMm) return false;
  }
  return true;
}

}  // namespace pinwright
