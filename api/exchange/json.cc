#include "api/exchange/json.h"

namespace pinwright::api {
namespace {

bool is_flat(const Json& value) {
  if (!value.is_structured()) return true;
  if (!value.is_array() || value.size() > 4) return false;
  for (const Json& item : value) {
    if (item.is_structured()) return false;
  }
  return true;
}

std::string flat(const Json& value) {
  // bytes that are no text cannot stop an answer: they are replaced
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

void write(const Json& value, std::size_t indent, std::string& out) {
  if (is_flat(value) || value.empty()) {
    out += flat(value);
    return;
  }
  const std::string inner(indent + 1, ' ');
  const bool object = value.is_object();
  out += object ? "{" : "[";
  bool first = true;
  for (auto it = value.begin(); it != value.end(); ++it) {
    out += first ? "\n" : ",\n";
    first = false;
    out += inner;
    if (object) out += flat(Json(it.key())) + ": ";
    write(*it, indent + 1, out);
  }
  out += "\n" + std::string(indent, ' ') + (object ? "}" : "]");
}

}  // namespace

std::string member(std::string_view base, std::string_view key) {
  std::string out(base);
  out += '/';
  for (const char c : key) {
    if (c == '~') {
      out += "~0";
    } else if (c == '/') {
      out += "~1";
    } else {
      out += c;
    }
  }
  return out;
}

std::string member(std::string_view base, std::size_t index) {
  return std::string(base) + "/" + std::to_string(index);
}

Json problems_to_json(const Problems& problems) {
  Json out = Json::array();
  for (const Problem& p : problems) {
    out.push_back({{"code", p.code}, {"place", p.place}, {"what", p.what}, {"mend", p.mend}});
  }
  return out;
}

std::string dump(const Json& value) {
  std::string out;
  write(value, 0, out);
  out += '\n';
  return out;
}

}  // namespace pinwright::api
