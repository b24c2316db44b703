#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "api/cli/say.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

constexpr double kShownDriftMm = 0.5;
constexpr double kShownDriftDeg = 0.25;

std::string said(const Json& value, const char* field) {
  return value.contains(field) && value[field].is_string() ? value[field].get<std::string>() : "";
}

std::string degrees_said(double value) {
  const double rounded = std::round(10.0 * value) / 10.0;
  return fmt::format("{:.1f} deg", rounded == 0.0 ? 0.0 : rounded);  // never "-0.0"
}

/// The number under field_mm or field_deg.
std::string number(const Json& value, const std::string& field) {
  if (value.contains(field + "_deg")) return degrees_said(value[field + "_deg"].get<double>());
  if (value.contains(field + "_mm")) return mm(value[field + "_mm"].get<double>());
  return "-";
}

std::string signed_number(const Json& value, const std::string& field) {
  const std::string text = number(value, field);
  return text.starts_with('-') ? text : "+" + text;
}

std::string joined(const Json& texts, const char* by) {
  std::string out;
  for (const Json& text : texts) out += (out.empty() ? "" : by) + text.get<std::string>();
  return out;
}

/// What the answer says of a step besides its operation and options.
bool is_option(const std::string& key) {
  constexpr std::array<const char*, 16> kOther = {
      "operation", "amount",   "amount_mm", "of",       "side",    "proposals",
      "asked_by",  "alone_mm", "assumed",   "least_mm", "most_mm", "bound_reason",
      "used",      "at_least", "at_most",   "text"};
  return std::find(kOther.begin(), kOther.end(), key) == kOther.end();
}

/// "close-wedge (front neckline, hinge bust-point, left side)".
std::string named(const Json& step) {
  std::string options = said(step, "piece");
  if (const std::string edge = said(step, "edge"); !edge.empty())
    options += (options.empty() ? "" : " ") + edge;
  const auto add = [&options](const std::string& text) {
    options += (options.empty() ? "" : ", ") + text;
  };
  for (const auto& [key, value] : step.items()) {
    if (key == "piece" || key == "edge" || !is_option(key) || !value.is_string()) continue;
    add(key + " " + value.get<std::string>());
  }
  if (const std::string side = said(step, "side"); !side.empty() && side != "both")
    add(side + " side");
  return said(step, "operation") + (options.empty() ? "" : " (" + options + ")");
}

std::string amount(const Json& step, const char* field) {
  std::string out = mm(step[field].get<double>());
  if (said(step, "of") == "half") out += " half";
  return out;
}

std::string steps(const Json& list) {
  std::string out;
  std::size_t count = 0;
  for (const Json& step : list) {
    std::string line =
        named(step) + ": " + (step.value("used", false) ? amount(step, "amount_mm") : "not needed");
    if (step["alone_mm"].is_number()) line += "; by itself " + amount(step, "alone_mm");
    if (step.value("assumed", false)) line += " (no amount was told: the usual one)";
    out += paragraph(fmt::format("{:>3}. ", ++count), line);
    out += paragraph("     asked by: ", joined(step["asked_by"], "; "));
    std::string bounds = fmt::format("{} to {}", mm(step["least_mm"].get<double>()),
                                     mm(step["most_mm"].get<double>()));
    if (step.value("at_least", false) || step.value("at_most", false))
      bounds += " - it stands at its bound";
    if (const std::string reason = said(step, "bound_reason"); !reason.empty())
      bounds += " (" + reason + ")";
    out += paragraph("     bounds: ", bounds);
  }
  return out;
}

std::string plain(const Json& list, const char* head) {
  std::string out;
  for (const Json& step : list) out += paragraph(head, said(step, "text"));
  return out;
}

std::string targets(const Json& list) {
  Table table({{"measure"},
               {"before", Table::Align::right},
               {"wanted", Table::Align::right},
               {"after", Table::Align::right},
               {"left over", Table::Align::right},
               {""}});
  std::string shares;
  for (const Json& target : list) {
    table.add({said(target, "name"), number(target, "before"), number(target, "wanted"),
               number(target, "after"), number(target, "left_over"),
               target.value("met", false) ? "met" : "MISSED"});
    std::string parts;
    for (const Json& share : target["shares"]) {
      parts += fmt::format("{}{} by step {} ({})", parts.empty() ? "" : ", ",
                           signed_number(share, "change"), share["step"].get<int>() + 1,
                           said(share, "operation"));
    }
    if (!parts.empty()) shares += paragraph("  " + said(target, "name") + ": ", parts);
  }
  return table.empty() ? "" : "\n" + table.text() + shares;
}

std::string held(const Json& list) {
  std::string moved;
  std::size_t still = 0;
  for (const Json& measure : list) {
    const double drift = measure.contains("drift_deg")
                             ? measure["drift_deg"].get<double>() / kShownDriftDeg
                             : measure["drift_mm"].get<double>() / kShownDriftMm;
    if (std::abs(drift) < 1.0) {
      ++still;
    } else {
      moved += (moved.empty() ? "" : ", ") + said(measure, "name") + " " +
               signed_number(measure, "drift");
    }
  }
  if (list.empty()) return "";
  std::string out = "\n";
  if (!moved.empty()) out += paragraph("Also changes: ", moved + ".");
  return out + fmt::format("{} measures that nobody complained of stay where they were.\n", still);
}

std::string conflicts(const Json& list) {
  std::string out;
  for (const Json& conflict : list) {
    out += "\n" + paragraph("CANNOT BE HAD TOGETHER: ", said(conflict, "text"));
    for (const Json& member : conflict["members"]) {
      std::string line = said(member, "says");
      if (const std::string relax = said(member, "relax"); !relax.empty())
        line += " - to give way here: " + relax;
      out += paragraph("  * ", line);
    }
  }
  return out;
}

}  // namespace

std::string say_together(const Json& together) {
  std::string out = "Sized together\n";
  out += paragraph("  proposals: ", joined(together["proposals"], ", "));
  out += plain(together["kept"], "  first, as proposed: ") + steps(together["steps"]) +
         plain(together["sewn"], "  sewn: ");
  for (const Json& left : together["left_out"])
    out += paragraph("  left out: ", said(left, "text"));
  return out + targets(together["targets"]) + held(together["held"]) +
         conflicts(together["conflicts"]);
}

}  // namespace pinwright::api::cli
