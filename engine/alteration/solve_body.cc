// Part 1 of restore(): the edges that the step changed, and those that must give with them.
#include <algorithm>
#include <cmath>
#include <optional>

#include "engine/alteration/follow.h"
#include "engine/alteration/hollow.h"
#include "engine/constraint/conflict.h"
#include "engine/constraint/limits.h"
#include "engine/constraint/residuals.h"
#include "engine/constraint/solve.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

bool is_role(const Block& block, EdgeAt at, EdgeRole role) {
  return block.pieces[at.piece].edges[at.edge].role == role;
}

bool out_of_true(const Block& block, const JoinAt& join) {
  return std::abs(join_residual(block, join)) * kAngleScaleMm > kSolvedMm;
}

bool any_of_set(const std::vector<EdgeAt>& edges, const std::set<EdgeAt>& in) {
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
  for (const SeamAt& seam : edit.standing.seams()) {
    if (seam.cap) continue;
    bool concerned = false;
    bool all_wanted = true;
    for (const auto* run : {&seam.a, &seam.b}) {
      for (const EdgeAt e : *run) {
        concerned = concerned || free.contains(e);
        all_wanted = all_wanted && edit.wanted_length.contains(e);
      }
    }
    if (!concerned || all_wanted) continue;
    system.lengths.push_back(equal_runs(block, seam));
  }
}

// Corners beside which a dart opens, and the edges that end there.
//
//        |  side-upper
//   out  +---.
//            > tip      The legs turned or opened: the mouth's corners move until the legs are
//            equal
//   in   +---'          and the sewn line runs on over the closed dart; edges keep their length.
//        |  side-lower
//
struct DartTruing {
  std::vector<FreeCorner> corners;
  std::set<EdgeAt> edges;  // that end at the mouth, legs not counted
  std::vector<LengthConstraint> lengths;
};

void true_mouth(const Edit& edit, std::size_t piece_at, const Dart& dart, DartTruing& truing) {
  const Piece& piece = edit.block.pieces[piece_at];
  const std::size_t in = edge_index(piece, dart.leg_in);
  const std::size_t out = edge_index(piece, dart.leg_out);
  const std::size_t before = before_in(piece, in);
  const std::size_t after = next_in(piece, out);
  truing.corners.push_back({{piece_at, before}, {true, true}});
  truing.corners.push_back({{piece_at, out}, {true, true}});
  truing.lengths.push_back({"the legs of the " + dart.id + " are equal",
                            {{{piece_at, in}, 1.0}, {{piece_at, out}, -1.0}},
                            0.0});
  for (const std::size_t e : {before, after}) {
    truing.edges.insert({piece_at, e});
    if (edit.wanted_length.contains({piece_at, e}) || edit.standing.is_sewn({piece_at, e}))
      continue;
    truing.lengths.push_back(
        {"the " + piece.edges[e].id + " of the " + piece.id + " keeps its length",
         {{{piece_at, e}, 1.0}},
         length(piece.edges[e].curve)});
  }
}

// Darts at whose mouth a join no longer runs on.
DartTruing dart_truing(const Edit& edit, const std::set<EdgeAt>& changed) {
  DartTruing truing;
  const Block& block = edit.block;
  std::set<EdgeAt> at_bent_joins;
  for (const JoinAt& join : edit.standing.joins())
    if (any_of_set(join.edges, changed) && out_of_true(block, join))
      at_bent_joins.insert(join.edges.begin(), join.edges.end());
  for (std::size_t p = 0; p < block.pieces.size(); ++p)
    for (const Dart& dart : block.pieces[p].darts)
      if (at_bent_joins.contains({p, edge_index(block.pieces[p], dart.leg_in)}))
        true_mouth(edit, p, dart, truing);
  return truing;
}

