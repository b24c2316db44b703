#pragma once
#include <vector>

#include "api/exchange/json.h"
#include "engine/pattern/tryon.h"

namespace pinwright::api {

/// {"sign", "zone", "side", "amount_mm", "of", "taken", "state", "posture", "words",
/// "begin", "end", "sure"}; without an amount "amount_mm", "of" and "taken" are left out, without a
/// text "begin" and "end" (bytes of it), and "sure" when it is 1.
Json to_json(const Finding& finding);
Json to_json(const std::vector<Finding>& findings);

/// Only "sign" is required. Instead of "amount_mm" the amount may be text with its unit:
/// "amount": "3/8 in" ("amount-without-unit" for a bare number). An amount needs "of": "whole" or
/// "half" ("of-missing"); "taken" is "unsaid" when left out; "sure" is in [0.01, 1]. Whether sign
/// and zone are known is asked of the knowledge (check_findings).
Finding read_finding(const Json& value, const std::string& place, Problems& problems);
/// At most 256 findings.
std::vector<Finding> read_findings(const Json& value, const std::string& place, Problems& problems);

}  // namespace pinwright::api
