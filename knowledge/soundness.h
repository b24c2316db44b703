#pragma once
// The whole knowledge proved sound before anything reasons with it.

#include "engine/base/result.h"
#include "knowledge/expression.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// Everything that is wrong, each with "file:line" as place:
///   "id-missing", "id-twice" (zones, signs, causes, remedies, problems, word classes, within a
///   kind) "kind-unknown", "zone-unknown", "sign-unknown", "cause-unknown", "publication-unknown"
///   "probability-range", "makes-twice" (a cause names the same sign twice)
///   "sign-unreachable" (no cause makes it), "sign-without-words", "cause-without-sign",
///   "cause-without-source", "cause-without-remedy" (for a block kind it may hold in)
///   "problem-of-one-cause" (fewer than two), "rival-without-sign" (a rival that does not make the
///   problem's leading sign)
///   "operation-unknown", "option-..." as check_step says, "amount-missing", "amount-not-wanted",
///   "amount-dimension" (not what the operation takes), "amount-of" (the step's `of` contradicts
///   the expression), "text-without-amount" ({amount} or {fold} in the text of a step that has
///   none), and the problems of parse_expression the problems of check_phrases (words/phrases.h)
Problems prove_sound(const Knowledge& k);

/// What `found` is in the remedies of this cause: the one sort that all amounts told with its signs
/// have, nothing when they differ or none is told.
FoundDimensions found_dimensions(const Knowledge& k, const Cause& cause);

}  // namespace pinwright::knowledge
