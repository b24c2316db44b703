#pragma once
// Wrong blocks: what a block looks like that was drafted or drawn for another body. None of this
// goes through the operations that are to cure it.

#include <random>
#include <string>
#include <vector>

#include "engine/pattern/block.h"

namespace pinwright {

struct WrongBlock {
  Block block;
  std::vector<std::string> faults;  ///< in words, with amounts
};

/// 1 to 4 faults at once, by the seed: measurements the block was drafted to (engine/draft) and
/// lines drawn elsewhere (control points moved by the test, sewn lengths re-solved by
/// constraint/solve). Nothing when the faults contradict each other and nothing can be drawn.
std::optional<WrongBlock> wrong_block(const Block& right, std::mt19937& random, int faults);

}  // namespace pinwright
