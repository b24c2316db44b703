#include "api/exchange/schema_check.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include "api/exchange/block_schema.h"
#include "engine/base/nearest_word.h"

namespace pinwright::api {
namespace {

constexpr std::size_t kMostTold = 100;
/// The regular expressions of the C++ library recurse once a character: no string may be long when
/// a pattern is tried on it. Longer than any field of the schema.
constexpr std::size_t kMostPatternBytes = 2048;

using Plain = nlohmann::json;
using Path = std::vector<std::string>;

const Plain& schema_json() {
  static const Plain schema = Plain::parse(block_schema_text());
  return schema;
}

const valijson::Schema& compiled_schema() {
  static const valijson::Schema& schema = *[] {
    auto* made = new valijson::Schema;
    valijson::SchemaParser parser(valijson::SchemaParser::kDraft7);
    const valijson::adapters::NlohmannJsonAdapter adapter(schema_json());
    parser.populateSchema(adapter, *made);
    return made;
  }();
  return schema;
}

/// The sub-schema that a place of the document has to meet, or nullptr for an unknown field.
const Plain* sub_schema(const Path& path) {
  const Plain& root = schema_json();
  const auto follow = [&](const Plain* s) {
    while (s != nullptr && s->contains("$ref")) {
      s = &root.at(Plain::json_pointer(s->at("$ref").get<std::string>().substr(1)));
    }
    return s;
  };
  const Plain* at = follow(&root);
  for (const std::string& key : path) {
    const Plain* next = nullptr;
    if (at->contains("properties") && at->at("properties").contains(key)) {
      next = &at->at("properties").at(key);
    } else if (at->contains("items")) {
      next = &at->at("items");
    } else if (at->contains("additionalProperties") && at->at("additionalProperties").is_object()) {
      next = &at->at("additionalProperties");
    }
    if (next == nullptr) return nullptr;
    at = follow(next);
  }
  return at;
}

const Plain* value_at(const Plain& document, const Path& path) {
  const Plain* at = &document;
  for (const std::string& key : path) {
    if (at->is_array()) {
      at = &at->at(std::stoul(key));
    } else if (at->is_object() && at->contains(key)) {
      at = &at->at(key);
    } else {
      return nullptr;
    }
  }
  return at;
}

std::string pointer(const Path& path) {
  std::string out;
  for (const std::string& key : path) out = member(out, key);
  return out;
}

std::string shown(const Plain& value) {
  if (value.is_object()) return "an object";
  if (value.is_array()) return "a list";
  std::string text = value.dump(-1, ' ', false, Plain::error_handler_t::replace);
  if (text.size() > 60) text = text.substr(0, 57) + "...";
  return text;
}

std::string kind_in_words(const Plain& type) {
  static const std::map<std::string, std::string> words = {
      {"object", "an object"}, {"array", "a list"},           {"string", "text in quotes"},
      {"number", "a number"},  {"integer", "a whole number"}, {"boolean", "true or false"}};
  const auto found = words.find(type.get<std::string>());
  return found == words.end() ? type.get<std::string>() : found->second;
}

std::string number_text(const Plain& bound) { return bound.dump(); }

std::string range_in_words(const Plain& schema) {
  std::string out;
  if (schema.contains("exclusiveMinimum")) {
    out = "more than " + number_text(schema["exclusiveMinimum"]);
  } else if (schema.contains("minimum")) {
    out = "at least " + number_text(schema["minimum"]);
  }
  if (schema.contains("maximum")) {
    out += (out.empty() ? "at most " : " and at most ") + number_text(schema["maximum"]);
  }
  return out;
}

std::string size_in_words(const Plain& schema, const char* least, const char* most,
                          const std::string& unit) {
  std::string out;
  if (schema.contains(least)) out = "at least " + schema[least].dump();
  if (schema.contains(most)) {
    out += (out.empty() ? "at most " : " and at most ") + schema[most].dump();
  }
  return out + " " + unit;
}

std::string list_of_values(const Plain& schema) {
  if (schema.contains("const")) return schema["const"].dump();
  std::string out;
  for (const Plain& value : schema["enum"]) out += (out.empty() ? "" : ", ") + value.dump();
  return out;
}

/// What is meant by the field, from the schema's own description; may be empty.
std::string meaning(const Plain& schema) {
  if (!schema.contains("description")) return "";
  return " (" + schema["description"].get<std::string>() + ")";
}

bool starts(std::string_view text, std::string_view head) {
  return text.substr(0, head.size()) == head;
}

std::vector<std::string> unknown_fields(const Plain& value, const Plain& schema) {
  std::vector<std::string> out;
  if (!value.is_object() || !schema.contains("properties")) return out;
  for (const auto& item : value.items()) {
    if (!schema["properties"].contains(item.key())) out.push_back(item.key());
  }
  return out;
}

class Teller {
 public:
  explicit Teller(const Plain& document) : document_(document) {}

