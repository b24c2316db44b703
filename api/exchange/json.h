#pragma once
// The one JSON type of the api: objects keep the order in which they were written, so that what we
// write reads from the head down (format, id, name, ...). Only api code includes this.

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "engine/base/result.h"

namespace pinwright::api {

using Json = nlohmann::ordered_json;

/// The JSON pointer (RFC 6901) of a member of the place `base`: "~" and "/" in the key escaped.
std::string member(std::string_view base, std::string_view key);
std::string member(std::string_view base, std::size_t index);

/// [{"code", "place", "what", "mend"}, ...]
Json problems_to_json(const Problems& problems);

/// Indented text, one object or list a line group; pairs of numbers stay on one line.
std::string dump(const Json& value);

}  // namespace pinwright::api
