#include "engine/alteration/restore.h"

#include <algorithm>

#include "engine/alteration/follow.h"

namespace pinwright {

std::set<EdgeAt> changed_edges(const Edit& edit) {
  std::set<EdgeAt> changed = edit.redrawn;
  for (std::size_t p = 0; p < edit.block.pieces.size(); ++p)
    for (std::size_t e = 0; e < edit.block.pieces[p].edges.size(); ++e)
      if (!(edit.block.pieces[p].edges[e].curve == edit.before.pieces[p].edges[e].curve))
        changed.insert({p, e});
  return changed;
}

std::vector<std::pair<EdgeAt, Curve>> changed_curves(const Edit& edit) {
  std::vector<std::pair<EdgeAt, Curve>> curves;
  for (const EdgeAt at : changed_edges(edit))
    curves.emplace_back(at, edit.block.pieces[at.piece].edges[at.edge].curve);
  return curves;
}

Problem conflict_problem(const Conflict& conflict) {
  const bool several = conflict.members.size() > 1;
  return {several ? "conflict" : "no-solution", "", told(conflict),
          conflict.relax.empty() ? "take a smaller amount, or split the change between two places"
                                 : conflict.relax};
}

namespace {

bool same_lines(const Piece& a, const Piece& b) {
  return std::equal(
      a.edges.begin(), a.edges.end(), b.edges.begin(), b.edges.end(),
      [](const Edge& x, const Edge& y) { return x.id == y.id && x.curve == y.curve; });
}

// Pieces that had to give beside a changed one, here or in the step's preparation, are said too.
void note_what_gave(Edit& edit) {
  const Block& given = edit.given != nullptr ? *edit.given : edit.before;
  StepNote& note = edit.note;
  const auto says = [](const std::vector<std::string>& ids, const std::string& id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
  };
  for (const Piece& piece : edit.block.pieces) {
    const Piece* was = find_piece(given, piece.id);
    if (was == nullptr || same_lines(*was, piece)) continue;
    if (!says(note.pieces, piece.id) && !says(note.follow, piece.id))
      note.follow.push_back(piece.id);
  }
}

}  // namespace

Result<Done> restore(Edit& edit) {
  for (const auto part : {&solve_body, &follow_cap, &follow_notches}) {
    const Result<Done> done = part(edit);
    if (!done) return done;
  }
  follow_strips(edit);
  follow_linings(edit);
  follow_lines(edit);
  note_what_gave(edit);
  return check_sound(edit);
}

}  // namespace pinwright
