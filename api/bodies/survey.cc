#include "api/bodies/survey.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace pinwright::api {
namespace {

std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> cells;
  for (;;) {
    const std::size_t comma = line.find(',');
    cells.push_back(line.substr(0, comma));
    if (comma == std::string_view::npos) return cells;
    line.remove_prefix(comma + 1);
  }
}

std::string_view trimmed(std::string_view cell) {
  const std::size_t from = cell.find_first_not_of(" \t");
  if (from == std::string_view::npos) return {};
  return cell.substr(from, cell.find_last_not_of(" \t") - from + 1);
}

std::optional<double> number(std::string_view cell) {
  cell = trimmed(cell);
  double value = 0.0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error != std::errc() || end != cell.data() + cell.size()) return std::nullopt;
  if (!std::isfinite(value) || value <= 0.0) return std::nullopt;
  return value;
}

/// Cell text for a message: short, and nothing that a terminal would obey.
std::string shown(std::string_view cell) {
  std::string out(cell.substr(0, 40));
  std::replace_if(
      out.begin(), out.end(), [](unsigned char c) { return c < 0x20 || c > 0x7e; }, '?');
  return out;
}

class Reader {
 public:
  Reader(std::string_view name, const std::vector<std::string_view>& columns)
      : name_(name), columns_(columns) {}

  void read_head(std::string_view line) {
    std::vector<std::string_view> head = cells_of(line);
    for (std::string_view& cell : head) cell = trimmed(cell);
    width_ = head.size();
    for (const std::string_view column : columns_) {
      const auto found = std::find(head.begin(), head.end(), column);
      if (found == head.end()) {
        add("csv-column-missing", 1, "The head has no column \"" + std::string(column) + "\".",
            "Give it, in millimetres, under the name that the survey gives it.");
        at_.push_back(0);
        continue;
      }
      if (std::find(found + 1, head.end(), column) != head.end()) {
        add("csv-column-twice", 1, "Two columns are called \"" + std::string(column) + "\".",
            "Leave one of them out.");
      }
      at_.push_back(static_cast<std::size_t>(found - head.begin()));
    }
  }

  void read_row(std::string_view line, std::size_t number_of_line) {
    const std::vector<std::string_view> cells = cells_of(line);
    if (cells.size() != width_) {
      add("csv-row-length", number_of_line,
          "The line has " + std::to_string(cells.size()) + " cells, the head " +
              std::to_string(width_) + ".",
          "Give every line one cell a column; quoted cells and commas within numbers are not "
          "read.");
      return;
    }
    SurveyRow row;
    row.line = number_of_line;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const std::optional<double> value = number(cells[at_[i]]);
      if (!value) {
        add("csv-cell", number_of_line,
            "\"" + shown(cells[at_[i]]) + "\" in column " + std::string(columns_[i]) +
                " is no measurement.",
            "Write a number above 0 in millimetres, or leave the whole line out.");
        continue;
      }
      row.mm.emplace(columns_[i], *value);
    }
    rows_.push_back(std::move(row));
  }

  bool full() const { return problems_.size() >= kMostProblems; }
  bool sound() const { return problems_.empty(); }

  Result<std::vector<SurveyRow>> take() {
    if (problems_.empty() && rows_.empty()) {
      add("csv-empty", 1, "The table has no rows.", "Give a head and at least one line below it.");
    }
    if (!problems_.empty()) return std::move(problems_);
    return std::move(rows_);
  }

 private:
  void add(std::string code, std::size_t line, std::string what, std::string mend) {
    if (full()) return;
    problems_.push_back({std::move(code), std::string(name_) + ":" + std::to_string(line),
                         std::move(what), std::move(mend)});
  }

  std::string_view name_;
  const std::vector<std::string_view>& columns_;
  std::vector<std::size_t> at_;
  std::size_t width_ = 0;
  std::vector<SurveyRow> rows_;
  Problems problems_;
};

}  // namespace

Result<std::vector<SurveyRow>> read_survey(std::string_view text, std::string_view name,
                                           const std::vector<std::string_view>& columns) {
  constexpr std::string_view kByteOrderMark = "\xef\xbb\xbf";
  if (text.substr(0, 3) == kByteOrderMark) text.remove_prefix(3);
  Reader reader(name, columns);
  bool head = false;
  for (std::size_t line_number = 1; !text.empty() && !reader.full(); ++line_number) {
    const std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (trimmed(line).empty()) continue;
    if (head) {
      reader.read_row(line, line_number);
      continue;
    }
    head = true;
    reader.read_head(line);
    if (!reader.sound()) break;
  }
  return reader.take();
}

}  // namespace pinwright::api
