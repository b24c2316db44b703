#include "knowledge/schema_check.h"

#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>
#include <vector>

#include "knowledge/schema_words.h"

namespace pinwright::knowledge {

extern const char* const kKnowledgeSchema;

namespace {

using nlohmann::json;
using Path = std::vector<std::string>;

/// A plain scalar as YAML's core schema reads it: null, true / false, a number, else text.
json scalar(const YamlNode& node) {
  if (node.quoted) return node.text;
  if (node.text == "true") return true;
  if (node.text == "false") return false;
  if (node.text.empty() || node.text == "null" || node.text == "~") return nullptr;
  double value = 0.0;
  const char* end = node.text.data() + node.text.size();
  const auto [stop, error] = std::from_chars(node.text.data(), end, value);
  if (error == std::errc{} && stop == end && std::isfinite(value)) return value;
  return node.text;
}

json to_json(const YamlNode& node) {
  switch (node.kind) {
    case YamlNode::Kind::null:
      return nullptr;
    case YamlNode::Kind::scalar:
      return scalar(node);
    case YamlNode::Kind::list: {
      json list = json::array();
      for (const auto& item : node.items) list.push_back(to_json(item));
      return list;
    }
    case YamlNode::Kind::map: {
      json map = json::object();
      for (const auto& [key, value] : node.entries) map[key] = to_json(value);
      return map;
    }
  }
  return nullptr;
}

/// The validator writes a path as <root>, [signs], [0], [name]: without the brackets here.
Path path_of(const std::vector<std::string>& context) {
  Path path;
  for (const auto& part : context)
    if (part.size() >= 2 && part.front() == '[') path.push_back(part.substr(1, part.size() - 2));
  return path;
}

int line_of(const YamlNode& tree, const Path& path) {
  const YamlNode* node = &tree;
  for (const auto& part : path) {
    const YamlNode* next = nullptr;
    if (node->kind == YamlNode::Kind::map) {
      next = node->find(part);
    } else if (node->kind == YamlNode::Kind::list) {
      std::size_t i = 0;
      const auto [stop, error] = std::from_chars(part.data(), part.data() + part.size(), i);
      if (error == std::errc{} && stop == part.data() + part.size() && i < node->items.size())
        next = &node->items[i];
    }
    if (next == nullptr) break;
    node = next;
  }
  return node->line;
}

std::string written(const Path& path) {
  std::string text;
  for (const auto& part : path) text += (text.empty() ? "" : "/") + part;
  return text.empty() ? "the file" : text;
}

/// The schema parsed once; it is never changed afterwards.
const valijson::Schema& schema() {
  static const valijson::Schema* const kSchema = [] {
    static const json kText = json::parse(kKnowledgeSchema);
    auto* s = new valijson::Schema;  // lives as long as the program
    valijson::adapters::NlohmannJsonAdapter adapter(kText);
    valijson::SchemaParser(valijson::SchemaParser::kDraft7).populateSchema(adapter, *s);
    return s;
  }();
  return *kSchema;
}

}  // namespace

Problems check_schema(const YamlNode& tree, const std::string& file) {
  const json value = to_json(tree);
  const valijson::adapters::NlohmannJsonAdapter adapter(value);
  valijson::ValidationResults results;
  valijson::Validator validator;
  if (validator.validate(schema(), adapter, &results)) return {};

  // The words are those of say_departures; the validator's own only where it found nothing.
  Problems problems = say_departures(tree, file);
  valijson::ValidationResults::Error error;
  while (problems.empty() && results.popError(error)) {
    const Path path = path_of(error.context);
    problems.push_back({"schema", at_line(file, line_of(tree, path)),
                        written(path) + ": " + error.description,
                        "write it as knowledge/FORMAT.md says"});
  }
  if (problems.empty())
    problems.push_back({"schema", at_line(file, tree.line), "the file departs from the schema",
                        "write it as knowledge/FORMAT.md says"});
  return problems;
}

}  // namespace pinwright::knowledge
