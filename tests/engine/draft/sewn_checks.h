#pragma once
// Walks a drafted block with nothing but geometry, so that the drafts are not judged by themselves.

#include <string>
#include <vector>

#include "engine/draft/draft.h"
#include "engine/pattern/block.h"

namespace pinwright::testing {

/// Everything wrong with a block, one sentence each; empty when it can be sewn.
/// Seams by section within 0.01 mm, joins within 0.1 degree, rings closed bit for bit,
/// counter-clockwise and not crossing, straight edges at thirds, dart legs equal and aimed at their
/// landmark, notches on their edges, references resolved, folds on x = 0, landmarks of corners on
/// their corners, lengthening lines from fold to side, binding as long as its ratio says.
std::vector<std::string> faults(const Block& block);

/// Body + ease against the measured garment, within 0.5 mm, for all ease that the block states.
std::vector<std::string> measure_faults(const Block& block);

std::string joined(const std::vector<std::string>& lines);

/// Deckhand 3 and purser 1 of the sewing room: invented wearers in its two usual cloths.
DraftInput deckhand();
DraftInput purser();

}  // namespace pinwright::testing
