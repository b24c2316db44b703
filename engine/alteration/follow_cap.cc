// Part 2 of restore(): the sleeve follows the armhole.
//
//            crown (moves)
//          .--^--.
//        /         \      both halves are redrawn so that each is as long as its armhole
//      _/           \_    plus the ease stated; the underarm corners stay
//
#include <algorithm>
#include <cmath>

#include "engine/alteration/follow.h"
#include "engine/constraint/solve.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

double run_length(const Block& block, const std::vector<RunPart>& run) {
  double sum = 0.0;
  for (const RunPart& part : run) {
    const EdgeAt at = edge_at(block, part.piece, part.edge);
    sum += length(block.pieces[at.piece].edges[at.edge].curve);
  }
  return sum;
}

}  // namespace

Result<Done> follow_cap(Edit& edit) {
  const std::set<EdgeAt> changed = changed_edges(edit);
  System system;
  std::set<EdgeAt> caps;
  bool out_of_true = false;
  for (const Seam& seam : edit.block.seams) {
    if (!is_cap_seam(edit.block, seam)) continue;
    const double b = run_length(edit.block, seam.b);
    LengthConstraint meets{seam.name + " sews together", {}, b + stated_ease(seam)};
    for (const RunPart& part : seam.a) {
      const EdgeAt at = edge_at(edit.block, part.piece, part.edge);
      caps.insert(at);
      meets.terms.push_back({at, 1.0});
      out_of_true = out_of_true || changed.contains(at);
    }
    out_of_true = out_of_true || std::abs(run_length(edit.block, seam.a) - meets.value) > 1e-6;
    system.lengths.push_back(std::move(meets));
  }
  if (caps.empty() || !out_of_true) return Done{};
  system.free_edges.assign(caps.begin(), caps.end());
  for (const EdgeAt cap : caps) {
    // The crown: the corner between two cap edges.
    const Piece& sleeve = edit.block.pieces[cap.piece];
    if (caps.contains({cap.piece, next_in(sleeve, cap.edge)}))
      system.free_corners.push_back({{cap.piece, cap.edge}, {true, true}});
  }
  for (const Join& join : edit.block.joins) {
    AngleConstraint angle{join.name, {}, join.target_rad};
    bool concerned = false;
    for (const CornerRef& c : join.corners) {
      const EdgeAt a = edge_at(edit.block, c.piece, c.before);
      const EdgeAt b = edge_at(edit.block, c.piece, c.after);
      concerned = concerned || caps.contains(a) || caps.contains(b);
      angle.corners.push_back({a.piece, a.edge});
    }
    if (concerned) system.angles.push_back(std::move(angle));
  }
  Block best = edit.block;
  for (const double stiffness : kStiffness) {
    Block trial = edit.block;
    system.smoothness = stiffness;
    const Result<SolveReport> solved = solve(trial, system);
    if (!solved) return solved.problems();
    best = std::move(trial);
    if (first_wiggle(edit, best).piece == kNowhere) break;
  }
  edit.block = std::move(best);
  for (const EdgeAt cap : caps) {
    const std::string& id = edit.block.pieces[cap.piece].id;
    if (std::find(edit.note.follow.begin(), edit.note.follow.end(), id) == edit.note.follow.end())
      edit.note.follow.push_back(id);
  }
  Piece& sleeve = edit.block.pieces[caps.begin()->piece];
  const Piece& old = edit.before.pieces[caps.begin()->piece];
  for (Landmark& mark : sleeve.landmarks)
    for (std::size_t i = 0; i < old.edges.size(); ++i)
      if (mark.at == old.edges[i].curve.end()) mark.at = sleeve.edges[i].curve.end();
  return Done{};
}

}  // namespace pinwright
