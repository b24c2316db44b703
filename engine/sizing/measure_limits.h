#pragma once
// The limits of a garment as limits on its measures, for joint sizing.

#include "engine/pattern/fabric.h"
#include "engine/pattern/wearer.h"
#include "engine/sizing/sizing.h"

namespace pinwright {

/// Those of limits_of() (constraint/limits.h) that a measure or a difference of two counts: the
/// neck opening passes the head, the hem the hips, a long sleeve's hem the hand, the upper arm has
/// room, the cap is neither too flat nor too steep. The others (a strip's reach, the bend at the
/// underarm) are kept by alter() itself, whose refusal bounds an amount. A limit that the block
/// breaks already is set to what it has: it must not get worse. REQUIRES: a structurally sound
/// block.
std::vector<MeasureLimit> measure_limits(const Block& block, const Measurements& body,
                                         const Fabric& fabric);

}  // namespace pinwright
