#pragma once
// A text as tokens: words, numbers and marks, each with its place in the text.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"

namespace pinwright::knowledge {

struct Token {
  enum class Kind : unsigned char { word, number, mark };
  Kind kind = Kind::word;
  std::size_t begin = 0;  ///< bytes of the text; the two halves of a contraction share theirs
  std::size_t end = 0;
  bool glued = false;     ///< no space before it
  std::string text;       ///< words: lower case, one spelling (spelling.h); marks: the mark
  std::string stem;       ///< words only
  double value = 0.0;     ///< numbers only
  bool fraction = false;  ///< a number below 1 that was one sign: a half, three eighths
};

/// "words-empty" (no letter or digit), "words-too-long" (over 64 KiB), "words-not-text" (invalid
/// UTF-8, or control characters other than tab and line ends; place = byte offset).
Problems check_text(std::string_view text);

/// REQUIRES: check_text(text) is empty. Linear in the text.
/// Hyphens inside a word part it ("stand-off" is two words); quotation marks are dropped unless
/// they follow a digit (inches); contractions are two words; possessive 's is dropped; dates, times
/// and percentages are words, not numbers. Line ends are the mark "\n".
std::vector<Token> tokens(std::string_view text);

}  // namespace pinwright::knowledge
