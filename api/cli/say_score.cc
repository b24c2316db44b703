#include <fmt/format.h>

#include "api/cli/say.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

std::string percent(const Json& share) {
  return fmt::format("{:.1f} %", 100.0 * share.get<double>());
}

std::string listed(const Json& ids) {
  std::string out;
  for (const Json& id : ids) out += (out.empty() ? "" : ", ") + id.get<std::string>();
  return out.empty() ? "-" : out;
}

std::string say_wrong(const Json& wrong) {
  std::string out;
  for (const Json& one : wrong) {
    const bool first = one["cause_first"].get<bool>();
    const bool three = one["cause_in_three"].get<bool>();
    out += "\n" + one["id"].get<std::string>() +
           (first   ? ""
            : three ? "  (cause second or third)"
                    : "  (cause not found)") +
           "\n";
    out += paragraph("  told:     ", one["words"].get<std::string>());
    if (const auto refused = one["refused"].get<std::string>(); !refused.empty())
      out += paragraph("  refused:  ", refused);
    if (!one["missed"].empty()) out += paragraph("  missed:   ", listed(one["missed"]));
    if (!one["beside"].empty()) out += paragraph("  beside:   ", listed(one["beside"]));
    if (first) continue;
    out += paragraph("  accepted: ", listed(one["accepted"]));
    out += paragraph("  answered: ", listed(one["causes"]));
  }
  return out;
}

}  // namespace

std::string say_score(const Json& score) {
  using enum Table::Align;
  Table table({{"file"},
               {"try-ons", right},
               {"first", right},
               {"in three", right},
               {"findings", right},
               {"read", right},
               {"true", right}});
  std::string wrong;
  for (const Json& line : score["files"]) {
    const std::string file = line["file"].get<std::string>();
    table.add({file.substr(file.rfind('/') + 1), std::to_string(line["tryons"].get<int>()),
               percent(line["cause_first"]), percent(line["cause_in_three"]),
               std::to_string(line["findings"].get<int>()), percent(line["findings_read"]),
               percent(line["findings_true"])});
    if (line.contains("wrong")) wrong += say_wrong(line["wrong"]);
  }
  return table.text() +
         "first, in three: an accepted cause comes first, or among the first three.\n"
         "read: findings read rightly, of those told; true: told, of those read.\n" +
         wrong;
}

}  // namespace pinwright::api::cli
