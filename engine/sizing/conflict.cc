#include "engine/sizing/conflict.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>
#include <limits>

#include "engine/sizing/bounded_least_squares.h"

namespace pinwright {
namespace {

constexpr double kSame = 1e-6;  // mm by which a linear form may miss its interval

// form . dx between least and most.
struct Member {
  ConflictMember::Kind kind = ConflictMember::Kind::target;
  std::size_t index = 0;
  Eigen::VectorXd form;
  double least = -kInfinity;
  double most = kInfinity;
};

using Members = std::vector<Member>;

// The step nearest to `aim` (row . dx = value) that keeps all members.
LeastSquaresAnswer keep_all(const Members& members, const Eigen::RowVectorXd& row, double value) {
  const Eigen::Index n = row.size();
  LeastSquares problem;
  problem.a = Eigen::MatrixXd::Zero(n + 1, n);
  problem.a.row(0) = row;
  problem.a.bottomRows(n) = 1e-4 * Eigen::MatrixXd::Identity(n, n);
  problem.b = Eigen::VectorXd::Zero(n + 1);
  problem.b[0] = value;
  std::vector<std::pair<Eigen::RowVectorXd, double>> sides;
  for (const Member& m : members) {
    if (m.least > -kInfinity) sides.emplace_back(m.form.transpose(), m.least - kSame);
    if (m.most < kInfinity) sides.emplace_back(-m.form.transpose(), -m.most - kSame);
  }
  problem.c = Eigen::MatrixXd(static_cast<Eigen::Index>(sides.size()), n);
  problem.d = Eigen::VectorXd(problem.c.rows());
  for (std::size_t i = 0; i < sides.size(); ++i) {
    problem.c.row(static_cast<Eigen::Index>(i)) = sides[i].first;
    problem.d[static_cast<Eigen::Index>(i)] = sides[i].second;
  }
  return solve_least_squares(problem);
}

bool feasible(const Members& members) {
  if (members.empty()) return true;
  return keep_all(members, Eigen::RowVectorXd::Zero(members.front().form.size()), 0.0).feasible;
}

Members without(const Members& members, std::size_t k) {
  Members rest = members;
  rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(k));
  return rest;
}

// Leaves out what is not needed for the contradiction; what stays is needed, each of it.
Members smallest(Members members) {
  for (std::size_t k = members.size(); k-- > 0;) {
    Members rest = without(members, k);
    if (!feasible(rest)) members = std::move(rest);
  }
  return members;
}

Members members_of(const Rows& rows, const std::vector<Unknown>& unknowns, const Found& found) {
  Members all;
  const Eigen::VectorXd& value = found.trial.value;
  // In the order in which they stay: the filter looks at the last first, so that a contradiction
  // is told by targets and limits rather than by bounds where there is a choice.
  for (std::size_t i = 0; i < rows.targets.size(); ++i) {
    const TargetRow& t = rows.targets[i];
    all.push_back({ConflictMember::Kind::target, i, found.jacobian.row(t.row).transpose(),
                   t.wanted - t.tolerance - value[t.row], t.wanted + t.tolerance - value[t.row]});
  }
  for (std::size_t i = 0; i < rows.limits.size(); ++i) {
    const LimitRow& l = rows.limits[i];
    const double now = l.form.dot(value);
    all.push_back({ConflictMember::Kind::limit, i, found.jacobian.transpose() * l.form,
                   l.least - now, l.most - now});
  }
  for (std::size_t i = 0; i < unknowns.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    Eigen::VectorXd unit = Eigen::VectorXd::Zero(found.x.size());
    unit[at] = 1.0;
    all.push_back(
        {ConflictMember::Kind::bound, i, unit, unknowns[i].least - found.x[at], kInfinity});
    all.push_back(
        {ConflictMember::Kind::bound, i, unit, -kInfinity, unknowns[i].most - found.x[at]});
  }
  return all;
}

std::string mm(double value) {
  char text[40];
  const double tenth = std::round(std::abs(value) * 10.0) / 10.0;
  std::snprintf(text, sizeof text, tenth == std::floor(tenth) ? "%.0f mm" : "%.1f mm", tenth);
  return text;
}

std::string lower(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

class Teller {
 public:
  Teller(const SizingInput& input, const Rows& rows, const std::vector<Unknown>& unknowns,
         const Found& found)
      : input_(input), rows_(rows), unknowns_(unknowns), found_(found) {}

  ConflictMember tell(const Member& m, std::optional<double> reach) const {
    ConflictMember told{m.kind, m.index, {}, {}, {}};
    switch (m.kind) {
      case ConflictMember::Kind::target:
        tell_target(m, reach, told);
        break;
      case ConflictMember::Kind::limit:
        tell_limit(m, reach, told);
        break;
      case ConflictMember::Kind::bound:
        tell_bound(m, reach, told);
        break;
    }
    return told;
  }

  // "... cannot have a neckline length of 508 mm (40 mm less) while the neck opening passes a head
  // of 570 mm: keep ... or ..."
  std::string sentence(const std::vector<ConflictMember>& members) const {
    std::string wishes;
    std::string limits;
    std::string bounds;
    std::string mends;  // a limit's own, where there is one: it names the measure and the cloth
    const auto join = [](std::string& to, const std::string& text, const char* by) {
      if (!text.empty()) to += (to.empty() ? "" : by) + text;
    };
    for (const ConflictMember& m : members) {
      if (m.kind == ConflictMember::Kind::target) join(wishes, wish(m.index), " and ");
      if (m.kind == ConflictMember::Kind::limit) join(limits, input_.limits[m.index].name, " and ");
      if (m.kind == ConflictMember::Kind::limit) join(mends, m.relax, ", or ");
      if (m.kind == ConflictMember::Kind::bound) join(bounds, m.says, " and ");
    }
    if (mends.empty())
      for (const ConflictMember& m : members) join(mends, m.relax, ", or ");
    std::string text = wishes.empty() ? "these steps cannot keep that " + limits
                                      : "the garment cannot have " + wishes;
    if (!wishes.empty() && !limits.empty()) text += " while " + limits;
    if (!bounds.empty()) text += ", with " + bounds;
    if (!wishes.empty() && limits.empty() && bounds.empty())
      text +=
          members.size() > 1 ? " at once by these steps" : ", for none of these steps changes it";
    return mends.empty() ? text : text + ": " + mends;
  }

 private:
  std::string measure_name(std::size_t target) const {
    return lower(rows_.list.names[static_cast<std::size_t>(rows_.targets[target].row)].name);
  }
  bool is_angle(std::size_t target) const {
    return rows_.list.names[static_cast<std::size_t>(rows_.targets[target].row)].kind ==
           MeasureKind::angle;
  }
  std::string amount_text(std::size_t target, double scaled) const {
    if (!is_angle(target)) return mm(scaled);
    char text[40];
    std::snprintf(text, sizeof text, "%.1f degrees", degrees(scaled / kAngleAtMm));
    return text;
  }

  // "a neckline length of 548 mm (40 mm less)"
  std::string wish(std::size_t target) const {
    const TargetRow& t = rows_.targets[target];
    const double change = t.wanted - rows_.start[t.row];
    const std::string name = measure_name(target);
    const bool vowel = std::string("aeiou").find(name.front()) != std::string::npos;
    return (vowel ? "an " : "a ") + name + " of " + amount_text(target, t.wanted) + " (" +
           amount_text(target, std::abs(change)) + (change < 0.0 ? " less)" : " more)");
  }

  void tell_target(const Member& m, std::optional<double> reach, ConflictMember& told) const {
    const TargetRow& t = rows_.targets[m.index];
    const std::string& asked = input_.targets[m.index].asked_by;
    told.says = wish(m.index) + (asked.empty() ? "" : ", asked by: " + asked);
    if (!reach) return;
    const double value = found_.trial.value[t.row] + *reach;
    told.would_do = value / (is_angle(m.index) ? kAngleAtMm : 1.0);
    told.relax = "keep the " + measure_name(m.index) + " at " + amount_text(m.index, value);
  }

  void tell_limit(const Member& m, std::optional<double> reach, ConflictMember& told) const {
    const MeasureLimit& l = input_.limits[m.index];
    std::string sum;
    for (const MeasureTerm& term : l.terms) {
      const int at = rows_.list.find(term.measure);
      sum += (sum.empty() ? "" : " against ") +
             lower(rows_.list.names[static_cast<std::size_t>(at)].name);
    }
    told.says = l.name + " (" + sum + " ";
    if (l.at_least) told.says += "at least " + mm(*l.at_least);
    if (l.at_least && l.at_most) told.says += ", ";
    if (l.at_most) told.says += "at most " + mm(*l.at_most);
    told.says += ")";
    if (reach) told.would_do = rows_.limits[m.index].form.dot(found_.trial.value) + *reach;
    told.relax = l.relax;
  }

  void tell_bound(const Member& m, std::optional<double> reach, ConflictMember& told) const {
    const Unknown& u = unknowns_[m.index];
    const auto at = static_cast<Eigen::Index>(m.index);
    const OperationInfo& info = *find_operation(u.step.operation);
    const bool upper = m.most < kInfinity;
    const std::string& reason = upper ? u.most_reason : u.least_reason;
    const auto amount = [&](double x) {
      if (info.amount != AmountKind::ratio) return (x < 0.0 ? "minus " : "") + mm(x);
      char text[40];
      std::snprintf(text, sizeof text, "ratio %.3f", u.amount(x));
      return std::string(text);
    };
    told.says = "'" + lower(std::string(info.name)) + "' held to " +
                (upper ? "at most " + amount(u.most) : "at least " + amount(u.least)) +
                (reason.empty() ? "" : " (" + reason + ")");
    if (!reach) return;
    const double x = found_.x[at] + *reach;
    told.would_do = u.amount(x);
    if (reason.empty()) told.relax = "allow '" + lower(std::string(info.name)) + "' " + amount(x);
  }

  const SizingInput& input_;
  const Rows& rows_;
  const std::vector<Unknown>& unknowns_;
  const Found& found_;
};

// What the member's form comes to when it alone gives way, as little as can be.
std::optional<double> reach_of(const Members& all, const Members& conflict, const Member& m) {
  const auto is_it = [&](const Member& other) {
    return other.kind == m.kind && other.index == m.index && other.least == m.least &&
           other.most == m.most;
  };
  const double wish = m.least > -kInfinity && m.least > 0.0 ? m.least
                      : m.most < kInfinity                  ? m.most
                                                            : m.least;
  for (const Members* from : {&all, &conflict}) {
    Members rest;
    for (const Member& other : *from)
      if (!is_it(other)) rest.push_back(other);
    const LeastSquaresAnswer answer = keep_all(rest, m.form.transpose(), wish);
    if (!answer.feasible || !answer.converged) continue;
    const double reach = m.form.dot(answer.x);
    // Where the rest asks for a change out of all proportion there is no number to name.
    if (answer.x.cwiseAbs().maxCoeff() > 1000.0) return {};
    return reach;
  }
  return {};
}

}  // namespace

std::vector<SizingConflict> conflicts_of(const SizingInput& input, const Rows& rows,
                                         const std::vector<Unknown>& unknowns, const Found& found) {
  std::vector<SizingConflict> conflicts;
  Members all = members_of(rows, unknowns, found);
  const Teller teller(input, rows, unknowns, found);
  while (!feasible(all)) {
    const Members least = smallest(all);
    SizingConflict conflict;
    for (const Member& m : least)
      conflict.members.push_back(teller.tell(m, reach_of(all, least, m)));
    conflict.text = teller.sentence(conflict.members);
    conflicts.push_back(std::move(conflict));
    // On with the rest: without this one's targets, or, where it has none, without its limits.
    const auto gone = [&](const Member& m, ConflictMember::Kind kind) {
      return m.kind == kind && std::any_of(least.begin(), least.end(), [&](const Member& other) {
               return other.kind == kind && other.index == m.index;
             });
    };
    const std::size_t before = all.size();
    std::erase_if(all, [&](const Member& m) { return gone(m, ConflictMember::Kind::target); });
    if (all.size() == before)
      std::erase_if(all, [&](const Member& m) { return gone(m, ConflictMember::Kind::limit); });
    if (all.size() == before) break;
  }
  return conflicts;
}

}  // namespace pinwright
