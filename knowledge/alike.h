#pragma once
// Entries that say the same, and what is sound but worth a second look.

#include "engine/base/result.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// Two entries that say the same, told at the later one, with the line of the other:
///   "signs-alike"     the same words for a name (case and small words do not count, their order
///   does); the
///                     same phrase is told by check_phrases ("phrase-twice")
///   "causes-alike"    the same words for name or `what`, or the very same signs with the same
///                     strengths: nothing could ever tell the two apart
///   "remedies-alike"  of one cause and block kind, with the same operations, options and amounts
///   "problems-alike"  the same leading sign and the same causes
Problems alike(const Knowledge& k);

/// Nothing that keeps the knowledge from use:
///   "nearly-alike"        names of two signs of a zone or of two causes that differ in hardly a
///                         word; two causes that make the same signs, only not as strongly
///   "cause-in-no-problem" no problem names it, so that no reader finds it beside its rivals
///   "sign-never-asked"    it has no `ask`: only found when somebody tells it unasked
///   "remedy-never-used"   only for block kinds on which its cause cannot hold
Problems remarks(const Knowledge& k);

}  // namespace pinwright::knowledge
