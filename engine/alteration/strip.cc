// Cut a strip to another ratio.
//
//      opening (both halves, on the stitching line)   L
//      strip                                          ratio x L, sewn on stretched
//
// The strip itself is redrawn by restore(). It may be cut from another cloth (a rib), whose stretch
// the block does not know: the limits then ask nothing of it. Inverse: the old ratio and cloth.
#include <cstdio>

#include "engine/alteration/operations.h"

namespace pinwright {

Result<Done> set_binding_ratio(Edit& edit, double ratio, const std::string& binding_id,
                               const std::string& cloth) {
  for (Binding& binding : edit.block.bindings) {
    if (binding.id != binding_id) continue;
    char text[96];
    std::snprintf(text, sizeof text, "ratio %.3g instead of %.3g", ratio, binding.ratio);
    binding.ratio = ratio;
    edit.note.text = binding.id + ": " + text;
    edit.note.pieces.push_back(binding.piece);
    Piece* strip = find_piece(edit.block, binding.piece);
    if (strip != nullptr && cloth != "as-is" && strip->cloth != cloth) {
      strip->cloth = cloth;
      edit.note.text += ", cut from the " + cloth;
    }
    return Done{};
  }
  return not_here("this block has no binding '" + binding_id + "'", "name a binding of the block");
}

}  // namespace pinwright
