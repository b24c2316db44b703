#pragma once
#include "engine/proof/proof.h"

namespace pinwright {

/// Every edge of `after` against the edge of the same name in `before`. An edge that `before` lacks
/// counts as moved by its whole length. Where `after` has a piece opened and `before` has it on the
/// fold, each side is held against its own half; where it is closed again, against the half that is
/// further from it.
std::vector<Moved> moved_edges(const Block& before, const Block& after);

}  // namespace pinwright
