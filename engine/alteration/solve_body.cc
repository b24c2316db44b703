// Part 1 of restore(): the edges that the step changed, and those that must give with them.
#include <algorithm>
#include <cmath>

#include "engine/alteration/follow.h"
#include "engine/constraint/residuals.h"
#include "engine/constraint/solve.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

bool is_role(const Block& block, EdgeAt at, EdgeRole role) {
  return block.pieces[at.piece].edges[at.edge].role == role;
}

// Both edges that meet at a corner reference.
std::pair<EdgeAt, EdgeAt> edges_at(const Block& block, const CornerRef& corner) {
  return {edge_at(block, corner.piece, corner.before), edge_at(block, corner.piece, corner.after)};
}

bool touches_cap(const Block& block, const Join& join) {
  for (const CornerRef& c : join.corners) {
    const auto [a, b] = edges_at(block, c);
    if (is_role(block, a, EdgeRole::cap) || is_role(block, b, EdgeRole::cap)) return true;
  }
  return false;
}

double join_residual(const Block& block, const Join& join) {
  double sum = -join.target_rad;
  for (const CornerRef& c : join.corners) {
    const EdgeAt a = edge_at(block, c.piece, c.before);
    sum += corner_angle(block.pieces[a.piece], a.edge);
  }
  return sum;
}

std::set<EdgeAt> edges_of(const Block& block, const Join& join) {
  std::set<EdgeAt> edges;
  for (const CornerRef& c : join.corners) {
    const auto [a, b] = edges_at(block, c);
    edges.insert(a);
    edges.insert(b);
  }
  return edges;
}

AngleConstraint angle_of(const Block& block, const Join& join) {
  AngleConstraint angle{join.name, {}, join.target_rad};
  for (const CornerRef& c : join.corners) {
    const EdgeAt at = edge_at(block, c.piece, c.before);
    angle.corners.push_back({at.piece, at.edge});
  }
  return angle;
}

bool any_of_set(const std::set<EdgeAt>& edges, const std::set<EdgeAt>& in) {
  return std::any_of(edges.begin(), edges.end(), [&](EdgeAt e) { return in.contains(e); });
}

bool bends(const Block& block, EdgeAt at) {
  return !block.pieces[at.piece].edges[at.edge].straight;
}

// Lengths that the step asked for, and sewn runs whose parts are not all asked for.
void add_lengths(const Edit& edit, const std::set<EdgeAt>& free, System& system) {
  const Block& block = edit.block;
  for (const auto& [at, wanted] : edit.wanted_length) {
    const Piece& piece = block.pieces[at.piece];
    system.lengths.push_back(
        {"the length of the " + piece.edges[at.edge].id + " of the " + piece.id,
         {{at, 1.0}},
         wanted});
  }
  for (const Seam& seam : block.seams) {
    if (is_cap_seam(block, seam)) continue;
    LengthConstraint equal{seam.name + " sews together", {}, stated_ease(seam)};
    bool concerned = false;
    bool all_wanted = true;
    for (const RunPart& part : seam.a)
      equal.terms.push_back({edge_at(block, part.piece, part.edge), 1.0});
    for (const RunPart& part : seam.b)
      equal.terms.push_back({edge_at(block, part.piece, part.edge), -1.0});
    for (const LengthTerm& term : equal.terms) {
      concerned = concerned || free.contains(term.edge);
      all_wanted = all_wanted && edit.wanted_length.contains(term.edge);
    }
    if (concerned && !all_wanted) system.lengths.push_back(std::move(equal));
  }
}

// Curves beside a join that may give although the step did not ask for them.
// `wide`: every curve that meets at the join; else only where nothing else can give.
std::set<EdgeAt> let_in(const Block& block, const std::set<EdgeAt>& changed, bool wide) {
  std::set<EdgeAt> more;
  for (const Join& join : block.joins) {
    if (touches_cap(block, join)) continue;
    const std::set<EdgeAt> edges = edges_of(block, join);
    if (!any_of_set(edges, changed)) continue;
    if (std::abs(join_residual(block, join)) * kAngleScaleMm <= kSolvedMm) continue;
    const bool can_give = std::any_of(edges.begin(), edges.end(), [&](EdgeAt e) {
      return changed.contains(e) && bends(block, e);
    });
    if (can_give && !wide) continue;
    for (const EdgeAt e : edges)
      if (!changed.contains(e) && bends(block, e)) more.insert(e);
  }
  return more;
}

System body_system(const Edit& edit, const std::set<EdgeAt>& changed, const std::set<EdgeAt>& let) {
  const Block& block = edit.block;
  System system;
  std::set<EdgeAt> free;
  for (const EdgeAt e : changed)
    if (!is_role(block, e, EdgeRole::cap)) free.insert(e);
  free.insert(let.begin(), let.end());
  system.free_edges.assign(free.begin(), free.end());
  system.free_corners = edit.free_corners;
  add_lengths(edit, free, system);
  for (const EdgeAt e : let) {
    const Piece& piece = block.pieces[e.piece];
    if (edit.wanted_length.contains(e)) continue;
    system.lengths.push_back(
        {"the " + piece.edges[e.edge].id + " of the " + piece.id + " keeps its length",
         {{e, 1.0}},
         length(piece.edges[e.edge].curve)});
  }
  for (const Join& join : block.joins)
    if (!touches_cap(block, join) && any_of_set(edges_of(block, join), free))
      system.angles.push_back(angle_of(block, join));
  return system;
}

}  // namespace

Result<Done> solve_body(Edit& edit) {
  const std::set<EdgeAt> changed = changed_edges(edit);
  if (changed.empty() && edit.wanted_length.empty()) return Done{};
  Problems last;
  for (const bool wide : {false, true}) {
    std::set<EdgeAt> let = let_in(edit.block, changed, wide);
    Block trial = edit.block;
    const Result<SolveReport> solved = solve(trial, body_system(edit, changed, let));
    if (solved) {
      edit.block = std::move(trial);
      return Done{};
    }
    last = solved.problems();
  }
  return last;
}

}  // namespace pinwright
