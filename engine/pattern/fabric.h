#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace pinwright {

enum class FabricKind { woven, knit };
std::string_view to_text(FabricKind kind);
std::optional<FabricKind> fabric_kind(std::string_view text);

/// Stretch is (stretched - rest) / rest as a fraction: 4 in that pulls to 5 in is 0.25.
/// Recovery is the fraction of that extension which goes back after it is let go (1 = all).
struct Fabric {
  std::string id;
  std::string name;
  FabricKind kind = FabricKind::woven;
  double stretch_across = 0.0;
  double stretch_along = 0.0;
  double recovery = 1.0;
  bool operator==(const Fabric&) const = default;
};

}  // namespace pinwright
