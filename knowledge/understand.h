#pragma once
// From words to findings.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

struct NotUnderstood {
  std::string words;                 ///< the very words
  std::size_t at = 0;                ///< byte offset in the text
  std::vector<std::string> nearest;  ///< ids of the signs that come nearest, at most three
};

/// Words that tell of something a pattern cannot mend: pain, swelling, numbness, a sudden change of
/// one side.
struct ScopeNote {
  std::string words;
  std::size_t at = 0;  ///< byte offset in the text
  std::string note;    ///< a sentence to be said, with respect
};

/// What the words leave open about a finding, to be asked of the one who told it.
struct AskBack {
  struct Answer {
    std::string text;  ///< in plain words: "folded double, so that 5 cm of cloth were taken up"
    Finding finding;   ///< the finding, read that way
  };
  std::size_t finding = 0;  ///< index in Understood::findings
  std::string question;
  std::vector<Answer> answers;  ///< at least two
};

/// Two findings of one sign of which one says that it is so and the other that it is not, with
/// nothing (side, posture) between them that tells when.
struct Contradiction {
  std::size_t present = 0;  ///< index in Understood::findings
  std::size_t absent = 0;
  std::string what;  ///< a sentence with the words of both
};

struct Understood {
  std::vector<Finding> findings;
  std::vector<NotUnderstood> not_understood;
  std::vector<std::string> style;  ///< ids of features of the garment, as told, each once, sorted
  std::vector<ScopeNote> beyond_pattern;
  std::vector<AskBack> ask_back;
  std::vector<Contradiction> contradictions;
};

/// Reads a try-on as told: word forms, synonyms, misspelt words, amounts with units, left / right /
/// both, each side or in all, negation ("does not gape", "no longer"), hedges, tests. What no
/// phrase says is supposed from words like its own where one sign is clearly nearest; such
/// findings, and hedged ones, have Finding::sure below 1. Nothing else is guessed. Every content
/// word ends either in a finding's `words` or in not_understood. `block_kind` narrows zones; may be
/// empty. What an amount counts when the words do not say it: one side where one side is named,
/// else Sign::default_of; a distance is always Of::whole, and Taken::distance unless told
/// otherwise. A pinch "in all" is cloth. An amount of a sign that takes none is reported as not
/// understood, as are the numbers of a clause that compares measures ("sleeve 58, my arm 62").
/// Compiles the phrases on each call; words/listener.h keeps them. Errors: "words-empty",
/// "words-too-long" (over 64 KiB), "words-not-text" (invalid UTF-8, control characters),
/// "amount-without-unit", "amount-range" (0, negative, or over 300 mm: the place is the words
/// themselves).
Result<Understood> understand(const Knowledge& k, std::string_view text,
                              std::string_view block_kind);

/// The same checks for findings that were picked from a list: "sign-unknown" (nearest offered),
/// "zone-unknown", "zone-of-another-sign", "amount-range", "amount-not-counted" (the sign takes no
/// amount). place = prefix + "/0/sign".
Problems check_findings(const Knowledge& k, const std::vector<Finding>& findings,
                        std::string_view prefix);

}  // namespace pinwright::knowledge
