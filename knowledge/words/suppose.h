#pragma once
// What no phrase says, by the sign that comes nearest.

#include "knowledge/words/draft_finding.h"
#include "knowledge/words/resemblance.h"

namespace pinwright::knowledge {

/// After negate(), before attach(). Stretches of words that ended in no finding - a clause, or two
/// that follow each other - become a supposed finding (DraftFinding::supposed, sure below 1) when
/// one sign is like them and no other nearly so; a sign of the same kind does not count as another,
/// and where the words do not tell which kind, the plainer one is taken. What is called fine is not
/// supposed anything of. At most 256 stretches of a text are looked up.
void suppose(Draft& draft, const Resemblance& resemblance);

/// The words of a stretch that may tell something: content that is in no finding yet, and of
/// notions those that signs speak of too (pinch, let out, gone, postures).
std::vector<std::size_t> telling_words(const Draft& draft, std::size_t first, std::size_t last);

}  // namespace pinwright::knowledge
