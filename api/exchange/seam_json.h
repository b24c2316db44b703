#pragma once
#include "api/exchange/json.h"
#include "engine/pattern/seam.h"

namespace pinwright::api {

Json to_json(const Seam& seam);
Json to_json(const Join& join);
Json to_json(const Binding& binding);
Json to_json(const Lining& lining);

/// REQUIRES of each: value meets its part of the block schema.
Seam seam_from(const Json& value);
Join join_from(const Json& value);
Binding binding_from(const Json& value);
Lining lining_from(const Json& value);

}  // namespace pinwright::api
