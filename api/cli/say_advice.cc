#include <fmt/format.h>

#include "api/cli/say.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

std::string text(const Json& value, const char* field) {
  return value.contains(field) && value[field].is_string() ? value[field].get<std::string>() : "";
}

std::string amount(const Json& value) {
  if (value.contains("amount") && value["amount"].is_number()) {
    return fmt::format("{:.2f}", value["amount"].get<double>());
  }
  if (!value.contains("amount_mm") || !value["amount_mm"].is_number()) return "";
  std::string out = mm(value["amount_mm"].get<double>());
  if (const std::string of = text(value, "of"); !of.empty()) out += " " + of;
  return out;
}

std::string findings(const Json& list) {
  Table table({{"sign"}, {"seen"}, {"side"}, {"amount", Table::Align::right}, {"words"}});
  for (const Json& finding : list) {
    std::string state = text(finding, "state");
    if (finding.value("sure", 1.0) < 1.0) state += " (perhaps)";
    if (const std::string posture = text(finding, "posture"); !posture.empty()) {
      state += ", " + posture;
    }
    table.add({text(finding, "sign"), state, text(finding, "side"), amount(finding),
               text(finding, "words")});
  }
  return table.empty() ? "Nothing was found in the words.\n" : table.text();
}

std::string not_understood(const Json& list) {
  std::string out;
  for (const Json& run : list) {
    std::string line = "\"" + text(run, "words") + "\"";
    std::string nearest;
    for (const Json& sign : run["nearest"]) {
      nearest += (nearest.empty() ? "" : ", ") + sign.get<std::string>();
    }
    if (!nearest.empty()) line += " (nearest: " + nearest + ")";
    out += paragraph("Not understood: ", line);
  }
  return out;
}

/// What the reading leaves to be confirmed, asked or minded.
std::string remarks(const Json& heard) {
  std::string out;
  for (const Json& finding : heard["findings"]) {
    const std::string words = text(finding, "words");
    if (finding.value("sure", 1.0) >= 1.0 || words.empty()) continue;
    out += paragraph("Understood: ", "\"" + words + "\" as " + text(finding, "sign") + " (" +
                                         text(finding, "state") +
                                         "), not for certain; say so if it is not meant, or answer "
                                         "with --answer " +
                                         text(finding, "sign") + "=present or =absent");
  }
  for (const char* list : {"ask_back", "contradictions", "beyond_pattern", "style"}) {
    if (!heard.contains(list)) continue;
    for (const Json& item : heard[list]) {
      if (item.is_string()) {
        out += paragraph("The garment: ", item.get<std::string>());
      } else if (item.contains("question")) {
        out += paragraph("To ask: ", text(item, "question"));
        for (const Json& answer : item["answers"]) out += paragraph("  - ", text(answer, "text"));
      } else {
        out += paragraph("Mind: ", text(item, item.contains("note") ? "note" : "what"));
      }
    }
  }
  return out;
}

std::string sources(const Json& list) {
  std::string out;
  for (const Json& source : list) {
    out += (out.empty() ? "" : "; ") + text(source, "key");
    if (const std::string where = text(source, "where"); !where.empty()) out += " " + where;
  }
  return out;
}

std::string causes(const Json& list) {
  std::string out;
  for (const Json& cause : list) {
    out += fmt::format("{:>4.0f} %  {}\n", 100.0 * cause.value("probability", 0.0),
                       text(cause, "name"));
    out += paragraph("        ", "kind: " + text(cause, "kind") + "; id: " + text(cause, "id"));
    for (const Json& reason : cause["for"]) out += paragraph("      + ", text(reason, "text"));
    for (const Json& reason : cause["against"]) out += paragraph("      - ", text(reason, "text"));
    if (const std::string check = text(cause, "check"); !check.empty()) {
      out += paragraph("        ", "check: " + check);
    }
  }
  return out;
}

std::string proposals(const Json& list) {
  std::string out;
  for (const Json& proposal : list) {
    out += paragraph("  * ", text(proposal, "id") + ": " + text(proposal, "name") + " [" +
                                 (proposal.value("on_pattern", false) ? "pattern" : "not pattern") +
                                 ", for " + text(proposal, "cause") + "]");
    if (const std::string suits = text(proposal, "suits"); !suits.empty()) {
      out += paragraph("      ", "suits: " + suits);
    }
    std::size_t number = 0;
    for (const Json& step : proposal["steps"]) {
      std::string line = text(step, "text");
      if (const std::string told = amount(step); !told.empty()) {
        line += " [" + text(step, "operation") + " " + told + "]";
      }
      if (step.value("assumed", false)) line += " (no amount was told: the usual one)";
      if (!step.value("worth_making", true)) line += " (too small to be worth making)";
      if (const std::string limit = text(step, "limit"); !limit.empty()) line += " (" + limit + ")";
      out += paragraph(fmt::format("      {}. ", ++number), line);
    }
    for (const Json& follow : proposal["follow"]) {
      out += paragraph("      then: ", follow.get<std::string>());
    }
    if (const std::string from = sources(proposal["sources"]); !from.empty()) {
      out += paragraph("      source: ", from);
    }
  }
  return out;
}

}  // namespace

std::string say_proposals(const Json& list) { return proposals(list); }

std::string say_findings(const Json& described) {
  return findings(described["findings"]) + not_understood(described["not_understood"]) +
         remarks(described);
}

std::string say_advice(const Json& advice) {
  std::string out = "Block " + text(advice, "block");
  if (advice["revision"].is_number()) {
    out += ", revision " + std::to_string(advice["revision"].get<int>());
  }
  out += "\n\nFindings\n" + say_findings(advice);
  out += "\n" + paragraph("Verdict: ", text(advice, "verdict"));
  if (const Json& best = advice["explanation"]; best.is_object()) {
    out += paragraph("Together: ", text(best, "text"));
  }
  out += "\nCauses\n" + causes(advice["causes"]);
  if (const Json& question = advice["question"]; question.is_object()) {
    out += "\n" + paragraph("Next question: ", text(question, "asks"));
    out += paragraph(
        "  ", "answer with --answer " + text(question, "sign") + "=present, =absent or =unknown");
    const auto left = advice["questions_left"].get<std::size_t>();
    out +=
        paragraph("  ", left == 1 ? "the last question" : fmt::format("{} questions left", left));
  } else if (const std::string stopped = text(advice, "stopped"); !stopped.empty()) {
    out += "\n" + paragraph("Questions: ", stopped);
  }
  if (!advice["proposals"].empty()) out += "\nProposals\n" + proposals(advice["proposals"]);
  if (advice.contains("together")) out += "\n" + say_together(advice["together"]);
  for (const Json& caution : advice["cautions"]) {
    out += paragraph("\nMind: ", caution.get<std::string>());
  }
  return out;
}

}  // namespace pinwright::api::cli
