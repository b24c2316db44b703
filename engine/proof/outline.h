#pragma once
#include <string_view>

#include "engine/base/result.h"
#include "engine/pattern/piece.h"

namespace pinwright {

/// What is wrong with one piece by itself; `place` is the pointer of the piece ("/pieces/0").
/// Codes: "not-finite", "curve-points" (not 3 n + 1), "edge-missing", "edge-too-short",
/// "outline-open", "outline-clockwise", "outline-crosses", "edge-not-straight", "edge-kinked" (an
/// inner joint of a curve that bends over a degree), "dart-legs" (not consecutive, unequal),
/// "notch-off-edge", "fold-edge" (not on x = 0, or an edge beyond it), "centre-line", "allowance-range", "grainline-missing",
/// "id-twice".
Problems outline_problems(const Piece& piece, std::string_view place);

}  // namespace pinwright
