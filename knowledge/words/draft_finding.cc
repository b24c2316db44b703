#include "knowledge/words/draft_finding.h"

#include <algorithm>

namespace pinwright::knowledge {
namespace {

/// `begin`: first token of an entry; the entries ascend.
template <class Entry, class Begin>
std::pair<std::size_t, std::size_t> range_of(const std::vector<Entry>& entries,
                                             const Clause& clause, const Begin& begin) {
  const auto before = [&](const Entry& entry, std::size_t token) { return begin(entry) < token; };
  const auto first = std::lower_bound(entries.begin(), entries.end(), clause.first, before);
  const auto last = std::lower_bound(first, entries.end(), clause.last, before);
  return {static_cast<std::size_t>(first - entries.begin()),
          static_cast<std::size_t>(last - entries.begin())};
}

}  // namespace

std::pair<std::size_t, std::size_t> notions_of(const Reading& reading, std::size_t clause) {
  return range_of(reading.notions, reading.clauses[clause],
                  [](const Notion& notion) { return notion.tokens.front(); });
}

std::pair<std::size_t, std::size_t> numbers_of(const Reading& reading, std::size_t clause) {
  return range_of(reading.numbers, reading.clauses[clause],
                  [](const SaidNumber& said) { return said.first; });
}

void take(Draft& draft, DraftFinding& finding, std::size_t token) {
  finding.tokens.insert(token);
  draft.reading.words[token].taken = true;
}

bool has_part(const Draft& draft, const DraftFinding& finding, std::size_t clause) {
  const Clause& there = draft.reading.clauses[clause];
  const auto first = finding.tokens.lower_bound(there.first);
  return first != finding.tokens.end() && *first < there.last;
}

std::optional<std::size_t> nearest_finding(const Draft& draft, std::size_t clause,
                                           std::size_t token) {
  std::optional<std::size_t> best;
  std::size_t best_distance = 0;
  for (std::size_t f = 0; f < draft.findings.size(); ++f) {
    if (!has_part(draft, draft.findings[f], clause)) continue;
    for (std::size_t own : draft.findings[f].tokens) {
      const std::size_t distance = own < token ? token - own : own - token;
      if (!best || distance < best_distance) best = f, best_distance = distance;
    }
  }
  return best;
}

}  // namespace pinwright::knowledge
