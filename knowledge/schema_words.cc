#include "knowledge/schema_words.h"

#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <regex>
#include <vector>

#include "engine/base/nearest_word.h"

namespace pinwright::knowledge {

extern const char* const kKnowledgeSchema;

namespace {

using nlohmann::json;
using Kind = YamlNode::Kind;

const json& schema_json() {
  static const json* const kSchema = new json(json::parse(kKnowledgeSchema));
  return *kSchema;
}

std::string quoted(const std::string& text) {
  return "\"" + (text.size() > 60 ? text.substr(0, 57) + "..." : text) + "\"";
}

std::optional<double> number_in(const YamlNode& node) {
  double x = 0.0;
  const char* end = node.text.data() + node.text.size();
  const auto [stop, error] = std::from_chars(node.text.data(), end, x);
  if (node.quoted || node.text.empty() || error != std::errc{} || stop != end) return std::nullopt;
  return std::isfinite(x) ? std::optional(x) : std::nullopt;
}

std::string said_number(double x) {
  char text[32];
  const auto [end, error] = std::to_chars(text, text + sizeof text, x);
  return error == std::errc{} ? std::string(text, end) : "";
}

/// What stands there, as its writer would call it.
std::string shown(const YamlNode& node) {
  switch (node.kind) {
    case Kind::null:
      return "nothing";
    case Kind::list:
      return "a list";
    case Kind::map:
      return "fields with values";
    case Kind::scalar:
      break;
  }
  return node.text.empty() ? "nothing" : quoted(node.text);
}

bool is_nothing(const YamlNode& node) {
  return node.kind == Kind::null ||
         (node.kind == Kind::scalar && !node.quoted &&
          (node.text.empty() || node.text == "~" || node.text == "null"));
}

class Walker {
 public:
  explicit Walker(const std::string& file) : file_(file) {}

  /// `name` is what the value is called: "sign front-neckline-gapes", "`leak` of sign ...".
  void walk(const json& given, const YamlNode& node, const std::string& name) {
    const json& rule = resolved(given);
    if (rule.contains("enum")) return one_of(rule["enum"], node, name);
    const std::string type =
        rule.contains("type") && rule["type"].is_string() ? rule["type"].get<std::string>() : "";
    if (type == "object") return object(rule, node, name);
    if (type == "array") return list(rule, node, name);
    if (type == "string") return text(rule, node, name);
    if (type == "number") return number(rule, node, name);
    if (type == "boolean" && (node.quoted || (node.text != "true" && node.text != "false")))
      say(node, name + " is " + shown(node), "write true or false");
    if (type.empty() && node.kind != Kind::scalar)
      say(node, name + " is " + shown(node), "write a text or a number");
  }

  Problems take() { return std::move(problems_); }

 private:
  static const json& resolved(const json& rule) {
    if (!rule.contains("$ref")) return rule;
    const std::string ref = rule["$ref"].get<std::string>();  // "#/definitions/id"
    return schema_json()["definitions"][ref.substr(ref.rfind('/') + 1)];
  }

  void say(const YamlNode& node, std::string what, std::string mend) {
    const int line = node.key_line > 0 ? node.key_line : node.line;
    problems_.push_back({"schema", at_line(file_, line), std::move(what), std::move(mend)});
  }

  void one_of(const json& values, const YamlNode& node, const std::string& name) {
    std::string all;
    std::vector<std::string> known;
    for (const json& value : values) {
      known.push_back(value.get<std::string>());
      if (node.kind == Kind::scalar && node.text == known.back()) return;
      all += (all.empty() ? "" : ", ") + known.back();
    }
    say(node, name + " is " + shown(node), "write one of: " + all);
  }