  void tell(const valijson::ValidationResults::Error& error) {
    Path path;
    for (std::size_t i = 1; i < error.context.size(); ++i) {
      const std::string& part = error.context[i];  // "[key]"
      path.push_back(part.substr(1, part.size() - 2));
    }
    const std::string& text = error.description;
    if (starts(text, "Failed to validate")) return;  // only repeats what is told further in
    const Plain* value = value_at(document_, path);
    const Plain* schema = sub_schema(path);
    if (value == nullptr) return;
    if (schema == nullptr) schema = &schema_json()["definitions"]["id"];  // a key of a map
    if (starts(text, "Missing required")) {
      const std::string field =
          text.substr(text.find('\'') + 1, text.rfind('\'') - text.find('\'') - 1);
      path.push_back(field);
      const Plain* wanted = sub_schema(path);
      add("field-missing", path, "The field \"" + field + "\" is missing.",
          "Add it" + (wanted == nullptr ? "" : meaning(*wanted)) + ".");
    } else if (starts(text, "Object contains a property")) {
      for (const std::string& field : unknown_fields(*value, *schema)) {
        std::vector<std::string> known;
        for (const auto& item : (*schema)["properties"].items()) known.push_back(item.key());
        Path place = path;
        place.push_back(field);
        add("field-unknown", place, "There is no field \"" + field.substr(0, 64) + "\" here.",
            "Take it out; did you mean \"" + nearest_word(field, known) + "\"?");
      }
    } else {
      tell_value(text, path, *value, *schema);
    }
  }

  Problems take() { return std::move(problems_); }

 private:
  void tell_value(const std::string& text, const Path& path, const Plain& value,
                  const Plain& schema) {
    if (starts(text, "Value type not permitted")) {
      add("type-wrong", path, "Here stands " + shown(value) + ".",
          "Write " + kind_in_words(schema.value("type", Plain("string"))) + meaning(schema) + ".");
    } else if (text.find("enum values") != std::string::npos ||
               text.find("'const'") != std::string::npos) {
      add("value-unknown", path, shown(value) + " is not known here.",
          "Use one of: " + list_of_values(schema) + ".");
    } else if (starts(text, "Expected number")) {
      add("value-range", path, shown(value) + " is out of range.",
          "Write a number of " + range_in_words(schema) + meaning(schema) + ".");
    } else if (text.find("'pattern'") != std::string::npos) {
      add("id-malformed", path, shown(value) + " is not written as an id.",
          "Use lower-case letters and digits, parts joined by single hyphens: neck-binding.");
    } else if (starts(text, "Array should")) {
      add("list-size", path, "The list has " + std::to_string(value.size()) + " entries.",
          "Give " + size_in_words(schema, "minItems", "maxItems", "entries") + ".");
    } else if (starts(text, "String should")) {
      add("text-size", path, "The text " + shown(value) + " is too short or too long.",
          "Give " + size_in_words(schema, "minLength", "maxLength", "characters") + ".");
    } else {
      add("value-range", path, shown(value) + " does not fit the block format.",
          "Compare it with the published schema" + meaning(schema) + ".");
    }
  }
  void add(const char* code, const Path& path, std::string what, std::string mend) {
    Problem problem{code, pointer(path), std::move(what), std::move(mend)};
    if (!told_.insert(problem.code + " " + problem.place).second) return;
    if (problems_.size() < kMostTold) problems_.push_back(std::move(problem));
  }

  const Plain& document_;
  Problems problems_;
  std::set<std::string> told_;
};

/// Keys of maps (measurement names): valijson refuses them without saying which.
void check_map_keys(const Plain& map, const std::string& place, Problems& out) {
  if (!map.is_object()) return;
  const auto word = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); };
  for (const auto& item : map.items()) {
    const std::string& key = item.key();
    bool good = !key.empty() && key.size() <= 64 && word(key.front()) && word(key.back());
    for (std::size_t i = 0; i < key.size() && good; ++i) {
      good = word(key[i]) || (key[i] == '-' && key[i - 1] != '-');
    }
    if (!good) {
      out.push_back({"id-malformed", member(place, key), "The name is not written as an id.",
                     "Use the ISO 8559-1 name in kebab-case: bust-girth."});
    }
  }
}

/// Strings too long for the pattern matcher, told before it is run.
void check_lengths(const Plain& value, const std::string& place, Problems& out) {
  if (out.size() >= kMostTold) return;
  if (value.is_string() && value.get_ref<const std::string&>().size() > kMostPatternBytes) {
    out.push_back({"text-size", place, "The text is far too long for its field.",
                   "Give at most 200 characters."});
  } else if (value.is_object()) {
    for (const auto& item : value.items()) {
      if (item.key().size() > kMostPatternBytes) {
        out.push_back({"field-unknown", place, "A field's name is far too long.", "Take it out."});
      } else {
        check_lengths(item.value(), member(place, item.key()), out);
      }
    }
  } else if (value.is_array() && !value.empty()) {
    std::size_t i = 0;
    for (const Plain& item : value) check_lengths(item, member(place, i++), out);
  }
}

}  // namespace

Problems check_against_block_schema(const Json& value) {
  const Plain document(value);
  Problems long_texts;
  check_lengths(document, "", long_texts);
  if (!long_texts.empty()) return long_texts;

  valijson::Validator validator;
  valijson::ValidationResults results;
  const valijson::adapters::NlohmannJsonAdapter adapter(document);
  if (validator.validate(compiled_schema(), adapter, &results)) return {};
  Teller teller(document);
  for (const auto& error : results) teller.tell(error);
  Problems problems = teller.take();
  if (document.is_object()) {
    if (document.contains("ease_mm")) check_map_keys(document["ease_mm"], "/ease_mm", problems);
    if (document.contains("drafted_for") && document["drafted_for"].is_object() &&
        document["drafted_for"].contains("body")) {
      check_map_keys(document["drafted_for"]["body"], "/drafted_for/body", problems);
    }
  }
  if (problems.empty()) {
    problems.push_back({"value-range", "", "The text does not fit the block format.",
                        "Compare it with the published schema."});
  }
  return problems;
}

}  // namespace pinwright::api
