// Lengthen or shorten a dart.
//
//      |--.______            the point goes along the middle line of the mouth, nearer to the mark
//      |==--------> .        or farther from it; the mouth keeps its width and is trued so that the
//      |--'------            seam runs on over the closed dart. No seam changes its length.
//
// A dart ends 12 to 50 mm (1/2 to 2 in) short of its mark: common practice. Inverse: the negative
// amount.
#include "engine/alteration/dart_find.h"
#include "engine/alteration/operations.h"

namespace pinwright {
namespace {

constexpr double kLeastLegMm = 30.0;

}  // namespace

Result<Done> lengthen_dart(Edit& edit, DistanceMm amount, const std::string& piece_id,
                           const std::string& seam) {
  const Result<DartPlace> found = find_dart(edit.block, piece_id, seam);
  if (!found) return found.problems();
  const DartPlace& d = *found;
  const Piece& piece = edit.block.pieces[d.piece];
  const Vec2 tip = piece.edges[d.in].curve.end();
  const Vec2 middle = lerp(piece.edges[d.in].curve.start(), piece.edges[d.out].curve.end(), 0.5);
  const Vec2 along = unit(tip - middle);
  const double left = dot(dart_mark(piece, piece.darts[d.dart]) - tip, along);
  const double deep = distance(tip, middle);
  if (amount.mm() > 0.0 && amount.mm() > left)
    return too_large("the dart ends " + mm_text(left) + " short of the point that it is for",
                     "take at most that");
  if (deep + amount.mm() < kLeastLegMm)
    return too_large("the dart is only " + mm_text(deep) + " long", "take a smaller amount");
  CornerMotions motions = still(piece);
  motions[d.in] = translation(amount.mm() * along);
  edit.note.pieces.push_back(piece_id);
  edit.note.text = piece.name + ": dart in the " + seam +
                   (amount.mm() > 0.0 ? " lengthened " : " shortened ") + mm_text(amount.mm());
  move_corners(edit, d.piece, motions);
  return Done{};
}

}  // namespace pinwright
