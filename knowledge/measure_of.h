#pragma once
// Which finished measures a step is meant to change.

#include <string>
#include <vector>

#include "engine/alteration/step.h"
#include "engine/pattern/block.h"

namespace pinwright::knowledge {

/// The measures that this operation with these options is for, ids as measures() gives them, those
/// that the block has, the main one first: closing a wedge at the front neckline is for the
/// front-neckline-length, a spread over the bust for the front-bust-width, lengthening the body for
/// front-length and back-length. Of a one-sided step on a block that measures its sides apart, that
/// side's. Empty: no finished measure counts what the step does (a bust point or a dart is moved, a
/// sleeve is turned, a strip has another ratio on a block without strips).
std::vector<std::string> measures_of(const Block& block, const Step& step);

}  // namespace pinwright::knowledge
