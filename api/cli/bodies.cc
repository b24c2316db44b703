// The command on a table of measured bodies.

#include <fmt/format.h>

#include "api/bodies/mapping.h"
#include "api/bodies/report_json.h"
#include "api/cli/commands.h"
#include "api/cli/say.h"
#include "api/cli/table.h"
#include "api/desk/fabrics.h"
#include "api/exchange/read_file.h"

namespace pinwright::api::cli {
namespace {

constexpr std::size_t kMostTableBytes = 64u << 20;

std::string percent(double share) { return fmt::format("{:.1f} %", 100.0 * share); }

std::string say_bodies(const Json& report) {
  const std::string within = fmt::format("{:.0f} mm", report["within_mm"].get<double>());
  std::string out = fmt::format(
      "{} bodies, {} in {} sizes, {:.1f} s\n\n", report["bodies"].get<std::size_t>(),
      report["kind"].get<std::string>(), report["sizes"].size(), report["seconds"].get<double>());
  Table table({{"within " + within + " of body + ease"},
               {"nearest size", Table::Align::right},
               {"cured", Table::Align::right}});
  for (const Json& m : report["measures"]) {
    table.add({m["measure"].get<std::string>(), percent(m["before"].get<double>()),
               percent(m["after"].get<double>())});
  }
  table.add({"all of them, proved", percent(report["before"]["share"].get<double>()),
             percent(report["after"]["share"].get<double>())});
  out += table.text();
  out += fmt::format("\nProof failed: {}. Sizing refused: {}.\n",
                     report["unproved"].get<std::size_t>(), report["refused"].get<std::size_t>());
  if (!report["left_over"].empty()) {
    out += "\nWhat stays out, and why:\n";
    for (const Json& line : report["left_over"]) {
      out += paragraph(fmt::format("  {:4} ", line["bodies"].get<std::size_t>()),
                       line["what"].get<std::string>());
    }
  }
  if (report.contains("mapping")) {
    out += "\nHow the table's columns are read:\n";
    for (const auto& [id, from] : report["mapping"].items()) {
      out += paragraph("  " + id + ": ", from.get<std::string>());
    }
  }
  if (report.contains("list")) {
    Table bodies({{"body"}, {"size"}, {"fits"}, {"stays out"}});
    for (const Json& body : report["list"]) {
      std::string left;
      for (const Json& m : body["measures"]) {
        if (!m.contains("why")) continue;
        left += (left.empty() ? "" : "; ") + m["measure"].get<std::string>() + " " +
                mm(m["after_mm"].get<double>());
      }
      if (!body["proved"].get<bool>()) left += left.empty() ? "not proved" : "; not proved";
      bodies.add({body["body"].get<std::string>(), body["size"].get<std::string>(),
                  body["fits_after"].get<bool>() ? "yes" : "no", left});
    }
    out += "\n" + bodies.text();
  }
  return out;
}

}  // namespace

int run_bodies(const Options& options) {
  const std::string kind = options.kind.empty() ? "knit-top" : options.kind;
  const std::string id = !options.fabric.empty()  ? options.fabric
                         : kind == "woven-bodice" ? "cotton-poplin"
                                                  : "cotton-jersey";
  const Fabric* fabric = find_fabric(id);
  if (fabric == nullptr) {
    std::string known;
    for (const Fabric& one : known_fabrics()) known += (known.empty() ? "" : ", ") + one.id;
    return finish(options, Problems{{"fabric-unknown", "--fabric",
                                     "No cloth is called \"" + id.substr(0, 80) + "\".",
                                     "Take one of " + known + "."}});
  }
  const Result<std::string> text = read_file_limited(options.block, kMostTableBytes);
  if (!text) return finish(options, text.problems());
  const Result<std::vector<Wearer>> bodies = read_bodies(*text, options.block);
  if (!bodies) return finish(options, bodies.problems());
  const TrialReport report = run_trial(*bodies, kind, *fabric);
  if (report.sizes.sizes.empty()) {
    return finish(options, report.sizes.refused.front().problems);
  }
  Reply reply;
  reply.body = to_json(report, options.list);
  if (options.list) {
    reply.body["mapping"] = Json::object();
    for (const MappingLine& line : mapping_lines()) {
      reply.body["mapping"][std::string(line.measurement)] = line.from;
    }
  }
  reply.pass = report.unproved == 0;
  return finish(options, reply, say_bodies);
}

}  // namespace pinwright::api::cli
