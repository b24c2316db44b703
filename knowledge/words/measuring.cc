#include "knowledge/words/measuring.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace pinwright::knowledge {
namespace {

constexpr auto kMeasuring = std::to_array<std::string_view>(
    {"fold",    "folds",   "pleat",    "tuck",      "deep",       "wide",    "much",
     "many",    "upright", "vertical", "crosswise", "horizontal", "lacking", "lacks",
     "missing", "cloth",   "fabric",   "material",  "spare",      "surplus", "away",
     "extra",   "excess",  "pinned",   "pinched",   "gap",        "loose",   "lengthwise"});
constexpr auto kFolds = std::to_array<std::string_view>(
    {"fold", "folds", "pinch", "pinched", "tuck", "pleat", "pinned"});
constexpr std::size_t kShortlyBefore = 5;  // "a fold of about one and a half ..."

template <class Words>
bool one_of(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

bool is_measuring_word(const Reading& reading, std::size_t token) {
  return one_of(kMeasuring, reading.tokens[token].text);
}

bool tells_only_how_much(const Reading& reading, std::size_t c) {
  const Clause& clause = reading.clauses[c];
  bool amount = false;
  for (std::size_t i = clause.first; i < clause.last; ++i) {
    if (!has_content(reading, i)) continue;
    const Word& word = reading.words[i];
    if (word.number) {
      amount = amount || reading.numbers[*word.number].has_unit;
    } else if (word.notion) {
      const Notion::Kind kind = reading.notions[*word.notion].kind;
      if (kind == Notion::Kind::negation || kind == Notion::Kind::gone) return false;
    } else if (!is_measuring_word(reading, i)) {
      return false;
    }
  }
  return amount;
}

bool is_depth_of_fold(const Reading& reading, const SaidNumber& said) {
  if (said.last >= reading.tokens.size() || reading.tokens[said.last].text != "deep") return false;
  const std::size_t from = said.first > kShortlyBefore ? said.first - kShortlyBefore : 0;
  for (std::size_t i = from; i < said.first; ++i)
    if (one_of(kFolds, reading.tokens[i].text)) return true;
  return false;
}

}  // namespace pinwright::knowledge
