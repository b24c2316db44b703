#pragma once
// How far a refused change would go.

#include <optional>
#include <vector>

#include "engine/alteration/alter.h"

namespace pinwright {

/// The largest amount, in the same direction and in the step's own unit, that alter() does to the
/// block, to a fiftieth of the amount asked for, rounded down to 0.1 (a ratio to 0.01). Nothing
/// when the step is done as it stands, has no amount, or is refused for another reason than its
/// size
/// ("operation-not-here", an unknown option); 0 (a ratio: 1) when not even a fiftieth is done.
/// Amounts between are taken to be done when larger ones are: true of all but freak shapes. Costs
/// up to seven alterations.
std::optional<double> largest_amount(const Block& block, const Step& step);

/// Problems of alter(block, steps) as given back, with what the refused step would go to added to
/// its mend: "...; here at most 12.5 mm can be done". Others are left as they are.
Problems with_largest(const Block& block, const std::vector<Step>& steps, Problems problems);

}  // namespace pinwright
