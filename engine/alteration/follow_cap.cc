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
#include "engine/constraint/conflict.h"
#include "engine/constraint/limits.h"
#include "engine/constraint/solve.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kCapJoinRad = 1e-6;  // far below what a join may show (1 degree)

double run_length(const Block& block, const std::vector<EdgeAt>& run) {
  double sum = 0.0;
  for (const EdgeAt at : run) sum += length(block.pieces[at.piece].edges[at.edge].curve);
  return sum;
}

// A cap edge drawn out of its underarm corner until the crown lies where it is wished.
void draw_to(Curve& curve, bool crown_last, Vec2 crown) {
  const Vec2 foot = crown_last ? curve.start() : curve.end();
  const Vec2 was = crown_last ? curve.end() : curve.start();
  if (was == crown || was.x == foot.x || was.y == foot.y) return;
  const double across = (crown.x - foot.x) / (was.x - foot.x);
  const double up = (crown.y - foot.y) / (was.y - foot.y);
  for (Vec2& p : curve.points) {
    if (p == foot) continue;
    p = p == was ? crown : Vec2{foot.x + across * (p.x - foot.x), foot.y + up * (p.y - foot.y)};
  }
}

void wish_crown(Edit& edit) {
  const std::size_t at = sleeve_index(edit.block);
  if (at == kNowhere || (!edit.crown.height && !edit.crown.x)) return;
  Piece& piece = edit.piece(at);
  const SleeveAnatomy sleeve = *sleeve_anatomy(piece);
  Curve& front = piece.edges[sleeve.cap_front].curve;
  Curve& back = piece.edges[sleeve.cap_back].curve;
  const Vec2 was = front.end();
  const double base = 0.5 * (front.start().y + back.end().y);
  const Vec2 crown{edit.crown.x.value_or(was.x),
                   edit.crown.height ? base + *edit.crown.height : was.y};
  draw_to(front, true, crown);
  draw_to(back, false, crown);
}

// A line running on from the cap to the underarm seam or over the crown that no longer does.
bool cap_join_out(const Edit& edit) {
  for (const JoinAt& join : edit.standing.joins())
    if (join.cap && std::abs(join_residual(edit.block, join)) > kCapJoinRad) return true;
  return false;
}

}  // namespace

Result<Done> follow_cap(Edit& edit) {
  wish_crown(edit);
  const std::set<EdgeAt> changed = changed_edges(edit);
  System system;
  std::set<EdgeAt> caps;
  bool out_of_true = false;
  for (const SeamAt& seam : edit.standing.seams()) {
    if (!seam.cap) continue;
    const Seam& sewn = edit.block.seams[seam.seam];
    LengthConstraint meets{
        sewn.name + " sews together", {}, run_length(edit.block, seam.b) + stated_ease(sewn)};
    for (const EdgeAt at : seam.a) {
      caps.insert(at);
      meets.terms.push_back({at, 1.0});
      out_of_true = out_of_true || changed.contains(at);
    }
    out_of_true = out_of_true || std::abs(run_length(edit.block, seam.a) - meets.value) > 1e-6;
    system.lengths.push_back(std::move(meets));
  }
  if (caps.empty()) return Done{};
  const bool sleeve_changed = std::any_of(changed.begin(), changed.end(),
                                          [&](EdgeAt e) { return e.piece == caps.begin()->piece; });
  if (!out_of_true && !(sleeve_changed && cap_join_out(edit))) return Done{};
  system.free_edges.assign(caps.begin(), caps.end());
  for (const EdgeAt cap : caps) {
    // The crown: the corner between two cap edges.
    const Piece& sleeve = edit.block.pieces[cap.piece];
    if (caps.contains({cap.piece, next_in(sleeve, cap.edge)}))
      system.free_corners.push_back({{cap.piece, cap.edge}, {!edit.crown.x, !edit.crown.height}});
  }
  for (const JoinAt& join : edit.standing.joins())
    if (join.cap) system.angles.push_back(angle_of(edit.block, join));
  add_limits(edit.limits_before, edit.block, system, Words::yes);
  Redrawn best;
  for (const double stiffness : kStiffness) {
    system.smoothness = stiffness;
    Result<Redrawn> trial = redraw(edit.block, system);
    if (!trial) return conflict_problem(smallest_conflict(edit.block, system));
    best = std::move(trial).value();
    if (first_wiggle(edit, best.edges).piece == kNowhere) break;
  }
  put(best, edit.block);
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
