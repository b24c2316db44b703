#pragma once
// What a draft needs to know of the body, and the checks before anything is drawn.

#include <span>
#include <string_view>

#include "engine/base/result.h"
#include "engine/draft/draft.h"

namespace pinwright::drafting {

inline constexpr std::string_view kKnitTop = "knit-top";
inline constexpr std::string_view kWovenBodice = "woven-bodice";

/// No ease is larger, either way.
inline constexpr double kMostEaseMm = 400.0;

/// Empty for an unknown kind.
std::span<const std::string_view> required(std::string_view kind);
/// Ease that may be overridden, by ISO measurement. Empty for an unknown kind.
std::span<const std::string_view> ease_keys(std::string_view kind);
/// Everything wrong with the input before drafting: measurements (check_measurements,
/// "measurement-missing"), overrides ("ease-unknown", "ease-range"), stretch ("fabric-stretch").
Problems check_input(std::string_view kind, const DraftInput& input);

/// Measurements with our own estimates for the optional ones (draft.h lists them).
class Body {
 public:
  explicit Body(const Measurements& known) : known_(known) {}
  /// REQUIRES: the measurement is a required one that check_input has passed, or has an estimate.
  double operator[](std::string_view id) const;
  bool has(std::string_view id) const { return known_.count(std::string(id)) != 0; }

 private:
  double estimate(std::string_view id) const;
  const Measurements& known_;
};

}  // namespace pinwright::drafting
