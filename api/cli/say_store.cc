#include <fmt/format.h>

#include "api/cli/say.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

std::string text(const Json& value, const char* field) {
  return value.contains(field) && value[field].is_string() ? value[field].get<std::string>() : "";
}

std::string number(const Json& value, const char* field) {
  return value.contains(field) && value[field].is_number() ? std::to_string(value[field].get<int>())
                                                           : "-";
}

}  // namespace

std::string say_history(const Json& history) {
  Table table({{"rev", Table::Align::right}, {"time (UTC)"}, {"author"}, {"reason"}});
  for (const Json& line : history["revisions"]) {
    std::string reason = text(line, "reason");
    if (line["restores"].is_number()) reason += " (as revision " + number(line, "restores") + ")";
    // minutes are enough for a reader
    table.add(
        {number(line, "revision"), text(line, "time").substr(0, 16), text(line, "author"), reason});
  }
  return "Block " + text(history, "block") + "\n\n" + table.text();
}

std::string say_saved(const Json& revision) {
  return fmt::format("Saved: block {}, revision {} (ETag {}).\n", text(revision, "block"),
                     number(revision, "revision"), text(revision, "etag"));
}

}  // namespace pinwright::api::cli
