#pragma once
#include <vector>

#include "api/exchange/json.h"
#include "engine/alteration/step.h"

namespace pinwright::api {

/// {"operation": "close-wedge", "piece": "front", "edge": "neckline", "hinge": "bust-point",
///  "amount_mm": 9.0, "of": "half", "side": "both"}: the options stand beside the operation. A
/// distance is written "of": "whole" (it is never divided); a ratio is written "amount": 0.9 and
/// has no "of"; a step without an amount ("sew", "choose") writes none when it is 0.
Json to_json(const Step& step);
Json to_json(const std::vector<Step>& steps);

/// Reads a step and checks it against the catalogue (check_step). Instead of "amount_mm" an amount
/// may be text with its unit: "amount": "3/8 in". "of" is required wherever an amount could be
/// meant of the half pattern or of the whole garment: "of-missing" otherwise. "side" is "both" when
/// left out. Every other field is an option and must be text.
Step read_step(const Json& value, const std::string& place, Problems& problems);
/// At most 64 steps, each as above.
std::vector<Step> read_steps(const Json& value, const std::string& place, Problems& problems);

}  // namespace pinwright::api
