#include "api/cli/requests.h"

#include <charconv>
#include <sstream>

#include "api/cli/session.h"
#include "api/exchange/amount_text.h"
#include "engine/alteration/catalogue.h"

namespace pinwright::api::cli {

namespace {

void add(Problems& to, const Problems& from) { to.insert(to.end(), from.begin(), from.end()); }

/// NAME=VALUE split at the first "="; both empty when there is none.
std::pair<std::string, std::string> split(const std::string& text) {
  const std::size_t at = text.find('=');
  if (at == std::string::npos || at == 0) return {};
  return {text.substr(0, at), text.substr(at + 1)};
}

void put_file(const std::string& path, const char* field, Json& out, Problems& problems) {
  if (path.empty()) return;
  auto json = read_json_file(path);
  add(problems, json.problems());
  if (json) out[field] = std::move(json).value();
}

/// A findings file may be the list itself or an object that holds it (an answer of ours).
void put_list(const std::string& path, const char* field, Json& out, Problems& problems) {
  put_file(path, field, out, problems);
  if (!out.contains(field)) return;
  Json& read = out[field];
  if (read.is_object() && read.contains(field)) read = Json(read[field]);
}

void put_fabric(const Options& options, Json& out, Problems& problems) {
  if (options.fabric.empty()) return;
  if (is_file(options.fabric)) {
    put_file(options.fabric, "fabric", out, problems);
  } else {
    out["fabric"] = options.fabric;
  }
}

void put_told(const Options& options, Json& out, Problems& problems) {
  if (!options.words.empty()) out["words"] = options.words;
  put_list(options.findings, "findings", out, problems);
  for (const std::string& answer : options.answers) {
    const auto [sign, state] = split(answer);
    if (sign.empty()) {
      problems.push_back({"answer-malformed", "--answer " + answer, "This is no answer.",
                          "Write --answer SIGN=present, SIGN=absent or SIGN=unknown."});
    } else {
      out["answers"][sign] = state;
    }
  }
  put_file(options.wearer, "wearer", out, problems);
  put_fabric(options, out, problems);
  if (!options.style.empty()) out["style"] = options.style;
}

std::optional<double> plain_number(const std::string& text) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

void put_amounts(const Options& options, Json& out) {
  for (const std::string& amount : options.amounts) {
    const auto plain = plain_number(amount);
    out["amounts"].push_back(amount == "-" ? Json() : plain ? Json(*plain) : Json(amount));
  }
}

void put_together(const Options& options, Json& out) {
  if (!options.together) return;
  if (options.proposals.empty() && !options.body) {
    out["together"] = true;
    return;
  }
  Json& wish = out["together"] = Json::object();
  if (!options.proposals.empty()) wish["proposals"] = options.proposals;
  if (options.body) wish["body"] = true;
}

/// What only goes with --together.
void refuse_apart(const Options& options, std::size_t most_proposals, Problems& problems) {
  if (options.together) return;
  if (options.proposals.size() > most_proposals) {
    problems.push_back({"together-missing", "--proposal",
                        most_proposals == 0 ? "Advice gives all proposals by itself."
                                            : "More than one proposal is named.",
                        "Add --together to size them together."});
  }
  if (options.body) {
    problems.push_back({"together-missing", "--body",
                        "Body + ease is met by several steps sized together.", "Add --together."});
  }
}

void put_measures(const Options& options, Json& out, Problems& problems) {
  Json body = Json::object();
  if (!options.measurements.empty()) {
    const auto read = read_json_file(options.measurements);
    add(problems, read.problems());
    if (read && read->is_object() && read->contains("body")) {
      out["wearer"] = *read;
      body = (*read)["body"];
    } else if (read) {
      body = *read;
    }
  }
  for (const std::string& measure : options.measures) {
    const auto [name, value] = split(measure);
    if (name.empty()) {
      problems.push_back({"measure-malformed", "--measure " + measure, "This is no measurement.",
                          "Write --measure NAME=VALUE with a unit, e.g. bust-girth=92cm."});
    } else if (body.is_object()) {
      body[name] = value;
    }
  }
  if (out.contains("wearer")) {
    out["wearer"]["body"] = std::move(body);
  } else {
    out["measurements"] = std::move(body);
  }
}

void put_ease(const Options& options, Json& out, Problems& problems) {
  for (const std::string& ease : options.ease) {
    const auto [name, value] = split(ease);
    const auto mm =
        name.empty()
            ? Result<double>(Problem{"measure-malformed", "--ease " + ease, "This is no ease.",
                                     "Write --ease NAME=VALUE with a unit, e.g. "
                                     "bust-girth=6cm."})
            : read_amount(value, "--ease " + ease);
    add(problems, mm.problems());
    if (mm) out["ease"][name] = *mm;
  }
}

}  // namespace

Result<Json> told_request(const Options& options) {
  Json out = Json::object();
  Problems problems;
  put_told(options, out, problems);
  put_together(options, out);
  refuse_apart(options, 0, problems);
  if (!problems.empty()) return problems;
  return out;
}

Result<Json> step_from_text(const std::string& text, const std::string& place) {
  Json step = Json::object();
  Problems problems;
  std::istringstream words(text);
  std::string word;
  words >> word;
  step["operation"] = word;
  std::string last;
  while (words >> word) {
    const auto [key, value] = split(word);
    if (!key.empty()) {
      if (step.contains(key)) {
        problems.push_back({"step-malformed", place, "\"" + key + "\" stands twice in the step.",
                            "Leave one of the two."});
      }
      step[key] = value;
      last = key;
    } else if (!last.empty()) {
      step[last] = step[last].get<std::string>() + " " + word;
    } else {
      problems.push_back({"step-malformed", place, "\"" + word + "\" belongs to nothing.",
                          "Write the operation, then key=value pairs: \"close-wedge piece=front "
                          "edge=neckline hinge=bust-point amount=9mm of=half\"."});
    }
  }
  const OperationInfo* operation = find_operation(step["operation"].get<std::string>());
  const bool ratio = operation != nullptr && operation->amount == AmountKind::ratio;
  if (step.contains("amount")) {
    // A bare number is a ratio; where a length is wanted it is refused for want of a unit.
    const auto plain = plain_number(step["amount"].get<std::string>());
    if (plain && ratio) step["amount"] = *plain;
  }
  if (!problems.empty()) return problems;
  return step;
}

Result<Json> foresight_request(const Options& options) {
  Json out = Json::object();
  Problems problems;
  put_file(options.wearer, "wearer", out, problems);
  put_fabric(options, out, problems);
  if (!problems.empty()) return problems;
  return out;
}

Result<Json> change_request(const Options& options) {
  Json out = Json::object();
  Problems problems;
  put_together(options, out);
  if (!options.together && !options.proposals.empty()) {
    out["proposal"] = options.proposals.front();
  }
  refuse_apart(options, 1, problems);
  put_list(options.steps, "steps", out, problems);
  if (!options.step.empty() && !out.contains("steps")) out["steps"] = Json::array();
  for (std::size_t i = 0; i < options.step.size(); ++i) {
    auto step = step_from_text(options.step[i], "--step " + std::to_string(i + 1));
    add(problems, step.problems());
    if (step && out["steps"].is_array()) out["steps"].push_back(std::move(step).value());
  }
  put_amounts(options, out);
  put_told(options, out, problems);
  if (!problems.empty()) return problems;
  return out;
}

Result<Json> draft_request(const Options& options) {
  Json out = {{"kind", options.kind}, {"id", options.id.empty() ? options.kind : options.id}};
  Problems problems;
  if (!options.name.empty()) out["name"] = options.name;
  if (!options.size.empty()) out["size"] = options.size;
  put_measures(options, out, problems);
  put_fabric(options, out, problems);
  put_ease(options, out, problems);
  if (options.save) {
    out["save"] = true;
    if (!options.author.empty()) out["author"] = options.author;
    if (!options.reason.empty()) out["reason"] = options.reason;
  }
  if (!problems.empty()) return problems;
  return out;
}

}  // namespace pinwright::api::cli
