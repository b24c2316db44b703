#pragma once
// The whole knowledge proved sound before anything reasons with it.

#include "engine/base/result.h"
#include "knowledge/expression.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// Everything that is wrong, each with "file:line" of the very field as place:
///   "id-missing", "id-twice" (features, zones, signs, causes, remedies, problems, word classes,
///   publications; each sort by itself), "kind-unknown", "feature-unknown", "zone-unknown",
///   "sign-unknown", "cause-unknown", "publication-unknown", "source-missing"
///   "probability-range", "makes-twice" (a cause names the same sign twice)
///   "sign-unreachable" (no cause makes it), "sign-without-words", "kind-of-itself",
///   "kind-of-a-kind", "cause-without-sign", "cause-without-remedy" (for a block kind it may hold
///   in), "prior-never" (a prior_when whose features exclude each other, or that an earlier one
///   always forestalls), "problem-of-one-cause" (fewer than two), "rival-without-sign" (a rival
///   that does not make the problem's leading sign); those of remedies (soundness_remedies.h), of
///   phrases (check_phrases, words/phrases.h), and entries that say the same (alike.h).
Problems prove_sound(const Knowledge& k);

/// What `found` is in the remedies of this cause: the one sort that all amounts told with its signs
/// have, nothing when they differ or none is told.
FoundDimensions found_dimensions(const Knowledge& k, const Cause& cause);

}  // namespace pinwright::knowledge
