#pragma once
// What the words tell of the garment, and of what no pattern mends.

#include <string>
#include <vector>

#include "knowledge/understand.h"
#include "knowledge/words/draft_finding.h"
#include "knowledge/words/sequences.h"

namespace pinwright::knowledge {

/// Looks for the classes style-<feature> and beyond-<what> (pain, swelling, numbness, sudden).
/// Their words need not be free: "the V neck gapes" tells a sight and a style. Those that are free
/// count as understood afterwards. What is denied ("no collar", "it doesn't hurt") is passed over;
/// a member may hold its own "no" ("no sleeves").
class GarmentWords {
 public:
  GarmentWords(const Knowledge& k, const Stemmer& stemmer);

  /// Ids of features, each once, sorted. Of two that rule each other out the first that is told.
  std::vector<std::string> style(Draft& draft, const Stemmer& stemmer) const;
  /// One note a kind; beyond-sudden only in a sentence that speaks of one side.
  std::vector<ScopeNote> beyond_pattern(Draft& draft, const Stemmer& stemmer) const;

 private:
  Sequences styles_;
  std::vector<std::string> features_;
  Sequences beyond_;
  std::vector<std::string> whats_;
};

}  // namespace pinwright::knowledge