// Curves beside a join that may give although the step did not ask for them.
// `wide`: every curve that meets at the join; else only where nothing else can give.
std::set<EdgeAt> let_in(const Edit& edit, const std::set<EdgeAt>& changed,
                        const std::set<EdgeAt>& at_mouths, bool wide) {
  const Block& block = edit.block;
  std::set<EdgeAt> more;
  for (const JoinAt& join : edit.standing.joins()) {
    if (join.cap) continue;
    const std::vector<EdgeAt>& edges = join.edges;
    const bool at_mouth = any_of_set(edges, at_mouths);
    if (!any_of_set(edges, changed) && !at_mouth) continue;
    const bool out = out_of_true(block, join);
    if (!out && !at_mouth && !wide) continue;
    const bool can_give = std::any_of(edges.begin(), edges.end(), [&](EdgeAt e) {
      return changed.contains(e) && bends(block, e);
    });
    if (can_give && !wide) continue;
    for (const EdgeAt e : edges) {
      // At a dart's mouth, or where one was, the curves of its own piece give first.
      const bool own = !at_mouth || wide ||
                       std::any_of(at_mouths.begin(), at_mouths.end(),
                                   [&](EdgeAt m) { return m.piece == e.piece; });
      if (own && !changed.contains(e) && bends(block, e)) more.insert(e);
    }
  }
  return more;
}

System body_system(const Edit& edit, const std::set<EdgeAt>& changed, const DartTruing& truing,
                   const std::set<EdgeAt>& let, Words words) {
  const Block& block = edit.block;
  System system;
  std::set<EdgeAt> free = truing.edges;
  for (const EdgeAt e : changed)
    if (!is_role(block, e, EdgeRole::cap)) free.insert(e);
  free.insert(let.begin(), let.end());
  system.free_edges.assign(free.begin(), free.end());
  system.free_corners = edit.free_corners;
  system.free_corners.insert(system.free_corners.end(), truing.corners.begin(),
                             truing.corners.end());
  system.widths = edit.widths;
  system.lengths = truing.lengths;
  add_lengths(edit, free, system);
  for (const EdgeAt e : let) {
    const Piece& piece = block.pieces[e.piece];
    if (edit.wanted_length.contains(e) || truing.edges.contains(e)) continue;
    if (edit.any_length.contains(e)) continue;
    system.lengths.push_back(
        {"the " + piece.edges[e.edge].id + " of the " + piece.id + " keeps its length",
         {{e, 1.0}},
         length(piece.edges[e.edge].curve)});
  }
  for (const JoinAt& join : edit.standing.joins())
    if (!join.cap && any_of_set(join.edges, free)) system.angles.push_back(angle_of(block, join));
  add_limits(edit.limits_before, block, system, words);
  return system;
}

// Wanted lengths of single curves; sewn runs and kept lengths stay.
void drop_wanted(const Edit& edit, const std::set<EdgeAt>& which, System& system) {
  std::erase_if(system.lengths, [&](const LengthConstraint& c) {
    return c.terms.size() == 1 && which.contains(c.terms.front().edge) &&
           edit.wanted_length.contains(c.terms.front().edge);
  });
}

// Every changed hollow drawn anew (hollow.h) between the ends and end tangents it has in `trial`.
void redraw_hollows(const Edit& edit, const System& system, Block& trial) {
  for (const EdgeAt at : system.free_edges) {
    const Edge& was = edit.before.pieces[at.piece].edges[at.edge];
    Curve& curve = trial.pieces[at.piece].edges[at.edge].curve;
    if (was.straight || curve == was.curve) continue;
    HollowAsk ask{curve.start(), curve.end(), start_tangent(curve), end_tangent(curve), {}, {}, 0};
    for (const LengthConstraint& l : system.lengths)
      if (l.terms.size() == 1 && l.terms.front().edge == at) ask.length = l.value;
    for (const WidthConstraint& w : system.widths) {
      if (w.edge != at) continue;
      ask.level = w.level;
      ask.x = w.x;
    }
    if (const auto anew = redraw_hollow(was.curve, ask)) curve = *anew;
  }
}

// What is being solved: the edit as the step left it, and how far the change may spread.
struct BodyTask {
  const Edit& edit;
  const std::set<EdgeAt>& changed;
  const DartTruing& truing;
  const std::set<EdgeAt>& local;  ///< makes good on its own piece first
  bool wide = false;              ///< every curve that meets at a changed join may give
};

