#pragma once
// Plain text for a terminal of 80 columns.

#include <string>
#include <string_view>
#include <vector>

namespace pinwright::api::cli {

inline constexpr std::size_t kColumns = 80;

/// Columns that a UTF-8 text takes: its code points.
std::size_t width(std::string_view text);

/// The text broken at spaces into lines of at most `columns`; a longer word is cut. At least one
/// line.
std::vector<std::string> wrap(std::string_view text, std::size_t columns);

/// The text wrapped to 80 columns, the first line after `first`, the others after as many spaces.
std::string paragraph(std::string_view first, std::string_view text);

/// Rows under a head; a column of numbers is set to the right. Where the rows do not fit 80
/// columns, the widest columns of text are wrapped.
class Table {
 public:
  enum class Align { left, right };
  struct Column {
    std::string head;
    Align align = Align::left;
  };
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
  void add(std::vector<std::string> row) { rows_.push_back(std::move(row)); }
  bool empty() const { return rows_.empty(); }
  std::string text() const;

 private:
  std::vector<std::size_t> widths() const;
  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace pinwright::api::cli
