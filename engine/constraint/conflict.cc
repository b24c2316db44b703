#include "engine/constraint/conflict.h"

#include <cstdio>

#include "engine/base/units.h"
#include "engine/constraint/solve.h"

namespace pinwright {
namespace {

// The statements of a system one by one.
struct Statement {
  enum class Kind { length, width, angle, span, radius } kind;
  std::size_t at = 0;
};

std::vector<Statement> statements(const System& system) {
  std::vector<Statement> all;
  // Joins first: they are the likeliest to be spared, and what a fitter asked for stays.
  for (std::size_t i = 0; i < system.radii.size(); ++i) all.push_back({Statement::Kind::radius, i});
  for (std::size_t i = 0; i < system.angles.size(); ++i) all.push_back({Statement::Kind::angle, i});
  for (std::size_t i = 0; i < system.spans.size(); ++i) all.push_back({Statement::Kind::span, i});
  for (std::size_t i = 0; i < system.widths.size(); ++i) all.push_back({Statement::Kind::width, i});
  for (std::size_t i = 0; i < system.lengths.size(); ++i)
    all.push_back({Statement::Kind::length, i});
  return all;
}

bool solvable(const Block& block, const System& system, const std::vector<Statement>& kept) {
  System part;
  part.free_edges = system.free_edges;
  part.free_corners = system.free_corners;
  part.smoothness = system.smoothness;
  for (const Statement& s : kept) {
    switch (s.kind) {
      case Statement::Kind::length:
        part.lengths.push_back(system.lengths[s.at]);
        break;
      case Statement::Kind::width:
        part.widths.push_back(system.widths[s.at]);
        break;
      case Statement::Kind::angle:
        part.angles.push_back(system.angles[s.at]);
        break;
      case Statement::Kind::span:
        part.spans.push_back(system.spans[s.at]);
        break;
      case Statement::Kind::radius:
        part.radii.push_back(system.radii[s.at]);
        break;
    }
  }
  Block trial = block;
  return solve(trial, part).ok();
}

std::string with_number(const std::string& name, Sense sense, double value) {
  char text[48];
  std::snprintf(text, sizeof text, " (%s%.1f mm)",
                sense == Sense::at_least  ? "at least "
                : sense == Sense::at_most ? "at most "
                                          : "",
                value);
  return name + text;
}

Conflict::Member member(const System& system, const Statement& s) {
  switch (s.kind) {
    case Statement::Kind::length: {
      const LengthConstraint& c = system.lengths[s.at];
      // A difference of nothing (two runs equally long) has no number worth telling.
      return {c.value == 0.0 && c.sense == Sense::equal ? c.name
                                                        : with_number(c.name, c.sense, c.value),
              c.relax};
    }
    case Statement::Kind::width:
      return {system.widths[s.at].name, {}};
    case Statement::Kind::angle:
      return {system.angles[s.at].name + " runs on without a kink", {}};
    case Statement::Kind::span: {
      const SpanConstraint& c = system.spans[s.at];
      return {with_number(c.name, c.sense, c.value), c.relax};
    }
    case Statement::Kind::radius:
      return {system.radii[s.at].name, system.radii[s.at].relax};
  }
  return {};
}

}  // namespace

Conflict smallest_conflict(const Block& block, const System& system) {
  std::vector<Statement> kept = statements(system);
  Conflict conflict;
  if (solvable(block, system, kept)) return conflict;
  for (std::size_t i = 0; i < kept.size();) {
    std::vector<Statement> without = kept;
    without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
    if (solvable(block, system, without)) {
      ++i;
    } else {
      kept = std::move(without);
    }
  }
  for (const Statement& s : kept) {
    conflict.members.push_back(member(system, s));
    const std::string& relax = conflict.members.back().relax;
    if (conflict.relax.empty() && !relax.empty()) conflict.relax = relax;
  }
  return conflict;
}

std::string told(const Conflict& conflict) {
  const std::size_t n = conflict.members.size();
  if (n == 1) return conflict.members.front().name + " cannot be met";
  std::string text = n == 2 ? "these two cannot both hold: " : "these cannot all hold: ";
  for (std::size_t i = 0; i < n; ++i) text += (i > 0 ? "; " : "") + conflict.members[i].name;
  return text;
}

}  // namespace pinwright
