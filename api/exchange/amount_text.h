#pragma once
#include <string_view>

#include "engine/base/result.h"

namespace pinwright::api {

/// Reads one length with its unit, as a sewing room writes it, into millimetres:
///   "15mm", "2 cm", "2,5 cm", "1.2 m", "3/8 in", "1 1/2 inches", "1-1/2 in", "3/8\"", "½ in",
///   "1½″", "-3 mm". Units: mm, cm, m, in, inch, inches, ", ″ and the words written out; the case
/// does not matter. Inches are of 25.4 mm.
/// Errors, with `place`: "amount-without-unit" (a bare number: 15 what?), "amount-not-readable",
/// "amount-range" (over 10 m).
Result<double> read_amount(std::string_view text, std::string_view place);

}  // namespace pinwright::api
