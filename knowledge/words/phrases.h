#pragma once
// The small language in which the knowledge says by which words a sign is known.
//
//   <neckline> <gape>                 both must be said, in any order, within one clause
//   (front) <neckline> too wide       a bracketed item may be missing; said, it makes the match
//                                     more specific
//   = stands ... off the neck         begins with '=': in this order; side by side but for noise
//                                     words; '...' lets up to four more words stand between
//
// Sign::phrases tell that the sign is there, Sign::denied_by that it is not (<bust> <fine>); both
// are written in this language.
//
// Items
//   word       matched by its stem (Snowball English): gape = gapes, gaping, gaped. Case, hyphens
//              and British / American spelling do not count (centre, center; armscye, scye =
//              armhole). A hyphenated word is its parts: "stand-off" = stand off. Written in one
//              or in two it is the same: "arm hole" in the text meets armhole; "upperarm" meets
//              a class member upper arm.
//   <class>    any member of the WordClass of that id; a member may be several words, which must
//              then stand side by side (noise words between them do not count).
//   ( ... )    what is inside may be missing, as one: (all round), (<front>).
//   ...        a gap; only means something in a phrase with '='.
//
// How a text is read against phrases
//   * Misspelt words are mended first: a word that neither the knowledge nor an English dictionary
//     has becomes the knowledge's word that is one slip away (two from seven letters on), and "to
//     tight" is too tight (mend_spelling.h). So phrases need no misspellings.
//   * The text is cut into clauses at punctuation and at and, or, nor, but, while, although,
//     though, whereas, however, except, apart from. What is said before an exception does not hold
//     for it. "between A and B" still works: a clause that only names places is
//     joined to its neighbour. A clause that names no place of its own takes the one of the clause
//     before it: in "the neckline gapes and is too low" the second clause is about the neckline.
//     Place words are the words of the zones' ids and names, and the classes whose id is made of
//     such words: call the class of the neckline `neckline`, that of the hem `hem`.
//   * Of overlapping matches the one with most items wins, then the one that covers most words,
//     then the tighter one, then the sign that stands earlier in the knowledge. Denying phrases
//     that match the very same words all count (the bust is fine: not tight and not loose).
//   * Words that mean something to the reader itself need not stand in phrases: amounts and units,
//     by, left / right / both sides, each side / in all / all round, pinch / pinned fold / take out
//     / gap / let out, postures (when I lean forward, with arms raised), negation (not, no, n't,
//     never, without, no longer, is gone), noise (the, is, very, a bit, maybe). They MAY stand in a
//     phrase; there they are taken as that phrase's own words and do nothing else: `<top> not long
//     enough` is present, not absent. A contraction is read as two words: "won't close" = will not
//     close, "doesn't" = does not, "cannot" = can not.
//   * A match of which a word stands after a negation in its clause tells that the sign is absent;
//     two negations cancel. A negated denying phrase ("the bust is not fine") says too little and
//     is reported as not understood.
//   * A place of another clause ("it is too low") serves a match only where its clause says little
//     else: nothing besides for a denying phrase, two words for the others.
//   * Hedges (maybe, I think, a bit, not sure if) make the finding less sure (Finding::sure).
//   * What comes of a pin, a pad, an opened seam ("when I pin it the neck is fine") denies nothing:
//     it was there without. A sign whose name tells of such a test (pinned, lifted, unpicked) is
//     told by it; "made no difference" then denies it, and "the folds go" does not.
//   * What no phrase says is compared with all names, phrases, questions and tellings of the signs
//     (resemblance.h). Where one is like it and no other nearly so, it is supposed: Finding::sure
//     is below 1. A phrase of three words at most that says much less than its clause gives way to
//     a sign that is much more like it (suppose.h). The rest is not understood.
//   * A sentence in another language is not understood as a whole.
//
// Classes with a meaning of their own
//   noise                  more words that carry nothing
//   style-<feature>        words for a feature of the garment (zones.yaml); Understood::style names
//                          it, and phrases may use the words all the same
//   beyond-<what>          words for what is no matter for a pattern: pain, swelling, numbness,
//                          sudden (only where one side is spoken of); Understood::beyond_pattern
//   posture-<what>         words for a posture; Finding::posture becomes <what> with spaces for
//                          hyphens. Known without: standing, sitting, walking, leaning-forward,
//                          arms-forward, arm-raised, arms-down, elbow-bent.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

struct PhraseItem {
  enum class Kind : unsigned char { word, word_class, gap };
  Kind kind = Kind::word;
  std::string text;  ///< the word in lower case, or the id of the class; empty for a gap
  int option = 0;    ///< 0: must be said; else the number (from 1) of the bracket it stands in
};

struct Phrase {
  bool ordered = false;
  std::vector<PhraseItem> items;
};

/// Reads one phrase. Errors (place = the phrase itself): "phrase-syntax" (unclosed or nested
/// brackets, stray marks), "phrase-empty" (nothing that must be said).
Result<Phrase> parse_phrase(std::string_view text);

/// Every phrase (and denying phrase) of every sign against the grammar and the classes: the errors
/// of parse_phrase, "phrase-class-unknown", "phrase-twice" (two signs claim the same words; denying
/// phrases may), and "class-empty". place = "file:line" of the phrase or class, the phrase is
/// quoted in `what`.
Problems check_phrases(const Knowledge& k);

}  // namespace pinwright::knowledge
