#include "api/exchange/amount_text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "engine/base/units.h"

namespace pinwright::api {
namespace {

constexpr double kMostMm = 10000.0;
constexpr std::size_t kMostTextBytes = 64;

constexpr std::array<std::pair<std::string_view, double>, 22> kUnits = {{
    {"mm", 1.0},          {"mm.", 1.0},           {"millimetre", 1.0},    {"millimetres", 1.0},
    {"millimeter", 1.0},  {"millimeters", 1.0},   {"cm", 10.0},           {"cm.", 10.0},
    {"centimetre", 10.0}, {"centimetres", 10.0},  {"centimeter", 10.0},   {"centimeters", 10.0},
    {"m", 1000.0},        {"metre", 1000.0},      {"metres", 1000.0},     {"in", kMmPerInch},
    {"in.", kMmPerInch},  {"inch", kMmPerInch},   {"inches", kMmPerInch}, {"\"", kMmPerInch},
    {"''", kMmPerInch},   {"\u2033", kMmPerInch},
}};

/// Signs that stand for a whole fraction.
constexpr std::array<std::pair<std::string_view, double>, 7> kFractions = {{
    {"\u00BD", 1.0 / 2},
    {"\u00BC", 1.0 / 4},
    {"\u00BE", 3.0 / 4},
    {"\u215B", 1.0 / 8},
    {"\u215C", 3.0 / 8},
    {"\u215D", 5.0 / 8},
    {"\u215E", 7.0 / 8},
}};

class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  void skip_blanks() {
    while (!rest_.empty() && (rest_[0] == ' ' || rest_[0] == '\t')) rest_.remove_prefix(1);
  }
  bool take(std::string_view head) {
    if (rest_.substr(0, head.size()) != head) return false;
    rest_.remove_prefix(head.size());
    return true;
  }
  std::optional<double> fraction_sign() {
    for (const auto& [sign, value] : kFractions) {
      if (take(sign)) return value;
    }
    return std::nullopt;
  }
  /// Digits with at most one decimal point or comma.
  std::optional<double> decimal(bool& whole) {
    std::string digits;
    whole = true;
    std::size_t n = 0;
    for (; n < rest_.size(); ++n) {
      const char c = rest_[n];
      if (c >= '0' && c <= '9') {
        digits += c;
      } else if ((c == '.' || c == ',') && whole && n + 1 < rest_.size() && rest_[n + 1] >= '0' &&
                 rest_[n + 1] <= '9') {
        digits += '.';
        whole = false;
      } else {
        break;
      }
    }
    double value = 0.0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (digits.empty() || error != std::errc() || end != digits.data() + digits.size()) {
      return std::nullopt;
    }
    rest_.remove_prefix(n);
    return value;
  }
  std::string_view rest() const { return rest_; }
  void restore(std::string_view rest) { rest_ = rest; }

 private:
  std::string_view rest_;
};

/// "2.5", "3/8", "1 1/2", "1-1/2", "1½", "½".
std::optional<double> number(Scanner& in) {
  if (const auto sign = in.fraction_sign()) return sign;
  bool whole = false;
  const auto first = in.decimal(whole);
  if (!first) return std::nullopt;
  if (!whole) return first;
  if (in.take("/") || in.take("\u2044")) {
    const auto below = in.decimal(whole);
    if (!below || !whole || *below == 0.0) return std::nullopt;
    return *first / *below;
  }
  const std::string_view here = in.rest();
  in.skip_blanks();
  if (in.take("-")) in.skip_blanks();
  if (const auto sign = in.fraction_sign()) return *first + *sign;
  if (const auto above = in.decimal(whole); above && whole) {
    if (!in.take("/") && !in.take("\u2044")) return std::nullopt;
    const auto below = in.decimal(whole);
    if (!below || !whole || *below == 0.0) return std::nullopt;
    return *first + *above / *below;
  }
  in.restore(here);
  return first;
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

}  // namespace

Result<double> read_amount(std::string_view text, std::string_view place) {
  const std::string where(place);
  const Problem unreadable{
      "amount-not-readable", where,
      "\"" + std::string(text.substr(0, kMostTextBytes)) + "\" is not a length.",
      "Write a number and a unit: 15 mm, 2 cm, 3/8 in, 1 1/2 in."};
  if (text.size() > kMostTextBytes) return unreadable;
  Scanner in(text);
  in.skip_blanks();
  const bool negative = in.take("-") || in.take("\u2212");
  if (!negative) in.take("+");
  in.skip_blanks();
  const auto value = number(in);
  if (!value) return unreadable;
  in.skip_blanks();
  std::string unit = lower(in.rest());
  while (!unit.empty() && (unit.back() == ' ' || unit.back() == '\t')) unit.pop_back();
  if (unit.empty()) {
    return Problem{"amount-without-unit", where,
                   "\"" + std::string(text) + "\" does not say its unit.",
                   "Add the unit: " + std::string(text) + " mm, cm or in?"};
  }
  for (const auto& [known, mm] : kUnits) {
    if (unit != known) continue;
    const double length = (negative ? -1.0 : 1.0) * *value * mm;
    if (!(std::abs(length) <= kMostMm)) {
      return Problem{"amount-range", where, "The length is over 10 m.",
                     "Check the number and its unit."};
    }
    return length;
  }
  return unreadable;
}

}  // namespace pinwright::api
