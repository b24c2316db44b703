#pragma once
#include <cstddef>
#include <string>

#include "engine/base/result.h"

namespace pinwright::api {

/// The whole file. Refused, place = path: "file-missing" (or not readable), "file-not-regular" (a
/// folder, a device, a pipe), "too-large" when it has more than most_bytes: told from its size, and
/// never more than most_bytes + 1 are read when the size lies.
Result<std::string> read_file_limited(const std::string& path, std::size_t most_bytes);

}  // namespace pinwright::api
