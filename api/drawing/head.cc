#include "api/drawing/head.h"

#include <algorithm>

namespace pinwright::api {
namespace {

constexpr double kBorderMm = 15.0;
constexpr double kSquareMm = 50.0;
constexpr double kLegendMm = 110.0;
constexpr double kLeastTextMm = 150.0;
constexpr double kMostTextMm = 420.0;
constexpr double kBetweenMm = 15.0;

std::vector<std::string> wrapped(const std::string& line, double size, double width) {
  std::vector<std::string> out;
  std::string now;
  std::size_t at = 0;
  while (at < line.size()) {
    const std::size_t end = std::min(line.find(' ', at), line.size());
    const std::string word = line.substr(at, end - at);
    const std::string longer = now.empty() ? word : now + " " + word;
    if (!now.empty() && text_width(longer, size) > width) {
      out.push_back(now);
      now = "   " + word;
    } else {
      now = longer;
    }
    at = end + 1;
  }
  if (!now.empty()) out.push_back(now);
  return out;
}

double draw_lines(Page& page, const Head& head, Vec2 at, double width) {
  page.svg.text("title", at + Vec2{0, 4}, 7.0, head.title, Anchor::start);
  double y = at.y + 14.0;
  for (const std::string& line : head.lines) {
    for (const std::string& part : wrapped(line, page.text_mm, width)) {
      page.svg.text("words", {at.x, y}, page.text_mm, part, Anchor::start);
      y += 1.5 * page.text_mm;
    }
  }
  return y;
}

double draw_legend(Page& page, const Head& head, Vec2 at) {
  double y = at.y + 3.0;
  for (const LegendLine& line : head.legend) {
    page.svg.line(line.css_class, {at.x, y}, {at.x + 30.0, y});
    page.svg.text("words", {at.x + 35.0, y}, 3.5, line.words, Anchor::start);
    y += 6.0;
  }
  return y;
}

double draw_square(Page& page, Vec2 at) {
  page.svg.rectangle("thin", at, at + Vec2{kSquareMm, kSquareMm});
  const Vec2 middle = at + Vec2{kSquareMm / 2, kSquareMm / 2};
  page.svg.text("words", middle - Vec2{0, 8}, 3.5, "Check the print:");
  page.svg.text("words", middle - Vec2{0, 2}, 3.5, "this square has sides");
  page.svg.text("words", middle + Vec2{0, 4}, 3.5, "of 50 mm.");
  return at.y + kSquareMm;
}

constexpr std::string_view kStyles = R"(
 path,circle,rect{fill:none;stroke:#000;stroke-linejoin:round}
 .cut{stroke-width:.8}
 .stitch{stroke-width:.35;stroke-dasharray:2.5 1.5}
 .before{stroke-width:.35;stroke-dasharray:9 3}
 .after{stroke-width:.8}
 .same{stroke-width:.3}
 .outer{stroke:#888;stroke-width:.3}
 .fold{stroke-width:.5;stroke-dasharray:12 2 1.5 2}
 .chain{stroke-width:.2;stroke-dasharray:6 1.5 1 1.5}
 .grain{stroke-width:.35}
 .thin,.move,.lead{stroke-width:.2}
 .move{stroke-width:.35}
 .notch{stroke-width:.5}
 .mark{stroke-width:.3}
 .mark-before{stroke-width:.3;stroke-dasharray:1.5 1}
 .head,.dot{fill:#000;stroke:none}
 .paper{fill:#fff;stroke:none}
 text{fill:#000}
 .name,.title{font-weight:bold}
)";

}  // namespace

double head_width() {
  return 2 * kBorderMm + kLeastTextMm + kLegendMm + kSquareMm + 2 * kBetweenMm;
}

double draw_head(Page& page, const Head& head, double page_width) {
  const double room = page_width - head_width() + kLeastTextMm;
  const double width = std::clamp(room, kLeastTextMm, kMostTextMm);
  double x = kBorderMm;
  page.svg.open_group("head-strip");
  double foot = draw_lines(page, head, {x, kBorderMm}, width);
  x += width + kBetweenMm;
  foot = std::max(foot, draw_legend(page, head, {x, kBorderMm}));
  x += kLegendMm + kBetweenMm;
  foot = std::max(foot, draw_square(page, {x, kBorderMm}));
  page.svg.close_group();
  return foot + 5.0;
}

std::string document(const std::string& body, double width, double height,
                     const std::string& title) {
  const std::string w = number(width);
  const std::string h = number(height);
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  out += "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + w + "mm\" height=\"" + h +
         "mm\" viewBox=\"0 0 " + w + " " + h + "\" font-family=\"sans-serif\">\n";
  out += " <title>" + escaped(title) + "</title>\n <style>";
  out += kStyles;
  out += " </style>\n <rect class=\"paper\" width=\"" + w + "\" height=\"" + h + "\"/>\n";
  return out + body + "</svg>\n";
}

}  // namespace pinwright::api
