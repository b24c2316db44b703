#include "api/store/clock.h"

#include <array>
#include <cstdio>

namespace pinwright::api {

std::string iso_utc(std::chrono::system_clock::time_point time) {
  using std::chrono::days, std::chrono::floor, std::chrono::milliseconds;
  const auto moment = floor<milliseconds>(time);
  const auto day = floor<days>(moment);
  const std::chrono::year_month_day date(day);
  const std::chrono::hh_mm_ss clock(moment - day);
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02u-%02uT%02d:%02d:%02d.%03dZ",
                static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                static_cast<unsigned>(date.day()), static_cast<int>(clock.hours().count()),
                static_cast<int>(clock.minutes().count()),
                static_cast<int>(clock.seconds().count()),
                static_cast<int>(clock.subseconds().count()));
  return text.data();
}

}  // namespace pinwright::api
