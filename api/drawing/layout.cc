#include "api/drawing/layout.h"

#include <algorithm>

namespace pinwright::api {

namespace {

/// A box, and those stacked on it, in one row.
struct Column {
  double width = 0.0;
  double height = 0.0;
};

}  // namespace

Layout lay_out(const std::vector<Box>& boxes, double row_mm, double gap_mm) {
  Layout out;
  double top = gap_mm;
  std::size_t i = 0;
  while (i < boxes.size()) {
    std::vector<Column> columns;
    std::vector<Vec2> at;  // from the row's left and foot
    double left = gap_mm;  // of the last column
    double height = 0.0;
    std::size_t end = i;
    for (; end < boxes.size(); ++end) {
      const Vec2 size = boxes[end].high - boxes[end].low;
      if (!columns.empty()) {
        Column& last = columns.back();
        const double wider = std::max(last.width, size.x);
        if (last.height + gap_mm + size.y <= height && left + wider + gap_mm <= row_mm) {
          at.push_back({left, last.height + gap_mm});
          last = {wider, last.height + gap_mm + size.y};
          continue;
        }
        if (left + last.width + gap_mm + size.x + gap_mm > row_mm) break;
        left += last.width + gap_mm;
      }
      columns.push_back({size.x, size.y});
      at.push_back({left, 0.0});
      height = std::max(height, size.y);
    }
    for (const Vec2 p : at) out.low.push_back({p.x, top + height - p.y});
    out.width = std::max(out.width, left + columns.back().width + gap_mm);
    top += height + gap_mm;
    i = end;
  }
  out.height = top;
  return out;
}

}  // namespace pinwright::api
