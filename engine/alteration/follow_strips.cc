// Part 4 of restore(): strips, linings and lengthening lines.
#include <algorithm>
#include <cmath>

#include "engine/alteration/follow.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"
#include "engine/pattern/strip.h"

namespace pinwright {
namespace {

void note_follow(Edit& edit, const std::string& piece) {
  auto& follow = edit.note.follow;
  if (std::find(follow.begin(), follow.end(), piece) == follow.end()) follow.push_back(piece);
}

}  // namespace

void follow_strips(Edit& edit) {
  for (const Binding& binding : edit.block.bindings) {
    const Piece before = *find_piece(edit.block, binding.piece);
    const auto was = std::find_if(edit.before.bindings.begin(), edit.before.bindings.end(),
                                  [&](const Binding& b) { return b.id == binding.id; });
    cut_strip(edit.block, binding, opening_stretches(edit.before, *was));
    if (!(before == *find_piece(edit.block, binding.piece))) note_follow(edit, binding.piece);
  }
}

void follow_linings(Edit& edit) {
  for (const Lining& lining : edit.block.linings) {
    Piece* piece = find_piece(edit.block, lining.piece);
    const Piece* shell = find_piece(edit.block, lining.shell);
    const Piece* shell_before = find_piece(edit.before, lining.shell);
    if (piece == nullptr || shell == nullptr || *shell == *shell_before) continue;
    for (Edge& edge : piece->edges)
      if (const Edge* from = find_edge(*shell, edge.id)) edge.curve = from->curve;
    for (Notch& notch : piece->notches)
      if (const Notch* from = find_notch(*shell, notch.id)) notch.at_mm = from->at_mm;
    for (Landmark& mark : piece->landmarks)
      if (const Landmark* from = find_landmark(*shell, mark.id)) mark.at = from->at;
    note_follow(edit, lining.piece);
  }
}

void follow_lines(Edit& edit) {
  for (const EdgeAt at : changed_edges(edit)) {
    Piece& piece = edit.block.pieces[at.piece];
    for (Line& line : piece.lengthen_lines) {
      if (line.from.y != line.to.y) continue;
      double low = 0.0;
      double high = 0.0;
      bool found = false;
      for (const Edge& edge : piece.edges) {
        for (const CurvePlace p : at_height(edge.curve, line.from.y)) {
          const double x = point(edge.curve, p).x;
          low = found ? std::min(low, x) : x;
          high = found ? std::max(high, x) : x;
          found = true;
        }
      }
      if (!found || high - low < 1.0) continue;
      const bool rightward = line.to.x >= line.from.x;
      line.from.x = rightward ? low : high;
      line.to.x = rightward ? high : low;
    }
  }
}

}  // namespace pinwright
