#pragma once
// Which numbers are amounts, and which amounts are refused.

#include <string>

#include "engine/pattern/tryon.h"
#include "knowledge/words/draft_finding.h"

namespace pinwright::knowledge {

/// No pinch, gap or lack on a garment comes near it.
inline constexpr double kMostAmountMm = 300.0;

/// Above 0 and at most kMostAmountMm; false for NaN and infinities.
bool amount_in_range(double mm);

/// A number without unit in this clause that tells how much the finding is: after "by", after the
/// word that happens ("gapes 2"), after a pinch, or before "too"; and nothing after it that it
/// counts ("2 fingers", "30 wales").
bool is_unitless_amount(const Draft& draft, std::size_t finding, std::size_t clause,
                        const SaidNumber& said);

/// The clause compares measures ("sleeve 58, my arm measured 62"): its numbers are no amounts of a
/// sight, and none of them is refused.
bool compares_measures(const Draft& draft, std::size_t clause);

/// A number that would be refused as an amount, but is likely a measure: it is out of range, or has
/// no unit, and the finding is only supposed or the clause speaks of measuring.
bool is_measure(const Draft& draft, std::size_t finding, std::size_t clause,
                const SaidNumber& said);

/// "amount-without-unit"; place = the words of the clause from the finding to the number.
void refuse_unitless(Draft& draft, const DraftFinding& finding, const SaidNumber& said);

/// "amount-range" when it is out of it.
void refuse_out_of_range(Draft& draft, const DraftFinding& finding, const SaidNumber& said);

/// "amount-range" for a pinch, fold or gap out of range, or a negative amount, in a clause that is
/// not understood otherwise: the slip is likely there.
void refuse_wild_pinches(Draft& draft, std::size_t clause);

}  // namespace pinwright::knowledge
