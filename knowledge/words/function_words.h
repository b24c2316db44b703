#pragma once
// Words that carry no finding by themselves.

#include <string_view>

namespace pinwright::knowledge {

enum class Load : unsigned char {
  content,  ///< must end in a finding or be reported
  light,    ///< particles, hedges, verbs of seeming: count where a phrase names them, else nothing
  noise,    ///< articles, pronouns, auxiliaries: skipped everywhere, in phrases too
};

/// `word` in lower case and one spelling.
Load load_of(std::string_view word);

/// it, they, this, which, ...: a clause that begins so goes on about the place named before.
bool is_pronoun(std::string_view word);

/// A small word that is German, French, Spanish, Italian or Dutch and not English ("der", "le").
bool is_foreign(std::string_view word);
/// A small word that is English and not one of those languages ("the", "with").
bool is_plainly_english(std::string_view word);

/// not, no, never, without, ...: turns what is said into its opposite.
bool is_negation(std::string_view word);

/// Stem of what is done to a garment to see what comes of it: pin, lift, unpick, let (out), pad.
bool is_test_stem(std::string_view stem);

}  // namespace pinwright::knowledge
