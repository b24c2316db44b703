#pragma once
// From bytes that came from anywhere to a JSON value, or to problems with their place.

#include <cstddef>
#include <string_view>

#include "api/exchange/json.h"

namespace pinwright::api {

inline constexpr std::size_t kMostBytes = 8u << 20;   ///< 8 MiB: a block takes about 40 KB
inline constexpr std::size_t kMostDepth = 32;         ///< a block needs 6
inline constexpr std::size_t kMostTextBytes = 65536;  ///< of one string: a whole try-on in words

/// Never throws, never recurses on the input. Refused, each with its place ("line 3, column 14", or
/// a JSON pointer where one is known):
///   "too-large" (before anything is parsed), "json-malformed", "json-not-a-number" (NaN, Infinity:
///   JSON has none), "json-number-range" (1e999), "json-not-utf8", "json-too-deep",
///   "json-key-twice" (which of the two is meant?), "json-text-too-long",
///   "json-control-character" (a control character other than tab and line feed in a string).
/// The last three are collected; the others end the reading.
Result<Json> parse_json(std::string_view text, std::size_t most_bytes = kMostBytes);

}  // namespace pinwright::api