System system_of(const BodyTask& task, const std::set<EdgeAt>& yielding, Words words) {
  const std::set<EdgeAt> let = let_in(task.edit, task.changed, task.local, task.wide);
  System system = body_system(task.edit, task.changed, task.truing, let, words);
  drop_wanted(task.edit, yielding, system);
  return system;
}

// Solved and without a new wiggle; the first solution with one is left in `wiggly`.
std::optional<Redrawn> solved_smoothly(const Edit& edit, const Block& start, System system,
                                       std::optional<Redrawn>& wiggly) {
  for (const double stiffness : kStiffness) {
    system.smoothness = stiffness;
    Result<Redrawn> trial = redraw(start, system);
    if (!trial) break;  // stiffness does not make a solution where there is none
    if (first_wiggle(edit, trial->edges).piece == kNowhere) return std::move(trial).value();
    if (!wiggly) wiggly = std::move(trial).value();
  }
  return {};
}

// First way: the points move as little as may be.
std::optional<Redrawn> moved_least(const BodyTask& task, std::optional<Redrawn>& wiggly) {
  return solved_smoothly(task.edit, task.edit.block, system_of(task, {}, Words::no), wiggly);
}

// Second way, where the first gives a wiggle or nothing: the end tangents are found first, lengths
// and widths left open, then each hollow is drawn anew.
std::optional<Block> drawn_anew(const BodyTask& task, const std::set<EdgeAt>& yielding) {
  const Edit& edit = task.edit;
  const System system = system_of(task, yielding, Words::no);
  System open = system;
  std::set<EdgeAt> curves;
  for (const EdgeAt e : open.free_edges)
    if (bends(edit.block, e)) curves.insert(e);
  drop_wanted(edit, curves, open);
  open.widths.clear();
  const Result<Redrawn> tangents = redraw(edit.block, open);
  if (!tangents) return {};
  Block drawn = edit.block;
  put(*tangents, drawn);
  redraw_hollows(edit, system, drawn);
  std::optional<Redrawn> wiggly;
  const std::optional<Redrawn> solved = solved_smoothly(edit, drawn, system, wiggly);
  if (!solved) return {};
  put(*solved, drawn);
  return drawn;
}

void note_yielded(Edit& edit) {
  for (const EdgeAt at : edit.length_if_possible) {
    const Piece& piece = edit.block.pieces[at.piece];
    const double more = length(piece.edges[at.edge].curve) - edit.wanted_length.at(at);
    if (std::abs(more) < 0.05) continue;
    edit.note.text += ", " + piece.edges[at.edge].id + " of the " + piece.id + " " + mm_text(more) +
                      (more > 0 ? " longer" : " shorter");
  }
}

}  // namespace

Result<Done> solve_body(Edit& edit) {
  const std::set<EdgeAt> changed = changed_edges(edit);
  if (changed.empty() && edit.wanted_length.empty()) return Done{};
  const DartTruing truing = dart_truing(edit, changed);
  std::set<EdgeAt> local = truing.edges;  // what these pieces changed they make good themselves
  local.insert(edit.redrawn.begin(), edit.redrawn.end());
  std::optional<Redrawn> wiggly;
  for (const bool wide : {false, true}) {
    const BodyTask task{edit, changed, truing, local, wide};
    if (const auto least = moved_least(task, wiggly)) {
      put(*least, edit.block);
      return Done{};
    }
    std::optional<Block> anew = drawn_anew(task, {});
    if (!anew && !edit.length_if_possible.empty()) anew = drawn_anew(task, edit.length_if_possible);
    if (!anew) continue;
    edit.block = std::move(*anew);
    note_yielded(edit);
    return Done{};
  }
  if (!wiggly) {
    const BodyTask task{edit, changed, truing, local, true};
    return conflict_problem(smallest_conflict(edit.block, system_of(task, {}, Words::yes)));
  }
  put(*wiggly, edit.block);  // check_sound says which curve wiggles
  return Done{};
}

}  // namespace pinwright
