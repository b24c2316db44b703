#pragma once
// What people tell of a cause itself, not of a sight: "I have square shoulders", "the band was cut
// on the wrong grain".

#include <string>
#include <string_view>

#include "knowledge/model.h"

namespace pinwright::knowledge {

/// Such a telling weighs, but does not settle: people are often right about their own body and
/// their own sewing, and sometimes not. Both figures are judged from memory.
inline constexpr double kToldStrength = 0.6;  ///< told, when the cause holds
inline constexpr double kToldLeak = 0.01;     ///< told, when it does not

/// "said-" + the id of the cause.
std::string told_sign_id(const std::string& cause);
bool is_told_sign(std::string_view sign);

/// Adds to the knowledge, for every cause with told_by, the sign said-<id> in zone `top` with these
/// phrases, never asked for, and to the cause that it makes the sign. A sign of that id that is
/// there already stays as it is. Tellings about such a cause become tellings of its sign.
void add_told_signs(Knowledge& k);

}  // namespace pinwright::knowledge
