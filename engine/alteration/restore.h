#pragma once
// After the primary change: everything that must follow it.

#include "engine/alteration/edit.h"

namespace pinwright {

/// In this order:
///  1. the changed edges are solved: wanted lengths, sewn runs (side, shoulder, underarm) equal up
///  to
///     their ease, lines running on over seams, right angles at folds; where a join has no edge
///     that may give, the unchanged curve beside it is let in, keeping its length;
///  2. sleeve caps are redrawn to their armholes (crown and handles move, the underarm stays);
///  3. notches: on a changed edge a notch goes where the cloth under it went; its mate meets it,
///     up to the ease stated;
///  4. strips follow their openings, linings their shells, lengthening lines the new width.
/// Problems: "no-solution"; "amount-too-large" when an edge would gain a wiggle, an outline would
/// cross itself, or a dart would turn inside out. On a problem the edit is not to be used.
Result<Done> restore(Edit& edit);

}  // namespace pinwright
