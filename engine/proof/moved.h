#pragma once
#include "engine/proof/proof.h"

namespace pinwright {

/// Every edge of `after` against the edge of the same name in `before`. An edge that `before` lacks
/// counts as moved by its whole length.
std::vector<Moved> moved_edges(const Block& before, const Block& after);

}  // namespace pinwright
