// Let out or take in a waist dart.
//
//         /\               the mouth's corners go toward each other along the waist by a / 2 each;
//        /  \              point and angle of the waist line over the closed dart are kept. The
//        waist
//    ---'>  <'---          gets wider by a, nothing else of the bodice moves.
//
// a: on the half pattern, on the piece named. Steps: common practice. Inverse: the negative amount.
#include "engine/alteration/dart_find.h"
#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

Result<Done> let_out_dart(Edit& edit, HalfMm amount, const std::string& piece_id) {
  const Result<DartPlace> found = find_dart(edit.block, piece_id, "waist");
  if (!found) return found.problems();
  const DartPlace& d = *found;
  Piece& piece = edit.piece(d.piece);
  const double a = amount.mm();
  const double intake = dart_intake(piece, piece.darts[d.dart]);
  if (a > intake - kLeastIntakeMm)
    return too_large(
        "the waist dart of the " + piece_id + " has only " + mm_text(intake) + " to give",
        "take a smaller amount");
  CornerMotions motions = still(piece);
  for (const std::size_t edge : {d.before, d.after})
    edit.wanted_length[{d.piece, edge}] = length(piece.edges[edge].curve) + 0.5 * a;
  motions[d.before] = translation(0.5 * a * end_tangent(piece.edges[d.before].curve));
  motions[d.out] = translation(-0.5 * a * start_tangent(piece.edges[d.after].curve));
  move_corners(edit, d.piece, motions);
  edit.note.pieces.push_back(piece_id);
  edit.note.text = piece.name + ": waist dart " + (a > 0 ? "let out " : "taken in ") + mm_text(a) +
                   " (" + whole_text(edit, amount) + ")";
  return Done{};
}

}  // namespace pinwright
