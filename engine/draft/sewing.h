#pragma once
// Seams and joins by short names, as both drafts write them.

#include <string>
#include <string_view>
#include <vector>

#include "engine/draft/ease.h"
#include "engine/pattern/block.h"

namespace pinwright::drafting {

/// A block without pieces from what was asked. Ease across front and back is left out: the shoulder
/// may not allow what was wanted, and note_ease_as_drawn writes what came of it.
Block begin_block(const DraftInput& input, std::string_view kind, std::string_view name,
                  const EaseMap& ease);

/// "front" and "side-lower" -> the part walked forward; `reversed` the other way.
RunPart part(std::string piece, std::string edge);
RunPart reversed_part(std::string piece, std::string edge);
/// A seam in one section.
Seam plain_seam(std::string id, std::string name, std::vector<RunPart> a, std::vector<RunPart> b,
                double ease_mm = 0.0);
/// Corners whose angles sum to 180 degrees.
Join running_on(std::string id, std::string name, std::vector<CornerRef> corners);
/// A right angle at a fold.
Join square_at_fold(std::string id, std::string name, CornerRef corner);

/// The seams and joins of a set-in sleeve: armhole-front, armhole-back, underarm; cap and hem.
void add_sleeve_seams(Block& block, double front_ease_mm, double back_ease_mm);
/// The joins alone, which the sleeve's own outline has to keep.
void add_sleeve_joins(Block& block);

/// For every measure that is compared with the body and has no intended ease yet, the ease that it
/// has as drawn.
void note_ease_as_drawn(Block& block);

}  // namespace pinwright::drafting
