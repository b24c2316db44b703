#include <fmt/format.h>

#include <cmath>

#include "api/cli/say.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

std::string foreseen_amount(const Json& finding) {
  if (!finding["amount_mm"].is_number()) return "";
  std::string out = mm(finding["amount_mm"].get<double>());
  if (finding["of"].is_string()) out += " " + finding["of"].get<std::string>();
  return out;
}

std::string ids(const Json& list) {
  std::string out;
  for (const Json& id : list) out += (out.empty() ? "" : ", ") + id.get<std::string>();
  return out;
}

}  // namespace

std::string say_foresight(const Json& foresight) {
  std::string out = paragraph("", foresight["verdict"].get<std::string>());
  for (const Json& finding : foresight["findings"]) {
    const std::string amount = foreseen_amount(finding);
    out += fmt::format("\n{:>4.0f} %  {}{}\n", 100.0 * finding["probability"].get<double>(),
                       finding["name"].get<std::string>(), amount.empty() ? "" : ": " + amount);
    out += paragraph("        ", (finding["measured"].get<bool>() ? "measured: " : "") +
                                     finding["why"].get<std::string>());
    if (!finding["cures"].empty()) out += paragraph("        cure: ", ids(finding["cures"]));
  }
  for (const Json& note : foresight["posture"]) {
    out += paragraph("\nNoted: ",
                     note["note"].get<std::string>() +
                         (note["text"].is_string() ? " -> " + note["text"].get<std::string>()
                                                   : " (nothing is known to follow from it)"));
  }
  if (!foresight["measures"].empty()) {
    using enum Table::Align;
    Table table(
        {{"measure"}, {"garment", right}, {"body", right}, {"ease", right}, {"lacks", right}});
    for (const Json& m : foresight["measures"]) {
      table.add(
          {m["measure"].get<std::string>(), mm(m["garment_mm"].get<double>()),
           mm(m["body_mm"].get<double>()), mm(m["ease_mm"].get<double>()),
           std::abs(m["lacks_mm"].get<double>()) < 0.5 ? "" : mm(m["lacks_mm"].get<double>())});
    }
    out += "\n" + table.text();
  }
  if (!foresight["proposals"].empty())
    out += "\nOn paper first\n" + say_proposals(foresight["proposals"]);
  return out;
}

}  // namespace pinwright::api::cli
