#include "api/desk/fabrics.h"

#include <array>
#include <vector>

#include "api/exchange/fabric_json.h"
#include "engine/base/nearest_word.h"

namespace pinwright::api {

namespace {

const std::array<Fabric, 3>& shelf() {
  static const std::array<Fabric, 3> kShelf = {
      Fabric{"cotton-jersey", "mid-weight cotton jersey", FabricKind::knit, 0.45, 0.15, 0.90},
      Fabric{"cotton-rib", "cotton rib", FabricKind::knit, 1.00, 0.20, 0.95},
      Fabric{"cotton-poplin", "cotton poplin", FabricKind::woven, 0.02, 0.0, 1.0},
  };
  return kShelf;
}

}  // namespace

std::span<const Fabric> known_fabrics() { return shelf(); }

const Fabric* find_fabric(std::string_view id) {
  for (const Fabric& fabric : shelf()) {
    if (fabric.id == id) return &fabric;
  }
  return nullptr;
}

Fabric read_fabric_or_id(const Json& value, const std::string& place, Problems& problems) {
  if (!value.is_string()) return read_fabric(value, place, problems);
  const std::string& id = value.get_ref<const std::string&>();
  if (const Fabric* fabric = find_fabric(id)) return *fabric;
  std::vector<std::string> ids;
  for (const Fabric& fabric : shelf()) ids.push_back(fabric.id);
  problems.push_back({"fabric-unknown", place, "No cloth is called \"" + id.substr(0, 64) + "\".",
                      "Did you mean \"" + nearest_word(id, ids) +
                          "\"? Or give the cloth itself: kind, stretch, recovery."});
  return {};
}

}  // namespace pinwright::api
