#pragma once
// A proposal tried on the block before it is shown.

#include "engine/pattern/block.h"
#include "knowledge/advise.h"

namespace pinwright::knowledge {

/// Does the proposal's steps to a copy of the block. Where the block refuses, the step that it
/// stumbles on says so in `limit` (with the mend), and where nothing would move, the first step
/// does
/// ("the pattern has this already"). A step that has said a limit already keeps it. Proposals that
/// move no line or still lack an amount, and blocks without pieces, are left as they are.
void try_out(const Block& block, Proposal& proposal);

}  // namespace pinwright::knowledge
