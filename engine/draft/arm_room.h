#pragma once
// Room for a large arm: the armhole is deepened where the sleeve's cap would be too flat. One
// number decides, and the least of it is wanted: found over whole drawings, outside the solver,
// whose lines have no say in where the underarm lies.

#include <functional>

#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright::drafting {

/// A cap flatter than this share of the sleeve's girth is made higher by lowering the underarm
/// points. Our own figure.
inline constexpr double kFlattestCap = 0.25;
inline constexpr double kMostLoweredMm = 60.0;

/// Draws the block with the underarm points `lowered` by nothing; when the arm does not fit or the
/// cap is too flat, by as little as makes the cap kFlattestCap of its girth high (to half a
/// millimetre, or three thousandths of the girth), at most kMostLoweredMm or as far as it can be
/// drawn; a cap that stays flatter even then is kept. The problems are those of the drawing with
/// nothing lowered.
Result<Block> with_room_for_arm(const std::function<Result<Block>(double lowered)>& draw);

}  // namespace pinwright::drafting
