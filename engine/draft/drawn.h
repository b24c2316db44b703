#pragma once
// The last look at a drawing before it is handed out.

#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright::drafting {

/// "draft-impossible" for every piece whose outline is not finite, does not run counter-clockwise,
/// or whose edges cross: measurements that contradict each other in a way that no check named.
Problems check_drawn(const Block& block);

/// The block, or what is wrong with its drawing.
Result<Block> looked_over(Result<Block> drawn);

}  // namespace pinwright::drafting
