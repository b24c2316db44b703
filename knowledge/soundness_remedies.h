#pragma once
// Remedies proved sound: operations, options, amounts, limits.

#include "knowledge/model.h"
#include "knowledge/told_problems.h"

namespace pinwright::knowledge {

/// Of each step: "operation-unknown" and "option-..." as check_step says, "amount-missing",
/// "text-without-amount", the problems of parse_expression, "amount-dimension", "amount-of". Of the
/// remedy: "limits-crossed", "limits-exclude-usual" (what the first step makes of the usual amount
/// lies outside the limits), "beyond-missing", "beyond-without-largest".
void prove_remedy(const Knowledge& k, const Cause& cause, const Remedy& remedy,
                  ToldProblems& problems);

}  // namespace pinwright::knowledge
