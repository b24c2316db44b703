#pragma once
#include "api/exchange/json.h"
#include "engine/pattern/piece.h"

namespace pinwright::api {

Json to_json(const Piece& piece);
/// REQUIRES: value meets the piece of the block schema.
Piece piece_from(const Json& value);

}  // namespace pinwright::api
