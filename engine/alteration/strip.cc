// Cut a strip to another ratio.
//
//      opening (both halves, on the stitching line)   L
//      strip                                          ratio x L, sewn on stretched
//
// The strip itself is redrawn by restore(). Inverse: the old ratio.
#include <cstdio>

#include "engine/alteration/operations.h"

namespace pinwright {

Result<Done> set_binding_ratio(Edit& edit, double ratio, const std::string& binding_id) {
  for (Binding& binding : edit.block.bindings) {
    if (binding.id != binding_id) continue;
    char text[96];
    std::snprintf(text, sizeof text, "ratio %.3g instead of %.3g", ratio, binding.ratio);
    binding.ratio = ratio;
    edit.note.text = binding.id + ": " + text;
    edit.note.pieces.push_back(binding.piece);
    return Done{};
  }
  return not_here("this block has no binding '" + binding_id + "'", "name a binding of the block");
}

}  // namespace pinwright
