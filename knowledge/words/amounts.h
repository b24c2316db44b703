#pragma once
// Numbers and amounts as people say them.

#include <string_view>
#include <vector>

#include "knowledge/words/text.h"

namespace pinwright::knowledge {

/// Tokens [first, last) that say a number, with a unit or without.
///   1 1/2 inches, 1-1/2", 1½ in, 3/8", 15mm, 1.5cm, 1,5 cm, two centimetres, half an inch, a
///   quarter inch, three eighths of an inch, an inch and a half, a couple of centimetres, -2 cm,
///   minus 2 cm; 2-3 cm, 2 to 3 cm, between 2 and 3 cm are the middle.
/// "in" before an article or pronoun is the preposition: "gapes 2 in the front" has no unit.
struct SaidNumber {
  std::size_t first = 0;
  std::size_t last = 0;
  bool has_unit = false;
  bool in_words = false;  ///< "two", not "2"
  double value = 0.0;     ///< mm with a unit, else the number itself; negative as said
  double least = 0.0;     ///< of a range, in the same unit; 0 both when it is none
  double most = 0.0;
};

/// Left to right, not overlapping. `text` is what the tokens were cut from. Numbers that are part
/// of a word (B3, 2nd) are left out.
std::vector<SaidNumber> find_numbers(std::string_view text, const std::vector<Token>& tokens);

}  // namespace pinwright::knowledge
