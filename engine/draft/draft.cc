#include "engine/draft/draft.h"

#include "engine/draft/need.h"

namespace pinwright {

Result<Block> draft(std::string_view kind, const DraftInput& input) {
  if (kind == drafting::kKnitTop) return draft_knit_top(input);
  if (kind == drafting::kWovenBodice) return draft_woven_bodice(input);
  return Problem{"draft-kind-unknown", "/kind",
                 "Nothing of the kind \"" + std::string(kind.substr(0, 80)) + "\" can be drafted.",
                 "Take knit-top or woven-bodice."};
}

std::span<const std::string_view> required_measurements(std::string_view kind) {
  return drafting::required(kind);
}

}  // namespace pinwright
