#pragma once
// Phrases against the words of one clause and what it may borrow from its neighbours.

#include <cstddef>
#include <vector>

#include "knowledge/words/clauses.h"
#include "knowledge/words/lexicon.h"

namespace pinwright::knowledge {

/// Words that a clause may be read with besides its own.
struct Neighbours {
  std::vector<std::size_t> joined;  ///< clauses that only name places: theirs count as its own
  std::vector<std::size_t> lent;    ///< tokens of other clauses; they stay where they are
  bool must_keep_places = true;     ///< with lent words, all places of the clause must be in it too
};

struct Match {
  std::size_t phrase = 0;
  std::size_t items = 0;            ///< how many items were said
  std::vector<std::size_t> tokens;  ///< newly taken, ascending
  std::vector<std::size_t> lent;    ///< used as well: lent, or places that were taken before
};

class Matcher {
 public:
  /// `allowed`: by sign. All three must outlive the matcher.
  Matcher(const Reading& reading, const Lexicon& lexicon, const std::vector<bool>& allowed)
      : reading_(reading), lexicon_(lexicon), allowed_(allowed) {}

  /// The most specific match of the clause, in the order of phrases.h; with it every denial of the
  /// very same words. Each match takes at least one word that is not taken yet. Empty: none.
  std::vector<Match> best(std::size_t clause, const Neighbours& neighbours) const;

 private:
  const Reading& reading_;
  const Lexicon& lexicon_;
  const std::vector<bool>& allowed_;
};

}  // namespace pinwright::knowledge
