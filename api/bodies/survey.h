#pragma once
// A table of measured bodies, read from comma-separated text.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"

namespace pinwright::api {

/// One row: column name -> mm.
struct SurveyRow {
  std::size_t line = 0;  ///< in the file, the head being line 1
  std::map<std::string, double> mm;
};

/// The columns that mapping.h reads must be in the head, in any order; others are passed over.
/// Lines end in LF or CRLF; empty ones are skipped; numbers with a point, without quotes.
/// Problems, at most kMostProblems of them, place = "<name>:<line>" (and column):
///  "csv-empty"           no head, or a head and no rows
///  "csv-column-missing"  one for each column that the head lacks
///  "csv-column-twice"
///  "csv-row-length"      fewer or more cells than the head has
///  "csv-cell"            a cell that is read is no finite number above 0
/// REQUIRES: the text is in memory; its size has been limited by the reader.
Result<std::vector<SurveyRow>> read_survey(std::string_view text, std::string_view name,
                                           const std::vector<std::string_view>& columns);

inline constexpr std::size_t kMostProblems = 20;

}  // namespace pinwright::api
