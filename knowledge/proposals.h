#pragma once
// The remedies of the probable causes, with their amounts worked out and ready for alter().

#include <string>
#include <vector>

#include "engine/pattern/block.h"
#include "knowledge/advise.h"
#include "knowledge/expression.h"

namespace pinwright::knowledge {

/// What the expressions can look up apart from what was told: the block's finished measures and
/// ease, the wearer's measurements (only when the try-on has a wearer), the try-on's fabric or else
/// the block's.
Values values_of(const Block& block, const TryOn& tryon);

/// The remedies of one cause for this block kind, in the knowledge's order. A remedy whose amounts
/// are all told with signs that were not seen is left out as long as another one remains.
/// An amount that was not told is taken as the remedy's usual one and marked `assumed`; one that
/// cannot be known leaves the step without an amount and says what to measure. An amount above the
/// operation's most is set to the most, and the step says so. Half-pattern operations get half
/// amounts. Sides told with different amounts get a step each. The remedy's own limits hold for its
/// first step, before the operation's: below the smallest it is not worth making, above the largest
/// the step says so and Proposal::beyond what is better; the remedies that suit are then offered
/// first.
std::vector<Proposal> proposals_for(const Knowledge& k, const Cause& cause, const Block& block,
                                    const TryOn& tryon, const Values& values);

}  // namespace pinwright::knowledge
