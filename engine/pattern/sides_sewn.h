#pragma once
// How an opened block is sewn, from how its halves are, and back. Parts of sides.h.

#include <set>
#include <string>

#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright {

/// Writes seams, joins, bindings and linings of `joined`, whose pieces stand already; `open` holds
/// the half blocks' ids of the pieces that were opened or parted.
void sew_joined(Block& joined, const Block& left, const Block& right,
                const std::set<std::string>& open);

/// Writes those of `half`, whose pieces stand already, as `side` of `opened` sees them.
Result<Done> sew_half(Block& half, const Block& opened, Side side);

}  // namespace pinwright
