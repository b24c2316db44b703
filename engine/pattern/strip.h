#pragma once
// A strip cut to its opening.

#include <vector>

#include "engine/pattern/block.h"

namespace pinwright {

/// Lengths of the stretches of the opening in the order in which the strip is sewn round it, mm.
/// Half pieces (copies 2): the runs backwards and then forwards, as from the centre back over one
/// side to the centre front and on; else the runs as they are listed.
std::vector<double> opening_stretches(const Block& block, const Binding& binding);

/// Redraws the binding's strip to ratio x the sum of the opening's stretches. Notches keep their
/// place within their stretch: one at a seam stays at the seam. `before` are the stretches that the
/// strip as it lies was cut to; a list of another size counts as evenly scaled. Bits stay when the
/// length and the stretches are right already (within 1e-9 mm). Does nothing without a strip.
void cut_strip(Block& block, const Binding& binding, const std::vector<double>& before);

}  // namespace pinwright
