#include "knowledge/words/amount_rules.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string_view>

namespace pinwright::knowledge {
namespace {

constexpr double kLeastMeasured = 12.0;  ///< smaller bare numbers are amounts, not measures

/// The very words of the text from one token to another.
std::string quote(const Draft& draft, std::size_t first, std::size_t last) {
  const std::size_t begin = draft.reading.tokens[first].begin;
  const std::size_t end = draft.reading.tokens[last].end;
  return "\"" + std::string(draft.reading.text.substr(begin, end - begin)) + "\"";
}

/// The words of the number and of what the finding has in the same clause.
std::string quote(const Draft& draft, const DraftFinding& finding, const SaidNumber& said) {
  std::size_t first = said.first;
  std::size_t last = said.last - 1;
  for (const Clause& clause : draft.reading.clauses) {
    if (said.first < clause.first || said.first >= clause.last) continue;
    for (std::size_t i : finding.tokens) {
      if (i < clause.first || i >= clause.last) continue;
      first = std::min(first, i);
      last = std::max(last, i);
    }
  }
  return quote(draft, first, last);
}

Problem out_of_range(std::string place, double mm) {
  return {"amount-range", std::move(place),
          mm > 0.0 ? "An amount over 300 mm is no fault of fit." : "The amount is not above 0.",
          mm > 0.0 ? "Check number and unit; amounts go up to 300 mm (12 in)."
                   : "Tell how much too large or too small in words, and the amount without sign."};
}

bool is_hedge(std::string_view word) {
  for (const std::string_view hedge : {"about", "around", "roughly", "approx", "approximately",
                                       "nearly", "almost", "maybe", "perhaps", "good", "a"}) {
    if (word == hedge) return true;
  }
  return false;
}

/// The word before the number shows that it is an amount.
bool led_in(const Draft& draft, const DraftFinding& finding, std::size_t first, std::size_t at,
            bool in_words) {
  const Reading& reading = draft.reading;
  while (at > first && is_hedge(reading.tokens[at - 1].text)) --at;
  if (at == first) return false;
  const std::size_t before = at - 1;
  if (reading.tokens[before].text == "by") return true;
  const Word& word = reading.words[before];
  if (word.notion && reading.notions[*word.notion].kind == Notion::Kind::taken) return true;
  return !in_words && finding.tokens.contains(before) && word.place == PlaceWord::none;
}

/// What stands after the number is nothing that it counts.
bool led_out(const Draft& draft, const DraftFinding& finding, std::size_t last, std::size_t at) {
  if (at == last) return true;
  const Word& word = draft.reading.words[at];
  const std::string& text = draft.reading.tokens[at].text;
  if (draft.reading.tokens[at].kind == Token::Kind::mark) return text != "#" && text != "*";
  if (word.load != Load::content || word.notion) return true;
  return text == "too" || (finding.tokens.contains(at) && word.place != PlaceWord::none);
}

}  // namespace

bool amount_in_range(double mm) { return std::isfinite(mm) && mm > 0.0 && mm <= kMostAmountMm; }

bool speaks_of_measuring(const Draft& draft, std::size_t clause) {
  static const std::set<std::string_view> stems = {
      "measur", "tape", "pattern", "paper",     "draft", "chart", "size", "envelop",
      "girth",  "say",  "share",   "circumfer", "year",  "kilo",  "age"};
  const Clause& there = draft.reading.clauses[clause];
  for (std::size_t i = there.first; i < there.last; ++i) {
    if (stems.contains(draft.reading.tokens[i].stem)) return true;
  }
  return false;
}

bool compares_measures(const Draft& draft, std::size_t clause) {
  const Clause& there = draft.reading.clauses[clause];
  std::size_t first = there.first;
  std::size_t last = there.last;
  if (clause > 0 && draft.reading.clauses[clause - 1].sentence == there.sentence) {
    first = draft.reading.clauses[clause - 1].first;
  }
  if (clause + 1 < draft.reading.clauses.size() &&
      draft.reading.clauses[clause + 1].sentence == there.sentence) {
    last = draft.reading.clauses[clause + 1].last;
  }
  std::size_t numbers = 0;
  for (const SaidNumber& said : draft.reading.numbers) {
    const bool near = said.first >= first && said.first < last;
    if (near && !said.has_unit && said.value > kLeastMeasured) ++numbers;
  }
  return numbers >= 2 || (numbers > 0 && speaks_of_measuring(draft, clause));
}

bool is_measure(const Draft& draft, std::size_t finding, std::size_t clause,
                const SaidNumber& said) {
  if (said.has_unit && (amount_in_range(said.value) || said.value <= 0.0)) return false;
  return draft.findings[finding].supposed || speaks_of_measuring(draft, clause);
}

bool is_unitless_amount(const Draft& draft, std::size_t finding, std::size_t clause,
                        const SaidNumber& said) {
  const Clause& there = draft.reading.clauses[clause];
  const DraftFinding& its = draft.findings[finding];
  if (said.has_unit || !has_content(draft.reading, said.first)) return false;
  if (compares_measures(draft, clause)) return false;
  if (!led_out(draft, its, there.last, said.last)) return false;
  const bool before_too =
      said.last < there.last && draft.reading.tokens[said.last].text == "too" && !said.in_words;
  return before_too || led_in(draft, its, there.first, said.first, said.in_words);
}

void refuse_unitless(Draft& draft, const DraftFinding& finding, const SaidNumber& said) {
  draft.problems.push_back({"amount-without-unit", quote(draft, finding, said),
                            "The amount has no unit.",
                            "Write the unit, for instance 2 cm or 3/4 in."});
}

void refuse_out_of_range(Draft& draft, const DraftFinding& finding, const SaidNumber& said) {
  if (amount_in_range(said.value)) return;
  draft.problems.push_back(out_of_range(quote(draft, finding, said), said.value));
}

void refuse_wild_pinches(Draft& draft, std::size_t clause) {
  const Reading& reading = draft.reading;
  const auto [first_notion, last_notion] = notions_of(reading, clause);
  bool pinched = false;
  for (std::size_t n = first_notion; n < last_notion; ++n) {
    pinched = pinched || reading.notions[n].kind == Notion::Kind::taken;
  }
  const auto [first, last] = numbers_of(reading, clause);
  for (std::size_t n = first; n < last; ++n) {
    const SaidNumber& said = reading.numbers[n];
    if (!said.has_unit || amount_in_range(said.value)) continue;
    if (!pinched && said.value > 0.0) continue;
    draft.problems.push_back(out_of_range(quote(draft, said.first, said.last - 1), said.value));
  }
}

}  // namespace pinwright::knowledge
