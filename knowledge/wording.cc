#include "knowledge/wording.h"

#include <cctype>
#include <cmath>
#include <cstdio>
#include <numeric>

#include "engine/base/units.h"

namespace pinwright::knowledge {
namespace {

std::string trimmed(double x, int decimals) {
  char buffer[64];
  std::snprintf(buffer, sizeof buffer, "%.*f", decimals, x);
  std::string text = buffer;
  if (text.find('.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

std::string inches(double mm) {
  const long sixteenths = std::lround(mm / kMmPerInch * 16.0);
  const long whole = sixteenths / 16;
  const long rest = sixteenths % 16;
  if (rest == 0) return std::to_string(whole) + " in";
  const long by = std::gcd(rest, 16L);
  const std::string fraction = std::to_string(rest / by) + "/" + std::to_string(16 / by) + " in";
  return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

void replace_all(std::string& text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos;
       at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
}

std::string said_amount(const Sign& sign, const FoundAmount& amount) {
  std::string text = said_length(amount.mm);
  if (amount.taken == Taken::fold_depth) text = "a fold " + text + " deep";
  if (sign.counts == Counts::girth)
    text += amount.of == Of::whole ? " on the whole garment" : " on each half";
  return text;
}

}  // namespace

std::string said_length(double mm) {
  const double size = std::abs(mm);
  return trimmed(size, 1) + " mm (" + inches(size) + ")";
}

std::string said_ratio(double ratio) { return trimmed(ratio, 3); }

std::string said_probability(double p) {
  return std::to_string(std::lround(100.0 * std::min(std::max(p, 0.0), 1.0))) + " %";
}

std::string small_first(std::string text) {
  const bool capitals = text.size() > 1 && std::isupper(static_cast<unsigned char>(text[1]));
  if (!text.empty() && !capitals)
    text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

std::string listed(const std::vector<std::string>& all, const std::string& last) {
  std::string text;
  for (std::size_t i = 0; i < all.size(); ++i)
    text += (i == 0 ? "" : i + 1 == all.size() ? last : ", ") + all[i];
  return text;
}

std::string said_finding(const Sign& sign, const Finding& finding) {
  std::string text = small_first(sign.name);
  if (finding.state == FindingState::absent)
    return (finding.sure < 1.0 ? "perhaps not found: " : "not found: ") + text;
  std::string more;
  if (finding.sure < 1.0) more = "not told for sure";
  if (finding.side != Side::both)
    more += (more.empty() ? "" : ", ") + std::string(to_text(finding.side)) + " side";
  if (finding.amount) more += (more.empty() ? "" : ", ") + said_amount(sign, *finding.amount);
  if (!finding.posture.empty()) more += (more.empty() ? "" : ", ") + finding.posture;
  return more.empty() ? text : text + " - " + more;
}

std::string filled(std::string text, const std::string& amount, const std::string& fold) {
  replace_all(text, "{amount}", amount);
  replace_all(text, "{fold}", fold);
  return text;
}

}  // namespace pinwright::knowledge
