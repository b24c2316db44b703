#pragma once
// What cannot be had together, and what to relax.

#include "engine/sizing/search.h"

namespace pinwright {

/// The conflicts among targets, bounds and limits on the problem made linear at the amounts found,
/// each a smallest set; sets of different conflicts share no target. Empty when all can be met.
std::vector<SizingConflict> conflicts_of(const SizingInput& input, const Rows& rows,
                                         const std::vector<Unknown>& unknowns, const Found& found);

}  // namespace pinwright
