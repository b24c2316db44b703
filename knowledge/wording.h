#pragma once
// Amounts, signs and reasons in words.

#include <string>
#include <vector>

#include "knowledge/model.h"

namespace pinwright::knowledge {

/// "12.7 mm (1/2 in)": millimetres to one decimal, inches to the nearest 1/16. The sign is left
/// out: the sentence around it says which way.
std::string said_length(double mm);
/// "0.9", at most three decimals.
std::string said_ratio(double ratio);
/// "93 %".
std::string said_probability(double p);
/// The text with its first letter small, unless the first word is written in capitals.
std::string small_first(std::string text);
/// "a, b and c" with `last` = " and ".
std::string listed(const std::vector<std::string>& all, const std::string& last);
/// A finding as a reason: "front neckline stands off the chest - 25.4 mm (1 in) on the whole
/// garment", or "not found: ..." when it is absent.
std::string said_finding(const Sign& sign, const Finding& finding);
/// Puts the amount into a remedy's sentence: {amount}, and {fold} for half of it.
std::string filled(std::string text, const std::string& amount, const std::string& fold);

}  // namespace pinwright::knowledge
