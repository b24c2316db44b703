#pragma once
// Short runs of words that are looked for in a text: members of classes, notions, single words.

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "knowledge/words/spelling.h"
#include "knowledge/words/text.h"

namespace pinwright::knowledge {

/// Where a run was found.
struct Run {
  std::size_t id = 0;
  std::vector<std::size_t> tokens;  ///< ascending; skipped noise words are not among them
};

class Sequences {
 public:
  /// Noise words of `words` are dropped unless nothing else is left or `keep_noise`. Hyphens part
  /// words. A run of several content words is also known written in one.
  void add(std::string_view words, std::size_t id, const Stemmer& stemmer, bool keep_noise = false);

  /// All runs that begin at token `first` and end before `last`; noise words between are skipped,
  /// and `both`, `left`, `right`, `one` with them when `skip_sides`. Two tokens that together make
  /// one known word count as that word.
  std::vector<Run> at(const std::vector<Token>& tokens, std::size_t first, std::size_t last,
                      const Stemmer& stemmer, bool skip_sides = false) const;

 private:
  struct Entry {
    std::size_t id = 0;
    std::vector<std::string> rest;  ///< stems after the first
  };
  void find(const std::string& stem, std::vector<std::size_t> begun, std::size_t last,
            const std::vector<Token>& tokens, bool skip_sides, std::vector<Run>& found) const;

  std::unordered_map<std::string, std::vector<Entry>> entries_;  ///< only looked up in
};

}  // namespace pinwright::knowledge
