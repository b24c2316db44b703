#pragma once
// An invented table of bodies with the survey's columns: nobody was measured for it.

#include <string>

#include "api/bodies/mapping.h"

namespace pinwright::api::testing {

/// Values in the order of survey_columns(), grown with the bust by our own proportions.
inline std::string invented_row(double bust, double waist_extra, double neck_extra) {
  const double more = bust - 920.0;
  const double values[] = {bust,
                           bust - 90.0 + waist_extra,
                           bust + 80.0,
                           330.0,
                           370.0 + 0.1 * more + neck_extra,
                           134.0,
                           425.0 + 0.05 * more,
                           370.0 + 0.15 * more,
                           300.0 + 0.25 * more,
                           188.0,
                           560.0,
                           545.0,
                           335.0,
                           245.0 + 0.2 * more,
                           1630.0,
                           1395.0,
                           1334.0,
                           1238.0,
                           1172.0,
                           980.0,
                           835.0,
                           1555.0 + 0.3 * more};
  std::string row;
  for (const double value : values) row += (row.empty() ? "" : ",") + std::to_string(value);
  return row + "\n";
}

inline std::string invented_head() {
  std::string head;
  for (const std::string_view column : survey_columns()) {
    head += (head.empty() ? "" : ",") + std::string(column);
  }
  return head + "\n";
}

/// Fourteen bodies of one bust class, two by two a little apart.
inline std::string invented_table() {
  std::string table = invented_head();
  for (int i = 0; i < 14; ++i) {
    table += invented_row(906.0 + 2.0 * i, i % 2 == 0 ? 8.0 : -8.0, i % 3 == 0 ? 5.0 : 0.0);
  }
  return table;
}

}  // namespace pinwright::api::testing
