#pragma once
// What the reader itself understands: negation, sides, what an amount counts, how it was taken,
// postures, hedges.

#include <string>
#include <vector>

#include "engine/pattern/tryon.h"
#include "knowledge/model.h"
#include "knowledge/words/sequences.h"

namespace pinwright::knowledge {

struct Notion {
  enum class Kind : unsigned char {
    negation,
    gone,
    side,
    of,
    side_and_half,
    taken,
    posture,
    no_effect,  ///< of a test: made no difference
    hedge,      ///< maybe, I think, a bit: what is said is less sure
    noise
  };
  Kind kind = Kind::noise;
  Side side = Side::both;
  Of of = Of::whole;
  Taken taken = Taken::unsaid;
  double sure = 1.0;  ///< of a hedge
  std::string posture;
  std::string exact;                ///< not its stem but this very form is meant; may be empty
  std::vector<std::size_t> tokens;  ///< where it was found
};

/// The table of notions; classes `noise` and `posture-...` of the knowledge are added to it.
class Notions {
 public:
  Notions(const Knowledge& k, const Stemmer& stemmer);

  /// Left to right, longest first, not overlapping.
  std::vector<Notion> find(const std::vector<Token>& tokens, const Stemmer& stemmer) const;

 private:
  void add(std::string_view words, Notion notion, const Stemmer& stemmer);

  std::vector<Notion> kinds_;
  Sequences sequences_;
};

}  // namespace pinwright::knowledge
