#pragma once
// The strip above the pieces: what it is, what the lines mean, and a square to check the print by.

#include <string>
#include <vector>

#include "api/drawing/page.h"

namespace pinwright::api {

struct LegendLine {
  std::string css_class;  ///< of the sample
  std::string words;
};

struct Head {
  std::string title;
  std::vector<std::string> lines;  ///< wrapped to the column's width
  std::vector<LegendLine> legend;
};

/// Least width that the strip needs, mm.
double head_width();
/// Draws it at the top of a page of this width; returns where it ends, mm from the top.
double draw_head(Page& page, const Head& head, double page_width);

/// The whole document: root element in mm, line styles, white ground, `body`. `title` is told to
/// reading aids.
std::string document(const std::string& body, double width, double height,
                     const std::string& title);

}  // namespace pinwright::api
