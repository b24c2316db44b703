#include "api/http/headers.h"

#include <algorithm>
#include <cctype>
#include <charconv>

namespace pinwright::api {

namespace {

std::string trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t");
  if (from == std::string_view::npos) return {};
  return std::string(text.substr(from, text.find_last_not_of(" \t") - from + 1));
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

bool printable(const std::string& text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c > ' ' && c < '\x7f'; });
}

}  // namespace

Result<Base> if_match(const HttpRequest& request) {
  const std::string value = trimmed(request.header("if-match"));
  if (value.empty() || value == "*") {
    return Problem{"base-missing", "header If-Match",
                   "It was not said on which revision the change was previewed.",
                   "Send If-Match with the ETag of that revision; the preview tells it."};
  }
  if (value.starts_with("W/")) return Base{0, value};
  const bool quoted = value.size() > 2 && value.front() == '"' && value.back() == '"';
  const std::string tag = quoted ? value.substr(1, value.size() - 2) : std::string();
  if (!quoted || tag.find('"') != std::string::npos || !printable(tag) ||
      request.headers.count("if-match") > 1) {
    return Problem{"header-malformed", "header If-Match",
                   "If-Match does not hold exactly one entity tag.",
                   "Write one ETag with its double quotes, as it was answered."};
  }
  return Base{0, tag};
}

bool if_none_match(const HttpRequest& request, const std::string& quoted_etag) {
  const std::string value = request.header("if-none-match");
  if (trimmed(value) == "*") return true;
  std::size_t from = 0;
  while (from < value.size()) {
    const std::size_t comma = std::min(value.find(',', from), value.size());
    std::string tag = trimmed(std::string_view(value).substr(from, comma - from));
    if (tag.starts_with("W/")) tag.erase(0, 2);
    if (tag == quoted_etag) return true;
    from = comma + 1;
  }
  return false;
}

Result<std::string> idempotency_key(const HttpRequest& request) {
  if (!request.has_header("idempotency-key")) return std::string();
  std::string key = trimmed(request.header("idempotency-key"));
  if (key.size() >= 2 && key.front() == '"' && key.back() == '"')
    key = key.substr(1, key.size() - 2);
  if (key.empty() || key.size() > 200 || !printable(key)) {
    return Problem{"header-malformed", "header Idempotency-Key",
                   "The key is empty, too long or holds odd characters.",
                   "Use 1 to 200 printable ASCII characters without spaces, e.g. a UUID."};
  }
  return key;
}

Result<int> query_number(const HttpRequest& request, const std::string& name, int otherwise) {
  const auto found = request.query.find(name);
  if (found == request.query.end()) return otherwise;
  const std::string& text = found->second;
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || value < 1 ||
      request.query.count(name) > 1) {
    return Problem{"query-malformed", "query " + name,
                   "\"" + text.substr(0, 40) + "\" is no number of a revision.",
                   "Write a whole number from 1 on, once."};
  }
  return value;
}

bool wants_svg(const HttpRequest& request) {
  const std::string accept = lower(request.header("accept"));
  const std::size_t svg = accept.find("image/svg+xml");
  return svg != std::string::npos && svg < accept.find("application/json");
}

bool is_json(const std::string& content_type) {
  const std::string type = lower(trimmed(content_type.substr(0, content_type.find(';'))));
  return type == "application/json" ||
         (type.starts_with("application/") && type.ends_with("+json"));
}

bool bearer_fits(const std::string& authorization, const std::string& token) {
  constexpr std::string_view kScheme = "bearer ";
  if (lower(authorization.substr(0, kScheme.size())) != kScheme) return false;
  const std::string given = trimmed(std::string_view(authorization).substr(kScheme.size()));
  unsigned differ = given.size() == token.size() ? 0U : 1U;
  for (std::size_t i = 0; i < token.size(); ++i) {
    const char c = i < given.size() ? given[i] : '\0';
    differ |=
        static_cast<unsigned>(static_cast<unsigned char>(c) ^ static_cast<unsigned char>(token[i]));
  }
  return differ == 0;
}

bool is_loopback_host(const std::string& host) {
  const std::string name = lower(host);
  const std::size_t colon = name.rfind(':');
  const std::string bare =
      name.starts_with("[") ? name.substr(0, name.find(']') + 1) : name.substr(0, colon);
  const bool numbers =
      bare.starts_with("127.") && bare.find_first_not_of("0123456789.") == std::string::npos;
  return bare == "localhost" || bare == "[::1]" || numbers;
}

}  // namespace pinwright::api
