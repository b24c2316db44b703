#pragma once
// One geometry per size, the same topology in every size.

#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright {

/// Blocks of one design in several sizes, smallest first.
struct SizeRange {
  std::string id;
  std::vector<Block> sizes;
};

/// What differs between two blocks that should be sizes of one design: pieces, edges, segment
/// counts, notches, darts, landmarks, seams, joins, bindings (by id and order). Code
/// "topology-differs". Empty: the same topology.
Problems topology_differences(const Block& a, const Block& b);
/// The same for a whole range, against its first size; also labels used twice ("size-twice").
Problems check(const SizeRange& range);

}  // namespace pinwright
