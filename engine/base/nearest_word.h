#pragma once
// The known word that comes nearest to a mistyped one, for the mend of an error.

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace pinwright {

/// Edit distance (insert, delete, replace; V. Levenshtein, 1966) between two short words.
inline std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
    }
  }
  return row[b.size()];
}

/// The first of `known` at the least distance; empty when `known` is. Words over 64 bytes are cut.
template <class Range>
std::string nearest_word(std::string_view word, const Range& known) {
  std::string best;
  std::size_t best_distance = static_cast<std::size_t>(-1);
  for (const auto& candidate : known) {
    const std::size_t d =
        edit_distance(word.substr(0, 64), std::string_view(candidate).substr(0, 64));
    if (d < best_distance) best = std::string_view(candidate), best_distance = d;
  }
  return best;
}

}  // namespace pinwright
