#include "api/cli/table.h"

#include <algorithm>
#include <numeric>

namespace pinwright::api::cli {

namespace {

constexpr std::size_t kLeastText = 8;  // a column of text is not wrapped narrower

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

/// Bytes of the first `columns` code points.
std::size_t bytes_of(std::string_view text, std::size_t columns) {
  std::size_t at = 0;
  while (at < text.size() && columns > 0) {
    ++at;
    while (at < text.size() && continues(text[at])) ++at;
    --columns;
  }
  return at;
}

void rtrim(std::string& text) {
  while (!text.empty() && text.back() == ' ') text.pop_back();
}

}  // namespace

std::size_t width(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

std::vector<std::string> wrap(std::string_view text, std::size_t columns) {
  columns = std::max<std::size_t>(columns, 1);
  std::vector<std::string> lines(1);
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
    std::string_view word = text.substr(0, end);
    const bool breaks = end < text.size() && text[end] == '\n';
    text.remove_prefix(std::min(end + 1, text.size()));
    while (!word.empty()) {
      const std::size_t used = width(lines.back());
      if (used > 0 && used + 1 + width(word) <= columns) {
        lines.back() += " ";
        lines.back() += word;
        word = {};
      } else if (used > 0) {
        lines.emplace_back();
      } else {
        const std::size_t taken = bytes_of(word, columns);
        lines.back() = word.substr(0, taken);
        word.remove_prefix(taken);
      }
    }
    if (breaks) lines.emplace_back();
  }
  return lines;
}

std::string paragraph(std::string_view first, std::string_view text) {
  const std::size_t indent = width(first);
  std::string out;
  for (const std::string& line : wrap(text, kColumns - std::min(indent, kColumns / 2))) {
    std::string whole = out.empty() ? std::string(first) + line : std::string(indent, ' ') + line;
    rtrim(whole);
    out += whole + "\n";
  }
  return out;
}

std::vector<std::size_t> Table::widths() const {
  std::vector<std::size_t> out;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    std::size_t widest = width(columns_[c].head);
    for (const auto& row : rows_) widest = std::max(widest, width(row[c]));
    out.push_back(widest);
  }
  const std::size_t gaps = 2 * (columns_.size() - 1);
  while (std::accumulate(out.begin(), out.end(), gaps) > kColumns) {
    std::size_t widest = columns_.size();
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      if (columns_[c].align == Align::right || out[c] <= kLeastText) continue;
      if (widest == columns_.size() || out[c] > out[widest]) widest = c;
    }
    if (widest == columns_.size()) break;
    --out[widest];
  }
  return out;
}

std::string Table::text() const {
  const std::vector<std::size_t> columns = widths();
  std::string out;
  const auto put = [&](const std::vector<std::string>& row) {
    std::vector<std::vector<std::string>> cells;
    std::size_t height = 1;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      cells.push_back(wrap(row[c], columns[c]));
      height = std::max(height, cells.back().size());
    }
    for (std::size_t h = 0; h < height; ++h) {
      std::string line;
      for (std::size_t c = 0; c < columns_.size(); ++c) {
        const std::string cell = h < cells[c].size() ? cells[c][h] : "";
        const std::string fill(columns[c] - std::min(columns[c], width(cell)), ' ');
        if (c > 0) line += "  ";
        line += columns_[c].align == Align::right ? fill + cell : cell + fill;
      }
      rtrim(line);
      out += line + "\n";
    }
  };
  std::vector<std::string> heads;
  std::vector<std::string> rules;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    heads.push_back(columns_[c].head);
    rules.emplace_back(columns[c], '-');
  }
  put(heads);
  put(rules);
  for (const auto& row : rows_) put(row);
  return out;
}

}  // namespace pinwright::api::cli
