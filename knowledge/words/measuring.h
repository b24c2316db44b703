#pragma once
// Clauses that tell how much, and nothing else.

#include "knowledge/words/draft_finding.h"

namespace pinwright::knowledge {

/// A word of measuring ("fold", "deep", "too much", "lengthwise") that by itself tells no sight.
bool is_measuring_word(const Reading& reading, std::size_t token);

/// "I can pinch a lengthwise fold 1 cm deep", "in all 2 cm too much": an amount with its unit, and
/// beside it only what the reader understands by itself and words of measuring. A denial is none.
bool tells_only_how_much(const Reading& reading, std::size_t clause);

/// "a fold 1 cm deep": the number is the depth of a fold that is named shortly before it.
bool is_depth_of_fold(const Reading& reading, const SaidNumber& said);

}  // namespace pinwright::knowledge