  void text(const json& rule, const YamlNode& node, const std::string& name) {
    if (node.kind != Kind::scalar || is_nothing(node))
      return say(node, name + " is " + shown(node), "write a text there");
    if (!node.quoted && (number_in(node) || node.text == "true" || node.text == "false"))
      return say(node, name + " is " + node.text + ", which YAML does not read as a text",
                 "put it into quotes, if it is meant as a text");
    if (rule.contains("pattern") &&
        !std::regex_match(node.text, std::regex(rule["pattern"].get<std::string>())))
      say(node, name + " is " + quoted(node.text),
          "write lower-case words (a to z, 0 to 9) joined by single hyphens");
    if (rule.contains("maxLength") && node.text.size() > rule["maxLength"].get<std::size_t>())
      say(node,
          name + " is longer than " + std::to_string(rule["maxLength"].get<int>()) + " characters",
          "say it shorter");
  }

  void number(const json& rule, const YamlNode& node, const std::string& name) {
    const auto value = node.kind == Kind::scalar ? number_in(node) : std::nullopt;
    const std::string range = "write a plain number from " +
                              said_number(rule.value("minimum", 0.0)) + " to " +
                              said_number(rule.value("maximum", 1e9));
    if (!value || *value < rule.value("minimum", *value) || *value > rule.value("maximum", *value))
      say(node, name + " is " + shown(node), range);
  }

  void list(const json& rule, const YamlNode& node, const std::string& name) {
    if (node.kind != Kind::list)
      return say(node, name + " is " + shown(node) + ", where a list belongs",
                 "begin each item with - on a line of its own, or write [one, two]");
    const std::size_t least = rule.value("minItems", std::size_t{0});
    if (node.items.size() < least)
      say(node, name + (node.items.empty() ? " is empty" : " has too few items"),
          "give at least " + std::to_string(least));
    for (std::size_t i = 0; i < node.items.size(); ++i)
      walk(rule["items"], node.items[i], item_name(node.items[i], name, i));
  }

  /// "signs" -> "sign front-neckline-gapes", "`phrases` of sign x" -> its third.
  static std::string item_name(const YamlNode& item, const std::string& of, std::size_t i) {
    const std::string nth = "item " + std::to_string(i + 1) + " of " + of;
    const YamlNode* id = item.find("id");
    if (id == nullptr) id = item.find("sign");
    return id != nullptr && id->kind == Kind::scalar && !id->text.empty()
               ? nth + " (" + id->text.substr(0, 64) + ")"
               : nth;
  }

  void object(const json& rule, const YamlNode& node, const std::string& name) {
    if (node.kind != Kind::map)
      return say(node, name + " is " + shown(node) + ", where fields with values belong",
                 "write \"field: value\" lines; mind the colon and the space after it");
    const json empty = json::object();
    const json& fields = rule.contains("properties") ? rule["properties"] : empty;
    std::vector<std::string> known;
    for (const auto& [key, unused] : fields.items()) known.push_back(key);
    const bool free =
        rule.contains("additionalProperties") && rule["additionalProperties"].is_object();
    for (const auto& [key, value] : node.entries) {
      const std::string inner = name == kFile ? "`" + key + "`" : "`" + key + "` of " + name;
      if (fields.contains(key))
        walk(fields[key], value, inner);
      else if (free)
        walk(rule["additionalProperties"], value, inner);
      else
        say(value, quoted(key) + " is no field of " + name,
            "did you mean `" + nearest_word(key, known) + "`? See knowledge/FORMAT.md");
    }
    if (!rule.contains("required")) return;
    for (const json& key : rule["required"])
      if (node.find(key.get<std::string>()) == nullptr)
        say(node, name + " has no `" + key.get<std::string>() + "`", "add it");
  }

 public:
  static constexpr const char* kFile = "the file";

 private:
  std::string file_;
  Problems problems_;
};

}  // namespace

Problems say_departures(const YamlNode& tree, const std::string& file) {
  Walker walker(file);
  walker.walk(schema_json(), tree, Walker::kFile);
  return walker.take();
}

}  // namespace pinwright::knowledge
