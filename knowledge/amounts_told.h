#pragma once
// The amounts told at the try-on, as the remedies of one cause ask for them.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "knowledge/model.h"

namespace pinwright::knowledge {

/// What was told for one side (or for both).
struct ToldSide {
  Side side = Side::both;
  std::map<std::string, FoundAmount> of_sign;
  std::optional<FoundAmount> any;  ///< of the leading sign of a problem, else of the strongest
};

/// At least one entry. One for `both` or for the one side that was told; two, left then right, when
/// the sides were told different amounts: each side is then altered by its own. Only present
/// findings of signs that the cause makes count; an amount told for both sides stands on each.
std::vector<ToldSide> amounts_told(const Knowledge& k, const Cause& cause,
                                   const std::vector<Finding>& findings);

}  // namespace pinwright::knowledge
