#include <fmt/format.h>

#include "api/cli/say.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

std::string say_knowledge(const Json& overview) {
  std::string out;
  for (const auto& [section, ids] : overview.items()) {
    if (section == "layers") continue;  // said at the end
    std::string list;
    for (const Json& id : ids) list += (list.empty() ? "" : ", ") + id.get<std::string>();
    out += fmt::format("{} ({})\n", section, ids.size()) + paragraph("  ", list);
  }
  return out + say_layers(overview["layers"]);
}

std::string say_layers(const Json& layers) {
  std::string out;
  for (const Json& layer : layers) {
    out += fmt::format("{}\n", layer["folder"].get<std::string>());
    if (!layer.contains("entries")) continue;
    for (const auto& [sort, ids] : layer["entries"].items()) {
      std::string list;
      for (const Json& id : ids) list += (list.empty() ? "" : ", ") + id.get<std::string>();
      out += paragraph("  " + sort + ": ", list);
    }
    if (layer["entries"].empty()) out += "  nothing of its own\n";
    for (const Json& one : layer["replaces"])
      out += paragraph("  replaces ", one["entry"].get<std::string>() + " " +
                                          one["id"].get<std::string>() + " of " +
                                          one["was"].get<std::string>());
  }
  return out;
}

std::string say_section(const Json& section) {
  if (section.contains("layers")) return say_layers(section["layers"]);
  Table table({{"id"}, {"name"}});
  for (const auto& [name, entries] : section.items()) {
    for (const Json& entry : entries) table.add({entry.value("id", ""), entry.value("name", "")});
  }
  return table.text();
}

namespace {

std::string flat(const Json& value) {
  return value.is_string() ? value.get<std::string>()
                           : value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

void say_fields(const Json& value, const std::string& indent, std::string& out);

void say_item(const Json& item, const std::string& indent, std::string& out) {
  if (!item.is_object()) {
    out += paragraph(indent + "- ", flat(item));
    return;
  }
  std::string inner;
  say_fields(item, indent + "  ", inner);
  if (inner.size() > indent.size()) inner[indent.size()] = '-';
  out += inner;
}

void say_fields(const Json& value, const std::string& indent, std::string& out) {
  for (const auto& [name, field] : value.items()) {
    if (field.is_null() || (field.is_structured() && field.empty())) continue;
    if (field.is_array()) {
      out += indent + name + ":\n";
      for (const Json& item : field) say_item(item, indent + "  ", out);
    } else if (field.is_object()) {
      out += indent + name + ":\n";
      say_fields(field, indent + "  ", out);
    } else {
      out += paragraph(indent + name + ": ", flat(field));
    }
  }
}

}  // namespace

std::string say_entry(const Json& entry) {
  std::string out;
  say_fields(entry, "", out);
  return out;
}

}  // namespace pinwright::api::cli
