#pragma once
#include "api/exchange/json.h"
#include "engine/pattern/fabric.h"

namespace pinwright::api {

/// {"id", "name", "kind": "woven"|"knit", "stretch_across", "stretch_along", "recovery"}; stretch
/// and recovery are fractions (0.25, not 25): a stretch over 5 or a recovery over 1 is refused.
Json to_json(const Fabric& fabric);
/// kind is required; id and name may be left out, stretch then is 0 and recovery 1.
Fabric read_fabric(const Json& value, const std::string& place, Problems& problems);

}  // namespace pinwright::api
