#pragma once
// What the alterations above the bust and across the blades share.

#include <optional>
#include <string>

#include "engine/alteration/edit.h"
#include "engine/alteration/operations.h"
#include "engine/base/units.h"
#include "engine/geometry/curve.h"

namespace pinwright {

/// One half of the bodice: front or back.
struct BodiceHalf {
  std::size_t at = 0;
  BodiceAnatomy body;
};
/// Problem when the block has no such piece, or the piece lacks one of the edges.
Result<BodiceHalf> bodice_half(const Edit& edit, const std::string& piece);

/// Where a cut across the upper body hinges: on the armhole at its notch (the first one, kept
/// within the middle half of the armhole), or half way where it has none.
Vec2 armhole_hinge(const Piece& piece, const BodiceAnatomy& body);

/// The dart whose mouth lies in the shoulder; nullptr when there is none.
const Dart* shoulder_dart(const Piece& piece, const BodiceAnatomy& body);

/// Length of the shoulder without the dart's mouth, mm.
double shoulder_length(const Piece& piece, const BodiceAnatomy& body);

/// Most that a back shoulder may be longer than the front's, to be eased in: 1/2 in, common
/// practice.
inline constexpr double kMostShoulderEaseMm = 12.7;

/// The shoulder seam's ease as the block states it, back longer than front, mm; nothing when the
/// block has no seam "shoulder" whose first run is the back's.
std::optional<double> shoulder_ease(const Block& block);
/// States it anew. "amount-too-large" outside 0 .. kMostShoulderEaseMm.
Result<Done> set_shoulder_ease(Edit& edit, double ease_mm);

/// The shoulder tip turned about the neck point so that it goes up by the chord `up` (negative:
/// down); nothing when the shoulder is too short for it.
std::optional<Affine> turn_shoulder_tip(const Piece& piece, const BodiceAnatomy& body, double up);

/// Gives the corners of the shoulder from the tip up to the neck point, both included, one motion;
/// a dart's point in it stays where it is.
void move_shoulder(const Piece& piece, const BodiceAnatomy& body, CornerMotions& motions,
                   const Affine& motion);

/// After the corners of front and back have moved: the back neckline takes the length it has come
/// to, and the front's makes up for it, so that the opening keeps its length where a smooth line
/// has it.
void keep_neckline(Edit& edit, const Bodice& bodice);

/// Where the armhole passes half way between underarm point and shoulder tip; nothing when it
/// passes that height more than once.
std::optional<Vec2> armhole_middle(const Piece& piece, const BodiceAnatomy& body);
/// The armhole redrawn with its ends and end tangents as they are and its middle `out` mm beside
/// where it was, with the length asked for; nothing when no hollow does that.
std::optional<Curve> armhole_with_middle(const Edit& edit, const BodiceHalf& half, double out,
                                         std::optional<double> length_mm);
/// After the corners have moved: the middle of the armhole goes to `out` mm beside where it was
/// before the step (at the height half way between the ends as they are now), running out to both
/// ends. Problem when the armhole is no single hollow.
Result<Done> move_armhole_middle(Edit& edit, const BodiceHalf& half, double out);

/// After the corners have moved: nobody asked for another width across there, so the armhole keeps
/// its middle where it can be said what that is.
void hold_across(Edit& edit, const BodiceHalf& half);

}  // namespace pinwright
