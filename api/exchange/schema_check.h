#pragma once
#include "api/exchange/json.h"

namespace pinwright::api {

/// Everything in `value` that the schema of the block format refuses, each with its JSON pointer
/// (the empty pointer is the whole document):
///   "field-missing", "field-unknown", "type-wrong", "value-unknown" (not one of a fixed list),
///   "value-range", "id-malformed" (a pattern not met), "list-size", "text-size".
/// At most 100 are told. REQUIRES: value came from parse_json (depth and strings bounded).
Problems check_against_block_schema(const Json& value);

}  // namespace pinwright::api
