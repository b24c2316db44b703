#pragma once
// Seams, bindings and joins walked on the paper.

#include "engine/proof/proof.h"

namespace pinwright {

/// REQUIRES: check_block(block) found nothing.
SeamProof walk_seam(const Block& block, const Seam& seam);
BindingProof walk_binding(const Block& block, const Binding& binding);
JoinProof check_join(const Block& block, const Join& join);

}  // namespace pinwright
