#pragma once
// What each operation must leave alone, to the last bit.

#include "engine/alteration/step.h"
#include "own_checks.h"

namespace pinwright {

/// Pieces and edges that the step may not have touched and did. Both are the block as one side sees
/// it. Notches may go to meet their mates; edges that a dart put in or took out are not compared.
void left_alone_faults(const Block& before, const Block& after, const Step& step, Faults& faults);

/// Both as that side sees them which a step for the other side alone must leave as it is: the lines
/// of its own, but for strips that go round both sides and what had to give at a join.
void other_side_faults(const Block& before, const Block& after, Faults& faults);

/// True when the table has a row for the operation.
bool left_alone_knows(std::string_view operation);

}  // namespace pinwright
