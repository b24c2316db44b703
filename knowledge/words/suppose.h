#pragma once
// What no phrase says, by the sign that comes nearest.

#include "knowledge/words/draft_finding.h"
#include "knowledge/words/resemblance.h"

namespace pinwright::knowledge {

/// After negate(), before attach(). Makes supposed findings (DraftFinding::supposed, sure below 1)
/// where one sign is like the words and no other nearly so; a sign of the same kind does not count
/// as another, and where the words do not tell which kind, the plainer one is taken. In this order:
///   1. a phrase of few words that says much less than its whole clause, to which another sign is
///      much more like, is taken back
///   2. what was tried and what came of it, against the signs of tests
///   3. words that ended in no finding, a clause or two that follow each other
///   4. up to three clauses of a sentence as a whole, whatever phrases took of their words
/// What is called fine is not supposed anything of. At most 256 stretches of a text are looked up.
void suppose(Draft& draft, const Resemblance& resemblance, Shortlists& shortlists);

/// The words of a stretch that may tell something: content that is in no finding yet, and of
/// notions those that signs speak of too (pinch, let out, gone, postures).
std::vector<std::size_t> telling_words(const Draft& draft, std::size_t first, std::size_t last);

/// The same, also those that are in a finding.
std::vector<std::size_t> all_telling_words(const Draft& draft, std::size_t first, std::size_t last);

}  // namespace pinwright::knowledge
