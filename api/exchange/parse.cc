#include "api/exchange/parse.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <utility>
#include <vector>

namespace pinwright::api {
namespace {

constexpr std::size_t kMostProblems = 64;

/// "line 3, column 14" of a byte; columns are counted in characters of UTF-8, tabs as one.
std::string line_and_column(std::string_view text, std::size_t byte) {
  byte = std::min(byte, text.size());
  std::size_t line = 1;
  std::size_t column = 1;
  for (std::size_t i = 0; i < byte; ++i) {
    if (text[i] == '\n') {
      ++line;
      column = 1;
    } else if ((static_cast<unsigned char>(text[i]) & 0xC0u) != 0x80u) {
      ++column;
    }
  }
  return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

/// The run of letters that holds the byte, for telling NaN from other slips.
std::string word_at(std::string_view text, std::size_t byte) {
  const auto letter = [&](std::size_t i) {
    return std::isalpha(static_cast<unsigned char>(text[i])) != 0;
  };
  std::size_t from = std::min(byte, text.size());
  while (from > 0 && letter(from - 1)) --from;
  std::string out;
  for (std::size_t i = from; i < text.size() && letter(i) && out.size() < 16; ++i) {
    out += static_cast<char>(std::tolower(static_cast<unsigned char>(text[i])));
  }
  return out;
}

/// Builds the value from the parser's events and watches depth, keys and strings on the way.
class Builder {
 public:
  using number_integer_t = Json::number_integer_t;
  using number_unsigned_t = Json::number_unsigned_t;
  using number_float_t = Json::number_float_t;
  using string_t = Json::string_t;
  using binary_t = Json::binary_t;

  explicit Builder(std::string_view text) : text_(text) {}

  bool null() { return put(nullptr); }
  bool boolean(bool value) { return put(value); }
  bool number_integer(number_integer_t value) { return put(value); }
  bool number_unsigned(number_unsigned_t value) { return put(value); }
  bool number_float(number_float_t value, const string_t&) { return put(value); }
  bool string(string_t& value) {
    check_string(value, true);
    return put(std::move(value));
  }
  bool binary(binary_t&) { return put(nullptr); }  // never sent by the text parser
  bool start_object(std::size_t) { return open(Json::object()); }
  bool start_array(std::size_t) { return open(Json::array()); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(string_t& value) {
    check_string(value, false);
    Frame& top = frames_.back();
    top.key = value;
    if (!top.keys.insert(value).second) {
      note({"json-key-twice", member(place(), value), "The field stands twice in one object.",
            "Leave one of the two."});
    }
    return true;
  }
  bool parse_error(std::size_t byte, const std::string&, const nlohmann::json::exception& error) {
    tell_parse_error(byte == 0 ? 0 : byte - 1, error.id, error.what());
    return false;
  }

  Result<Json> take() {
    if (!problems_.empty()) return std::move(problems_);
    return std::move(root_);
  }

 private:
  struct Frame {
    Json value;
    std::string key;
    std::set<std::string> keys;
  };

  std::string place() const {
    std::string out;
    for (std::size_t i = 0; i + 1 < frames_.size(); ++i) {
      out = frames_[i].value.is_array() ? member(out, frames_[i].value.size())
                                        : member(out, frames_[i].key);
    }
    return out;
  }
  std::string place_of_next() const {
    if (frames_.empty()) return "";
    const Frame& top = frames_.back();
    return top.value.is_array() ? member(place(), top.value.size()) : member(place(), top.key);
  }
  void note(Problem problem) {
    if (problems_.size() < kMostProblems) problems_.push_back(std::move(problem));
  }
  /// `inside`: the string is a value and its place that of the value; else it is a key.
  void check_string(const std::string& value, bool inside) {
    const auto control = [](char c) {
      const unsigned char byte = static_cast<unsigned char>(c);
      return (byte < 0x20 && c != '\n' && c != '\t') || byte == 0x7F;
    };
    const bool too_long = value.size() > kMostTextBytes;
    const bool odd = std::any_of(value.begin(), value.end(), control);
    if (!too_long && !odd) return;
    const std::string where = inside ? place_of_next() : place();
    if (too_long) {
      note({"json-text-too-long", where,
            "The text has " + std::to_string(value.size()) + " bytes, at most " +
                std::to_string(kMostTextBytes) + " are taken.",
            "Shorten it."});
    }
    if (odd) {
      note(
          {"json-control-character", where, "The text holds a control character.", "Take it out."});
    }
  }
  bool put(Json value) {
    if (frames_.empty()) {
      root_ = std::move(value);
    } else if (frames_.back().value.is_array()) {
      frames_.back().value.push_back(std::move(value));
    } else {
      frames_.back().value[frames_.back().key] = std::move(value);
    }
    return true;
  }
  bool open(Json value) {
    if (frames_.size() >= kMostDepth) {
      note({"json-too-deep", place_of_next(),
            "Lists and objects stand more than " + std::to_string(kMostDepth) +
                " deep inside each other.",
            "No input of ours needs that: check what was sent."});
      return false;
    }
    frames_.push_back({std::move(value), {}, {}});
    return true;
  }
  bool close() {
    Json done = std::move(frames_.back().value);
    frames_.pop_back();
    return put(std::move(done));
  }
  void tell_parse_error(std::size_t byte, int id, const std::string& message) {
    const std::string where = line_and_column(text_, byte);
    const std::string word = word_at(text_, byte);
    if (id == 406) {  // out of range: the parser gives no byte
      problems_.push_back({"json-number-range", frames_.empty() ? where : place_of_next(),
                           "A number is too large for a double.",
                           "Write a number of a usual size; lengths are in mm."});
    } else if (message.find("UTF-8") != std::string::npos) {
      problems_.push_back(
          {"json-not-utf8", where, "The text is not valid UTF-8.", "Save the file as UTF-8."});
    } else if (word == "nan" || word == "inf" || word == "infinity") {
      problems_.push_back({"json-not-a-number", where,
                           "NaN and Infinity are no numbers of JSON, and no length.",
                           "Write the number that is meant, or leave the field out."});
    } else if (byte >= text_.size()) {
      problems_.push_back({"json-malformed", where, "The text ends before the JSON is complete.",
                           "Check that the whole file was sent: a bracket or quote is missing."});
    } else {
      problems_.push_back({"json-malformed", where, "The text is not JSON from here on.",
                           "Look for a missing or surplus comma, quote or bracket just before."});
    }
  }

  std::string_view text_;
  Json root_;
  std::vector<Frame> frames_;
  Problems problems_;
};

}  // namespace

Result<Json> parse_json(std::string_view text, std::size_t most_bytes) {
  if (text.size() > most_bytes) {
    return Problem{"too-large", "",
                   "The text has " + std::to_string(text.size()) + " bytes; at most " +
                       std::to_string(most_bytes) + " are read.",
                   "A block takes about 40 KB: check that this is the right file."};
  }
  Builder builder(text);
  Json::sax_parse(text, &builder);
  return builder.take();
}

}  // namespace pinwright::api
