#pragma once
// A text cut into clauses, with everything in it that the reader understands by itself.

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "knowledge/words/amounts.h"
#include "knowledge/words/function_words.h"
#include "knowledge/words/lexicon.h"
#include "knowledge/words/mend_spelling.h"
#include "knowledge/words/notions.h"
#include "knowledge/words/text.h"

namespace pinwright::knowledge {

/// What stands before a clause.
enum class Joint : unsigned char {
  stop,   ///< a sentence ends
  comma,  ///< comma, bracket, dash, colon
  with,   ///< and, &, or, nor
  but,    ///< but, while, although, though, whereas, however, yet, except, apart from
};

struct Clause {
  std::size_t first = 0;  ///< tokens [first, last)
  std::size_t last = 0;
  Joint joint = Joint::stop;
  bool alternative = false;  ///< or, nor: a negation carries over
  bool excepted = false;     ///< after except, apart from: what was said before does not hold here
  bool test = false;         ///< tells what comes of a pin, a pad, a seam let out: "when I pin it"
  bool foreign = false;      ///< of a sentence in another language: nothing is read in it
  bool tried = false;        ///< tells of something done to it, a test or not: "I let go the seam"
  std::size_t sentence = 0;
  std::vector<Run> runs;    ///< every term found in it, ids of the lexicon
  bool has_place = false;   ///< some token is PlaceWord::place
  bool only_place = false;  ///< places, and no other content
};

/// One to one with the tokens.
struct Word {
  Load load = Load::content;
  PlaceWord place = PlaceWord::none;
  std::optional<std::size_t> notion;
  std::optional<std::size_t> number;  ///< a number with a unit, or one that is bare
  bool separator = false;
  bool taken = false;      ///< ends in a finding
  bool doing = false;      ///< what was done for a test: "PINCHING at the sides"
  bool measuring = false;  ///< "PINCH an inch": how much is too much, never a tightness
  bool filler = false;     ///< "right" of "right in the middle": says nothing by itself
};

struct Reading {
  std::string_view text;
  std::vector<Token> tokens;
  std::vector<Word> words;
  std::vector<Notion> notions;
  std::vector<SaidNumber> numbers;
  std::vector<Clause> clauses;
};

/// REQUIRES: check_text(text) is empty. A clause has at most 64 tokens; longer ones are cut.
Reading cut_clauses(std::string_view text, const Lexicon& lexicon, const Notions& notions,
                    const SpellingMender& spelling, const Stemmer& stemmer);

/// The token must end in a finding or be reported.
bool has_content(const Reading& reading, std::size_t token);

}  // namespace pinwright::knowledge
