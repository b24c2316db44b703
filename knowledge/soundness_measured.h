#pragma once
// Measured evidence proved sound.

#include "knowledge/model.h"
#include "knowledge/told_problems.h"

namespace pinwright::knowledge {

/// "sign-unknown"; the problems of parse_expression, for `amount`, `from` and `sure`;
/// "measured-dimension": the amount is no length, the two limits are not of its sort, the limits
/// look at garment or body, or the amount counts another thing than the sign (a whole where the
/// sign counts a distance); "limits-crossed": `from` is not below `sure`, or is less than nothing;
/// "text-without-amount": the text does not say the amount.
void prove_measured(const Knowledge& k, const Measured& measured, ToldProblems& problems);

}  // namespace pinwright::knowledge
