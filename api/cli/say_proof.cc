#include <fmt/format.h>

#include <cmath>

#include "api/cli/say.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

using Align = Table::Align;

std::string ok(const Json& part) { return part.value("ok", false) ? "ok" : "FAILS"; }

std::string length(const Json& part, const char* field) {
  return part.contains(field) && part[field].is_number() ? mm(part[field].get<double>()) : "-";
}

std::string fraction(const Json& part, const char* field) {
  return part.contains(field) && part[field].is_number()
             ? fmt::format("{:.3f}", part[field].get<double>())
             : "-";
}

std::string degrees_of(const Json& part, const char* field) {
  if (!part.contains(field) || !part[field].is_number()) return "-";
  const double value = std::round(100.0 * part[field].get<double>()) / 100.0;
  return fmt::format("{:.2f} deg", value == 0.0 ? 0.0 : value);  // never "-0.00"
}

/// "waist-notch / waist-notch" is one name to a reader.
std::string section_name(const std::string& upto) {
  const std::size_t slash = upto.find(" / ");
  const bool same = slash != std::string::npos && upto.substr(0, slash) == upto.substr(slash + 3);
  return "- to " + (same ? upto.substr(0, slash) : upto);
}

std::string seams(const Json& proof) {
  Table table({{"seam"},
               {"a", Align::right},
               {"b", Align::right},
               {"ease wanted", Align::right},
               {"ease found", Align::right},
               {""}});
  for (const Json& seam : proof["seams"]) {
    table.add({seam.value("name", seam.value("seam", "")), length(seam, "a_mm"),
               length(seam, "b_mm"), length(seam, "ease_wanted_mm"), length(seam, "ease_found_mm"),
               ok(seam)});
    if (seam["sections"].size() < 2 && seam.value("ok", false)) continue;
    for (const Json& part : seam["sections"]) {
      table.add({section_name(part.value("upto", "")), length(part, "a_mm"), length(part, "b_mm"),
                 length(part, "ease_wanted_mm"), length(part, "ease_found_mm"), ok(part)});
    }
  }
  return table.empty() ? "" : table.text();
}

std::string bindings(const Json& proof) {
  Table table({{"binding"},
               {"opening", Align::right},
               {"strip", Align::right},
               {"ratio wanted", Align::right},
               {"ratio found", Align::right},
               {""}});
  for (const Json& part : proof["bindings"]) {
    table.add({part.value("binding", ""), length(part, "opening_mm"), length(part, "strip_mm"),
               fraction(part, "ratio_wanted"), fraction(part, "ratio_found"), ok(part)});
  }
  return table.empty() ? "" : "\n" + table.text();
}

std::string joins(const Json& proof) {
  Table table({{"line that runs on"}, {"off by", Align::right}, {""}});
  for (const Json& join : proof["joins"]) {
    table.add(
        {join.value("name", join.value("join", "")), degrees_of(join, "deviation_deg"), ok(join)});
  }
  return table.empty() ? "" : "\n" + table.text();
}

std::string limits(const Json& proof) {
  Table table({{"limit"}, {"needed", Align::right}, {"found", Align::right}, {""}});
  for (const Json& limit : proof["limits"]) {
    const std::string sense = limit.value("sense", "") == "at-most" ? "at most " : "at least ";
    table.add({limit.value("name", ""), sense + length(limit, "bound_mm"),
               length(limit, "found_mm"), ok(limit)});
  }
  return table.empty() ? "" : "\n" + table.text();
}

std::string outlines(const Json& proof) {
  Table table({{"outline of"}, {"closed, not crossing, darts equal"}});
  for (const Json& piece : proof["outlines"]) {
    std::string said = ok(piece);
    for (const Json& problem : piece["problems"]) said += "; " + problem.value("what", "");
    table.add({piece.value("piece", ""), said});
  }
  return table.empty() ? "" : "\n" + table.text();
}

std::string moved(const Json& proof) {
  if (proof["moved"].empty()) return "";
  Table table({{"edge that moved"},
               {"most", Align::right},
               {"length before", Align::right},
               {"after", Align::right}});
  std::size_t still = 0;
  for (const Json& edge : proof["moved"]) {
    if (edge.value("same_bits", false)) {
      ++still;
      continue;
    }
    table.add({edge.value("piece", "") + " " + edge.value("edge", ""), length(edge, "most_mm"),
               length(edge, "before_mm"), length(edge, "after_mm")});
  }
  return "\n" + (table.empty() ? "" : table.text()) +
         fmt::format("{} edges are where they were, to the last bit.\n", still);
}

std::string measures(const Json& proof) {
  Table table({{"finished measure"},
               {"before", Align::right},
               {"after", Align::right},
               {"body + ease", Align::right}});
  for (const Json& measure : proof["measures"]) {
    const bool angle = measure.contains("before_deg");
    const auto shown = [&](const char* in_mm, const char* in_deg) {
      if (angle) return degrees_of(measure, in_deg);
      return measure.contains(in_mm) ? cm(measure[in_mm].get<double>()) : std::string("-");
    };
    std::string name = measure.value("name", measure.value("id", ""));
    if (measure.contains("of")) name += " (all round)";
    table.add({name, shown("before_mm", "before_deg"), shown("after_mm", "after_deg"),
               shown("target_mm", "target_deg")});
  }
  return table.empty() ? "" : "\n" + table.text();
}

}  // namespace

std::string say_proof(const Json& proof) {
  std::string out = seams(proof) + bindings(proof) + joins(proof) + limits(proof) +
                    outlines(proof) + moved(proof) + measures(proof) + "\n";
  if (proof.value("pass", false)) return out + "Proof passed: the pieces sew together.\n";
  out += "Proof FAILED:\n";
  for (const Json& failure : proof["failures"]) {
    out += paragraph("  * ", failure.value("place", "") + ": " + failure.value("what", "") + " " +
                                 failure.value("mend", ""));
  }
  return out;
}

std::string say_check(const Json& check) {
  std::string head = "Block " + check.value("block", "");
  if (check["revision"].is_number()) {
    head += ", revision " + std::to_string(check["revision"].get<int>());
  }
  return head + "\n\n" + say_proof(check["proof"]);
}

std::string say_change(const Json& change) {
  std::string out;
  if (change.contains("base_revision")) {
    out = "Preview on block " + change.value("block", "");
    if (change["base_revision"].is_number()) {
      out += ", revision " + std::to_string(change["base_revision"].get<int>());
    }
    out += "; nothing is saved.\n\n";
  }
  if (change.contains("together")) out += say_together(change["together"]) + "\n";
  if (change.contains("tryon") && change["tryon"].is_object() &&
      change["tryon"].contains("together")) {
    out += say_together(change["tryon"]["together"]) + "\n";
  }
  for (const Json& note : change["notes"]) {
    std::string text = note.value("text", "");
    std::string follow;
    for (const Json& piece : note["follow"]) {
      follow += (follow.empty() ? "" : ", ") + piece.get<std::string>();
    }
    if (!follow.empty()) text += " (followed by: " + follow + ")";
    out += paragraph(fmt::format("{:>3}. ", note.value("step", 0) + 1), text);
  }
  out += "\n" + say_proof(change["proof"]);
  if (!change.contains("base_revision")) out += "\n" + say_saved(change);
  return out;
}

}  // namespace pinwright::api::cli
