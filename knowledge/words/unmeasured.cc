// Amounts told by a hand: "a finger's width", "two fingers". They are told, but are no length.

#include <algorithm>
#include <set>

#include "knowledge/words/draft_finding.h"

namespace pinwright::knowledge {
namespace {

bool is_hand_measure(const Token& token) {
  static const std::set<std::string_view> stems = {"finger", "fingertip", "thumb",
                                                   "fist",   "palm",      "fingerwidth"};
  return token.kind == Token::Kind::word && stems.contains(token.stem);
}

bool goes_with(const Draft& draft, std::size_t i) {
  static const std::set<std::string_view> words = {
      "a",     "an",    "one",   "two",  "three",   "four",  "half", "couple",
      "about", "maybe", "width", "wide", "breadth", "thick", "fit",  "fits"};
  const Token& token = draft.reading.tokens[i];
  return token.kind == Token::Kind::number || words.contains(token.text);
}

}  // namespace

void find_unmeasured(Draft& draft) {
  for (std::size_t c = 0; c < draft.reading.clauses.size(); ++c) {
    const Clause& clause = draft.reading.clauses[c];
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (!is_hand_measure(draft.reading.tokens[i]) || draft.reading.words[i].taken) continue;
      std::size_t first = i;
      std::size_t last = i;
      while (first > clause.first && goes_with(draft, first - 1)) --first;
      while (last + 1 < clause.last && goes_with(draft, last + 1)) ++last;
      if (first == last) continue;  // "the finger": no amount
      std::optional<std::size_t> f = nearest_finding(draft, c, i);
      for (std::size_t other = 0; !f && other < draft.findings.size(); ++other) {
        if (draft.findings[other].clause + 1 == c) f = other;
      }
      if (!f || draft.k.signs[draft.findings[*f].sign].counts == Counts::none) continue;
      const std::size_t begin = draft.reading.tokens[first].begin;
      draft.findings[*f].unmeasured =
          std::string(draft.reading.text.substr(begin, draft.reading.tokens[last].end - begin));
      for (std::size_t t = first; t <= last; ++t) {
        if (!draft.reading.words[t].taken) take(draft, draft.findings[*f], t);
      }
    }
  }
}

}  // namespace pinwright::knowledge
