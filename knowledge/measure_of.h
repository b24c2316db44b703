#pragma once
// Which finished measure a step is meant to change.

#include <string>
#include <string_view>

#include "engine/alteration/step.h"
#include "engine/pattern/block.h"

namespace pinwright::knowledge {

/// The measure that this operation with these options is for, id as measures() gives it: closing a
/// wedge at the front neckline is for the front-neckline-length, a spread over the bust for the
/// front-bust-width, lengthening the body for the back-length. Of a one-sided step that
/// side's own ("shoulder-slope-left"). Empty: the block does not measure it (its sides are still
/// alike), or no finished measure counts what the step does by itself (a bust point or a dart is
/// moved, a sleeve is turned, ease is given, a strip gets another ratio, the upper back is
/// lengthened).
std::string measure_of(const Block& block, const Step& step);

/// True when the table has a row for the step: true for every operation of the catalogue that moves
/// a line.
bool knows_measure_of(const Step& step);

/// True when the step changes this measure only because it is counted from a line that the step
/// draws elsewhere, so that its change is no part of what another step was asked for: a neckline
/// drawn lower is longer and makes the centre front shorter, but what gaped on it still does; a
/// body made longer throughout still lacks what the front lacks over the bust. A wish of another
/// step for such a measure comes on top.
bool carries(const Step& step, std::string_view measure);

}  // namespace pinwright::knowledge
