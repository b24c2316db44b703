#pragma once
// What a body asks of a block, and which operations could give it.

#include "engine/pattern/wearer.h"
#include "engine/sizing/sizing.h"

namespace pinwright {

/// Body + ease for every measure that names a body measurement of which both the body's value and
/// the block's ease are known (as prove() does), where the block is off by more than `off_by` mm.
/// In the order of measures(); asked_by "body and ease". The tolerance of each is `tolerance`.
std::vector<Target> targets_of(const Block& block, const Measurements& body, double off_by = 0.5,
                               double tolerance = 1.0);

/// Operations of the catalogue that meet the targets together without words being said, chosen so:
/// every operation with every option is done by 1 mm on the block, which gives its effect on all
/// measures; then one after the other that operation is added whose help, sized jointly with those
/// chosen before, lessens most what is left (forward selection; the measures that are no target are
/// held as size_jointly holds them, but more firmly, so that a side effect counts against a cure);
/// until every target is within a quarter of its tolerance, or as near as it is known, and no other
/// measure is off by more than a quarter of a millimetre, or no further operation helps. What later
/// proves unnecessary is dropped again. The choice is sized on the block itself; where that falls
/// short of what the effects of 1 mm promised, it is made anew with the effects and bounds seen,
/// and the best choice stands. Each cure is asked by the target that it serves most. At most
/// kMostCures; in the catalogue's order. Empty when nothing of the catalogue helps. Unknown
/// measures and targets that are no numbers are passed over: size_jointly names them.
inline constexpr std::size_t kMostCures = 18;
std::vector<Cure> cures_for(const Block& block, const std::vector<Target>& targets);

}  // namespace pinwright
