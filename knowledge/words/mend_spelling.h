#pragma once
// Misspelt words of the trade, and ordinary ones that the knowledge speaks in.

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "knowledge/words/dictionary.h"
#include "knowledge/words/lexicon.h"
#include "knowledge/words/text.h"

namespace pinwright::knowledge {

/// Edit distance in which two neighbours that changed places count once (optimal string alignment;
/// F. J. Damerau, 1964), but no more than `most` + 1.
std::size_t slip_distance(std::string_view a, std::string_view b, std::size_t most);

class SpellingMender {
 public:
  /// Words of phrases, classes, names and questions, with their common endings.
  SpellingMender(const Knowledge& k, const Stemmer& stemmer,
                 std::shared_ptr<const Dictionary> dictionary);

  /// Tokens that are no word of the knowledge and no English word take the text and stem of the
  /// knowledge's word that is nearest: one slip away, from seven letters on two; of several the one
  /// with the same first letter, then the one that more signs are told with. "to tight" becomes
  /// "too tight". Their place in the text stays. At most 256 words of a text are looked up.
  void mend(std::vector<Token>& tokens, const Stemmer& stemmer) const;

  /// No other word was meant: known to the knowledge, or English.
  bool is_known(const Token& token) const;

 private:
  struct Known {
    std::string word;
    std::size_t uses = 0;
  };
  void learn(std::string_view text, const Stemmer& stemmer);
  std::optional<std::string> nearest(std::string_view word) const;

  std::set<std::string, std::less<>> stems_;
  std::map<std::string, std::size_t, std::less<>> uses_;  ///< full words, how often they stand
  std::vector<std::vector<Known>> by_length_;
  std::shared_ptr<const Dictionary> dictionary_;
};

}  // namespace pinwright::knowledge
