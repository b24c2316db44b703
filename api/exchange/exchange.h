#pragma once
// The block's own JSON format, "pinwright-block" version 1, published as block.schema.json.

#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright::api {

/// Every field of the block, doubles in the shortest form that reads back to the same bits (-0.0
/// and denormals too); indented, with pairs of coordinates on one line. REQUIRES: finite numbers
/// (check_block); a NaN would be written as null and refused on reading.
std::string write_block(const Block& block);

/// write_block's inverse: read_block(write_block(b)).value() == b for every sound block. Nothing is
/// taken on trust: size and form (parse_json), the schema (check_against_block_schema), what a
/// schema cannot say ("points-count": 3 n + 1; measurements: check_measurements) and then the
/// block's soundness (check_block). All problems of one of these stages are told at once, place =
/// JSON pointer; those of check_block name piece and edge.
Result<Block> read_block(std::string_view json_text);

/// read_file_limited of 8 MiB, then read_block.
Result<Block> read_block_file(const std::string& path);

}  // namespace pinwright::api
