#pragma once
#include "api/exchange/json.h"
#include "engine/pattern/wearer.h"

namespace pinwright::api {

/// {"bust-girth": 920.0, ...}, mm.
Json to_json(const Measurements& body);
/// A number is mm; text carries its unit ("36 1/4 in", "92 cm"), see amount_text.h. Unknown names
/// and values out of range are told by check_measurements under the same place.
Measurements read_measurements(const Json& value, const std::string& place, Problems& problems);

/// {"id": "deckhand-3", "body": {...}, "posture": ["..."]}
Json to_json(const Wearer& wearer);
/// body is required, id and posture may be left out.
Wearer read_wearer(const Json& value, const std::string& place, Problems& problems);

}  // namespace pinwright::api
