#pragma once
// The cloths of the sewing room, by id.

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "api/exchange/json.h"
#include "engine/pattern/fabric.h"

namespace pinwright::api {

/// The cloths on the shelf of Skerry Wardrobe, an invented sewing room: cotton-jersey, cotton-rib,
/// cotton-poplin. Their figures are of the demo; measure your own cloth and give it as JSON.
std::span<const Fabric> known_fabrics();
const Fabric* find_fabric(std::string_view id);

/// A fabric's object (fabric_json.h), or the id of a known one ("fabric-unknown", nearest offered).
Fabric read_fabric_or_id(const Json& value, const std::string& place, Problems& problems);

}  // namespace pinwright::api
