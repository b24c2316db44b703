#include "engine/draft/statement.h"

#include <algorithm>
#include <utility>

#include "engine/constraint/solve.h"
#include "engine/geometry/fairing.h"

namespace pinwright::drafting {

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
  Solved made{sketch_, 0.0, {}};
  const Result<SolveReport> report = solve(made.block, system_);
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
  made.most_moved_mm = report->most_moved_mm;
  for (const EdgeAt edge : system_.free_edges) {
    const Edge& line = made.block.pieces[edge.piece].edges[edge.edge];
    if (inflections(line.curve) > inflections(sketch_.pieces[edge.piece].edges[edge.edge].curve)) {
      made.wiggle = line.id + " of the " + made.block.pieces[edge.piece].id;
    }
  }
  return made;
}

Result<Block> settled(const Round& round) {
  Result<Statement::Solved> last = round();
  for (int i = 1; i < kMostRounds && last && last->most_moved_mm > kSettledMm; ++i) last = round();
  if (!last) return last.problems();
  if (!last->wiggle.empty()) {
    return Problem{"draft-impossible", "/wearer/body", "The " + last->wiggle + " would wiggle.",
                   "Measurements contradict each other; take them again, girths and widths first."};
  }
  return std::move(last->block);
}

}  // namespace pinwright::drafting
