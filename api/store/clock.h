#pragma once
#include <chrono>
#include <string>

namespace pinwright::api {

/// UTC as ISO 8601 with milliseconds, e.g. 2031-04-05T06:07:08.090Z; texts sort as times do.
/// Times before year 0 or after 9999 are not meant.
std::string iso_utc(std::chrono::system_clock::time_point time);

}  // namespace pinwright::api
