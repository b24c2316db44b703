#include "engine/pattern/fabric.h"

namespace pinwright {

std::string_view to_text(FabricKind kind) {
  switch (kind) {
    case FabricKind::woven:
      return "woven";
    case FabricKind::knit:
      return "knit";
  }
  return "";
}

std::optional<FabricKind> fabric_kind(std::string_view text) {
  for (const FabricKind kind : {FabricKind::woven, FabricKind::knit}) {
    if (to_text(kind) == text) return kind;
  }
  return std::nullopt;
}

}  // namespace pinwright
