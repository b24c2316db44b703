#pragma once
// A block while one step is done to it: what has moved, what must keep its length.

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "engine/alteration/alter.h"
#include "engine/alteration/anatomy.h"
#include "engine/constraint/limits.h"
#include "engine/constraint/standing.h"
#include "engine/constraint/system.h"
#include "engine/geometry/transform.h"

namespace pinwright {

struct Edit {
  const Block&
      before;  ///< as it was when the step began, its parts prepared (a dart put in or out)
  const Block* given = nullptr;  ///< the block as given to alter()
  Block block;
  /// Wanted length after the step, mm, for edges that the step changes.
  std::map<EdgeAt, double> wanted_length;
  /// Of these the wanted length yields when no smooth curve has it; the note then says so.
  std::set<EdgeAt> length_if_possible;
  std::vector<FreeCorner> free_corners;
  /// Places that a changed edge must pass through (half widths at a level).
  std::vector<WidthConstraint> widths;
  /// Edges that the step has drawn itself; move_corners leaves them but for their end points.
  std::set<EdgeAt> drawn;
  /// Edges in which a change runs out to a corner that is held (one_sided.h): square at the fold,
  /// then down, then square to the side again takes one more change of curvature.
  std::set<EdgeAt> runs_out;
  /// Where a notch belongs after the step when it is not where its edge carried it.
  std::map<std::pair<std::size_t, std::string>, Vec2> notch_to;
  /// Where the crown of the sleeve belongs; what is not wished follows from the armhole.
  struct Crown {
    std::optional<double> height;  ///< above the middle of the two underarm corners, mm
    std::optional<double> x;
  };
  Crown crown;
  /// Curves that may change their length when they have to give.
  std::set<EdgeAt> any_length;
  /// Edges drawn anew before the step began (a dart went out or came in): they count as changed.
  std::set<EdgeAt> redrawn;
  Side side = Side::both;  ///< the block is the half of this side; both: it serves both sides
  StepNote note;
  /// Seams and joins with their edges found; the parts of a block do not change during a step.
  Standing standing;
  /// The limits as they were when the step began, without words.
  std::vector<Limit> limits_before;

  explicit Edit(const Block& start)
      : before(start),
        block(start),
        standing(start),
        limits_before(limits_of(start, start.drafted_for.body, start.fabric, Words::no)) {}
  Piece& piece(std::size_t i) { return block.pieces[i]; }
};

/// How the corners of one ring move; a corner without a motion stays. Index = edge that ends there.
using CornerMotions = std::vector<std::optional<Affine>>;

/// Moves the corners of a piece and carries its edges along: an edge whose two corners move alike
/// moves rigidly with them; otherwise a neckline is redrawn between its new ends and end tangents
/// (hollow.h), and in any other curve each end carries its own handle, and the points between go
/// over from one motion to the other smoothly; angles at the corners are kept. Edges whose
/// corners stay keep their bits. Dart points go to the place on the middle line of their mouth that
/// is nearest to where `dart_point` sends them (legs stay equally long). Landmarks at corners go
/// with them. Not solved yet: lengths and joins come from restore().
void move_corners(Edit& edit, std::size_t piece, const CornerMotions& motions,
                  const std::optional<Affine>& dart_point = std::nullopt);

/// No motion for any corner of the piece.
CornerMotions still(const Piece& piece);
/// Sets the motion of every corner from `first` on to `last`, both included, in ring order.
void set_from_to(const Piece& piece, CornerMotions& motions, std::size_t first, std::size_t last,
                 const Affine& motion);

/// The problem of a step that this block has no place for.
Problem not_here(const std::string& what, const std::string& mend);
/// The problem of an amount that the geometry does not allow.
Problem too_large(const std::string& what, const std::string& mend);
/// "9 mm", "9.5 mm": for notes; at most one decimal, never a minus sign.
std::string mm_text(double mm);
/// "18 mm in all", or "this side only" where the block is the half of one side.
std::string whole_text(const Edit& edit, HalfMm amount);

}  // namespace pinwright
