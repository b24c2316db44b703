#pragma once
// A finding while it is being read, and the passes that make it.

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "engine/base/result.h"
#include "knowledge/words/clauses.h"
#include "knowledge/words/lexicon.h"

namespace pinwright::knowledge {

struct DraftFinding {
  std::size_t sign = 0;
  bool denied = false;    ///< by a denying phrase
  std::size_t items = 0;  ///< of the phrase that said it
  bool negated = false;
  std::size_t clause = 0;                    ///< where it was said
  std::optional<std::size_t> borrowed_from;  ///< clause that says what happens here too
  std::set<std::size_t> tokens;              ///< its very words
  std::set<std::size_t> lent;                ///< words of others that it was read with
  std::optional<Side> side;
  std::optional<std::size_t> number;
  std::optional<Of> of;
  std::optional<Taken> taken;
  std::string posture;
  double sure = 1.0;       ///< less when hedged or supposed
  bool supposed = false;   ///< by likeness, no phrase says it
  std::string unmeasured;  ///< "two fingers": told, but no length
  bool test = false;       ///< told of a test: "when I pin it ..."

  bool absent() const { return denied || negated; }
};

/// What the passes hand on to each other.
struct Draft {
  const Knowledge& k;
  const Lexicon& lexicon;
  std::vector<bool> allowed;  ///< by sign: its zone is on this kind of block
  Reading reading;
  std::vector<DraftFinding> findings;
  Problems problems;
};

/// Takes the token into the finding's words.
void take(Draft& draft, DraftFinding& finding, std::size_t token);

/// Tokens of `finding` within the clause.
bool has_part(const Draft& draft, const DraftFinding& finding, std::size_t clause);

/// Number of the finding in this clause that stands nearest to the token; nothing without one.
std::optional<std::size_t> nearest_finding(const Draft& draft, std::size_t clause,
                                           std::size_t token);

/// Numbers of the notions, and of the said numbers, that begin in the clause: [first, second).
std::pair<std::size_t, std::size_t> notions_of(const Reading& reading, std::size_t clause);
std::pair<std::size_t, std::size_t> numbers_of(const Reading& reading, std::size_t clause);

/// Pass 1: phrases against clauses, places carried from clause to clause (find_signs.cc).
void find_signs(Draft& draft);

/// Pass 2: negation (negate.cc). A denial that is negated is dropped and its words are free again.
void negate(Draft& draft);

/// Pass 3: sides, postures, amounts with what they count; clauses that only say such things go to
/// the finding before them (attach.cc). Problems: "amount-without-unit", "amount-range".
void attach(Draft& draft);

/// Between the passes 2 and 3: "two fingers" goes to the finding it measures (unmeasured.cc).
void find_unmeasured(Draft& draft);

/// Pass 4: hedges make findings less sure (hedge.cc).
void hedge(Draft& draft);

}  // namespace pinwright::knowledge
