#pragma once
#include "api/bodies/trial.h"
#include "api/exchange/json.h"

namespace pinwright::api {

/// {kind, fabric, within_mm, bodies, before, after (counts and shares), measures: [...], sizes:
/// [...], unproved, refused, left_over: [...], seconds}; with `list` every body too.
Json to_json(const TrialReport& report, bool list);

}  // namespace pinwright::api
