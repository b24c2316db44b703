#pragma once
// What was not understood, and the signs that come nearest to it.

#include <vector>

#include "knowledge/understand.h"
#include "knowledge/words/draft_finding.h"
#include "knowledge/words/resemblance.h"

namespace pinwright::knowledge {

/// Every content word that ended in no finding, in the order of the text: runs within a clause; a
/// clause of which nothing was understood is one item, together with those that and / or tie to it.
std::vector<NotUnderstood> leftovers(const Draft& draft, const Resemblance& resemblance,
                                     Shortlists& shortlists);

}  // namespace pinwright::knowledge
