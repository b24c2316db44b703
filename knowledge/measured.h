#pragma once
// Garment-minus-body measures as soft evidence for signs.
//
//   sureness                     .-------- surest (0.9)
//                             .-'
//                          .-'
//   0  ------------------'            a lack or surplus up to `from` says nothing: hands, tapes and
//                      from    sure   cloth differ by as much; nor does a measure that is missing
//
// The sureness is that of stated() (engine/diagnosis/likelihood.h): 0.9 moves the odds of the sign
// by 19. Of several entries for one sign the surest counts, once: they are read off one garment.

#include <string>
#include <vector>

#include "engine/diagnosis/likelihood.h"
#include "engine/pattern/block.h"
#include "engine/pattern/tryon.h"
#include "knowledge/expression.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

struct MeasuredFound {
  const Measured* entry = nullptr;  ///< of the knowledge, which must outlive it
  FoundAmount amount;               ///< as what the amount counts says: whole, half, or a length
  bool of_girth = false;            ///< the amount goes round the body: whole or half
  double sure = 0.0;                ///< above 0, at most the entry's surest
  std::string text;                 ///< in plain words, with the amount
  Likelihood likelihood() const { return stated(Seen::present, sure); }
};

/// What the block and the body of `values` say, one a sign, in the knowledge's order. A block of
/// another kind, a measure that is missing, an amount up to `from`: nothing. Deterministic.
std::vector<MeasuredFound> measured_on(const Knowledge& k, const std::string& kind,
                                       const Values& values);

/// How sure an amount makes its sign: 0 up to from, rising in a straight line to surest at sure.
double sureness(double amount, double from, double sure, double surest);

/// The measured ones as findings that were seen, for the amounts of remedies; a sign that takes no
/// amount, or counts another sort of it, is without.
std::vector<Finding> as_findings(const Knowledge& k, const std::vector<MeasuredFound>& measured);

/// Whether the findings tell of this sign, of its plainer one or of a kind of it, either way: what
/// is told in words goes before what was measured.
bool is_told(const Knowledge& k, const std::string& sign, const std::vector<Finding>& findings);

}  // namespace pinwright::knowledge
