#pragma once
// Small makers of a piece's parts, and of refusals.

#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/pattern/piece.h"

namespace pinwright::drafting {

Edge curved(std::string id, EdgeRole role, Curve curve, double allowance_mm);
Edge ruled(std::string id, EdgeRole role, Vec2 from, Vec2 to, double allowance_mm);
/// A fold: straight, no allowance.
Edge folded_at(std::string id, EdgeRole role, Vec2 from, Vec2 to);
/// The edge turned up as a hem.
Edge hemmed(Edge edge);

/// "draft-impossible" about a measurement of the wearer.
Problem impossible(std::string_view measurement, std::string what, std::string mend);
/// "412.5 mm".
std::string mm_text(double mm);

}  // namespace pinwright::drafting
