#pragma once
#include <string_view>

namespace pinwright::api {

/// The published JSON Schema (draft-07) of the block format: api/exchange/block.schema.json, as it
/// was when this was built.
std::string_view block_schema_text();

}  // namespace pinwright::api
