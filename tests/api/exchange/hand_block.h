#pragma once
// A small sound block made by hand: front with a bust dart and back on the fold, a neck binding.

#include "engine/pattern/block.h"

namespace pinwright::testing {

Block hand_block();

}  // namespace pinwright::testing
