#pragma once
#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright {

/// Ids and references between the parts of a block: "id-twice", "reference-unknown" (a seam, join,
/// binding or lining names a piece, edge, corner or notch that is not there), "seam-missing" (an
/// edge that must be sewn is in no seam), "seam-sections", "ease-range", "ratio-range",
/// "fabric-range",
/// "sides-mixed" (an opened block that is not made of two like halves).
Problems reference_problems(const Block& block);

}  // namespace pinwright
