#pragma once
#include <optional>
#include <string_view>

namespace pinwright {

/// Of the wearer, not of the looker-on.
enum class Side { both, left, right };
std::string_view to_text(Side side);
std::optional<Side> side(std::string_view text);

}  // namespace pinwright
