#pragma once
#include <vector>

#include "api/exchange/json.h"
#include "engine/pattern/measures.h"

namespace pinwright::api {

/// "girth", "each", "distance", "angle".
std::string_view to_text(MeasureKind kind);

/// [{"id", "name", "kind", "value_mm" or "value_deg", "of": "whole" for a girth, "body"}, ...].
/// An angle is written in degrees, as a fitter reads it.
Json to_json(const std::vector<GarmentMeasure>& measures);

}  // namespace pinwright::api
