#pragma once
// Try-ons with two complaints that want the same measure, for the tests of sizing them together.

namespace pinwright::api {

inline constexpr const char* kTwo =
    "The front neckline gapes 1 cm and the bust is fine. There are slack folds from neck to "
    "armhole "
    "of 2 cm.";
inline constexpr const char* kTooMuch =
    "The front neckline gapes 4 cm and the fold ends above the bust. The neckline "
    "slides off the shoulders by 1 cm.";

}  // namespace pinwright::api
