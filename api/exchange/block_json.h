#pragma once
#include "api/exchange/json.h"
#include "engine/pattern/block.h"

namespace pinwright::api {

/// The block format as a JSON value; see exchange.h.
Json to_json(const Block& block);
/// As read_block, for a block inside a bigger document: places start with `prefix`.
Result<Block> read_block_json(const Json& value, std::string_view prefix = "");

}  // namespace pinwright::api
