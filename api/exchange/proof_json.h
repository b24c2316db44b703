#pragma once
#include <vector>

#include "api/exchange/json.h"
#include "engine/alteration/alter.h"
#include "engine/proof/proof.h"

namespace pinwright::api {

/// Every part of a proof under the names of proof.h: {"pass", "failures", "seams", "bindings",
/// "joins", "outlines", "moved", "measures"}. Lengths end in _mm, angles in _deg; a measure has
/// before_mm / after_mm / target_mm, or the same in _deg for an angle.
Json to_json(const Proof& proof);

/// [{"step": 0, "text", "pieces": [...], "follow": [...]}, ...]; step counts from 0.
Json to_json(const std::vector<StepNote>& notes);

}  // namespace pinwright::api
