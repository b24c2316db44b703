#include "engine/draft/statement.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/constraint/solve.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/geometry/intersect.h"

namespace pinwright::drafting {

namespace {

const Edge& edge_of(const Block& block, EdgeAt at) { return block.pieces[at.piece].edges[at.edge]; }

/// The same statements with every value `share` of the way from what the block measures now to what
/// is wanted.
System part_way(const Block& now, System system, double share) {
  for (LengthConstraint& stated : system.lengths) {
    double here = 0.0;
    for (const LengthTerm& term : stated.terms) {
      here += term.factor * pinwright::length(edge_of(now, term.edge).curve);
    }
    stated.value = here + share * (stated.value - here);
  }
  for (WidthConstraint& stated : system.widths) {
    const Curve& line = edge_of(now, stated.edge).curve;
    const auto places = at_height(line, stated.level);
    if (places.empty()) continue;
    const double here = point(line, places.front()).x;
    stated.x = here + share * (stated.x - here);
  }
  for (AngleConstraint& stated : system.angles) {
    double here = 0.0;
    for (const CornerAt corner : stated.corners) {
      here += corner_angle(now.pieces[corner.piece], corner.edge);
    }
    stated.target = here + share * (stated.target - here);
  }
  return system;
}

/// At once when that goes; else by halves, quarters, eighths of what is still to go.
Result<SolveReport> solve_by_parts(Block& block, const System& system) {
  Result<SolveReport> report = solve(block, system);
  constexpr int kMostParts = 24;
  double share = 0.5;
  for (int i = 0; i < kMostParts && !report && share > 0.1; ++i) {
    if (!solve(block, part_way(block, system, share))) {
      share /= 2.0;
      continue;
    }
    report = solve(block, system);
  }
  return report;
}

double most_moved(const Edge& a, const Edge& b) {
  double most = 0.0;
  for (std::size_t i = 0; i < a.curve.points.size(); ++i) {
    most = std::max(most, distance(a.curve.points[i], b.curve.points[i]));
  }
  return most;
}

double most_moved(const Block& a, const Block& b) {
  double most = 0.0;
  for (std::size_t p = 0; p < a.pieces.size(); ++p) {
    for (std::size_t e = 0; e < a.pieces[p].edges.size(); ++e) {
      most = std::max(most, most_moved(a.pieces[p].edges[e], b.pieces[p].edges[e]));
    }
  }
  return most;
}

}  // namespace

Statement::Statement(const Block& sketch) : sketch_(sketch) { system_.smoothness = kStiffness; }

EdgeAt Statement::at(std::string_view piece, std::string_view edge) const {
  for (std::size_t p = 0; p < sketch_.pieces.size(); ++p) {
    if (sketch_.pieces[p].id == piece) return {p, edge_index(sketch_.pieces[p], edge)};
  }
  return {kNowhere, kNowhere};
}

void Statement::bends(std::string_view piece, std::string_view edge) {
  system_.free_edges.push_back(at(piece, edge));
}

void Statement::moves(std::string_view piece, std::string_view edge, Freedom freedom) {
  const EdgeAt where = at(piece, edge);
  system_.free_corners.push_back({{where.piece, where.edge}, freedom});
}

void Statement::length(std::string name, const std::vector<Term>& terms, double mm) {
  LengthConstraint stated{std::move(name), {}, mm};
  for (const Term& term : terms) stated.terms.push_back({at(term.piece, term.edge), term.factor});
  system_.lengths.push_back(std::move(stated));
}

void Statement::width(std::string name, std::string_view piece, std::string_view edge, double level,
                      double x) {
  system_.widths.push_back({std::move(name), at(piece, edge), level, x});
}

void Statement::angle(std::string name, std::string_view piece, std::string_view edge,
                      double radians) {
  const EdgeAt where = at(piece, edge);
  system_.angles.push_back({std::move(name), {{where.piece, where.edge}}, radians});
}

void Statement::level_with(std::string name, std::string_view piece_a, std::string_view edge_a,
                           std::string_view piece_b, std::string_view edge_b, Vec2 along) {
  const EdgeAt a = at(piece_a, edge_a);
  const EdgeAt b = at(piece_b, edge_b);
  SpanConstraint stated;
  stated.name = std::move(name);
  stated.from = {a.piece, a.edge};
  stated.to = {b.piece, b.edge};
  stated.along = along;
  system_.spans.push_back(std::move(stated));
}

void Statement::gentle_start(std::string name, std::string_view piece, std::string_view edge,
                             double least) {
  RadiusConstraint stated;
  stated.name = std::move(name);
  stated.edge = at(piece, edge);
  stated.at_start = true;
  stated.least = least;
  system_.radii.push_back(std::move(stated));
}

void Statement::joins() {
  for (const Join& join : sketch_.joins) {
    AngleConstraint stated{join.name, {}, join.target_rad};
    for (const CornerRef& corner : join.corners) {
      const EdgeAt where = at(corner.piece, corner.before);
      stated.corners.push_back({where.piece, where.edge});
    }
    system_.angles.push_back(std::move(stated));
  }
}

Result<Statement::Solved> Statement::solved() const {
  Solved made{sketch_, 0.0, 0.0, {}};
  const Result<SolveReport> report = solve_by_parts(made.block, system_);
  if (!report) {
    Problems told;
    for (const Problem& problem : report.problems()) {
      told.push_back(
          {"draft-impossible", "/wearer/body",
           "Not everything can be drawn at once: " + problem.place + ": " + problem.what + ".",
           "Measurements contradict each other; take them again, girths and widths "
           "first."});
    }
    return told;
  }
  made.most_moved_mm = most_moved(sketch_, made.block);
  for (const EdgeAt edge : system_.free_edges) {
    const Edge& line = edge_of(made.block, edge);
    const Edge& fair = edge_of(sketch_, edge);
    if (most_moved(fair, line) <= kInvisibleMm) continue;
    if (inflections(line.curve) > inflections(fair.curve)) {
      made.wiggle = line.id + " of the " + made.block.pieces[edge.piece].id;
    }
  }
  return made;
}

Result<Block> settled(const Round& round) {
  Result<Statement::Solved> last = round();
  Block before;
  for (int i = 1; i < kMostRounds && last; ++i) {
    const bool same = !before.pieces.empty() && most_moved(before, last->block) <= kSettledMm;
    if (last->off_mm <= kSettledMm && (same || last->most_moved_mm <= kSettledMm)) break;
    before = std::move(last->block);
    last = round();
  }
  if (!last) return last.problems();
  if (!last->wiggle.empty()) {
    return Problem{"draft-impossible", "/wearer/body", "The " + last->wiggle + " would wiggle.",
                   "Measurements contradict each other; take them again, girths and widths first."};
  }
  return std::move(last->block);
}

}  // namespace pinwright::drafting
