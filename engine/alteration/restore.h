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
/// Throughout, the limits of constraint/limits.h hold (heads pass, curves bend gently, ...) unless
/// the block broke them before; then they do not get worse.
/// Problems: "conflict" with the smallest set of statements that cannot hold together,
/// "no-solution" when it is a single one, "limit" when a limit would break; "amount-too-large" when
/// an edge would gain a wiggle, bulge to twice its chord, a neckline or armhole be no longer
/// hollow, an outline cross itself or its fold, or a dart turn inside out. On a problem the edit is
/// not to be used.
Result<Done> restore(Edit& edit);

}  // namespace pinwright
