#include "api/drawing/svg.h"

#include <array>
#include <charconv>
#include <cmath>

namespace pinwright::api {
namespace {

std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) return "0";
  std::array<char, 512> buffer;
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                          std::chars_format::fixed, decimals);
  if (error != std::errc()) return "0";
  std::string out(buffer.data(), end);
  if (out.find('.') != std::string::npos) {
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

std::string place(Vec2 p) { return number(p.x) + "," + number(p.y); }

}  // namespace

std::string number(double value) { return fixed(value, 4); }

std::string mm_text(double mm) { return fixed(mm, 1) + " mm"; }

std::string escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&apos;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20) out += c;
    }
  }
  return out;
}

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + escaped(value) + "\"";
}

std::string path_data(const Curve& curve, const Frame& frame) {
  std::string out = "M" + place(frame(curve.start()));
  for (std::size_t i = 1; i + 2 < curve.points.size(); i += 3) {
    out += " C" + place(frame(curve.points[i])) + " " + place(frame(curve.points[i + 1])) + " " +
           place(frame(curve.points[i + 2]));
  }
  return out;
}

std::string path_data(const std::vector<Vec2>& points, bool closed) {
  std::string out;
  for (const Vec2 p : points) out += (out.empty() ? "M" : " L") + place(p);
  return closed ? out + " Z" : out;
}

void Svg::open_group(std::string_view css_class, std::string_view attributes) {
  body_ += std::string(static_cast<std::size_t>(depth_), ' ') + "<g class=\"" +
           std::string(css_class) + "\"" + std::string(attributes) + ">\n";
  ++depth_;
}

void Svg::close_group() {
  --depth_;
  body_ += std::string(static_cast<std::size_t>(depth_), ' ') + "</g>\n";
}

void Svg::path(std::string_view css_class, const std::string& data, std::string_view attributes) {
  body_ += std::string(static_cast<std::size_t>(depth_), ' ') + "<path class=\"" +
           std::string(css_class) + "\"" + std::string(attributes) + " d=\"" + data + "\"/>\n";
}

void Svg::line(std::string_view css_class, Vec2 a, Vec2 b) { path(css_class, path_data({a, b})); }

void Svg::circle(std::string_view css_class, Vec2 centre, double radius) {
  body_ += std::string(static_cast<std::size_t>(depth_), ' ') + "<circle class=\"" +
           std::string(css_class) + "\" cx=\"" + number(centre.x) + "\" cy=\"" + number(centre.y) +
           "\" r=\"" + number(radius) + "\"/>\n";
}

void Svg::rectangle(std::string_view css_class, Vec2 low, Vec2 high) {
  body_ += std::string(static_cast<std::size_t>(depth_), ' ') + "<rect class=\"" +
           std::string(css_class) + "\" x=\"" + number(low.x) + "\" y=\"" + number(low.y) +
           "\" width=\"" + number(high.x - low.x) + "\" height=\"" + number(high.y - low.y) +
           "\"/>\n";
}

void Svg::arrowhead(Vec2 tip, Vec2 direction, double length) {
  const Vec2 d = unit(direction);
  const Vec2 back = tip - length * d;
  const Vec2 side = (0.3 * length) * left_normal(d);
  path("head", path_data({tip, back + side, back - side}, true));
}

void Svg::text(std::string_view css_class, Vec2 at, double size, std::string_view words,
               Anchor anchor, double angle) {
  static constexpr std::array<std::string_view, 3> kAnchors = {"start", "middle", "end"};
  // capitals are about 0.7 of the size high: the base line lies half of that below the middle
  const double drop = 0.35 * size;
  std::string turn;
  if (angle != 0.0) {
    turn = " transform=\"rotate(" + number(angle) + " " + number(at.x) + " " + number(at.y) + ")\"";
  }
  body_ += std::string(static_cast<std::size_t>(depth_), ' ') + "<text class=\"" +
           std::string(css_class) + "\" x=\"" + number(at.x) + "\" y=\"" + number(at.y + drop) +
           "\" font-size=\"" + number(size) + "\" text-anchor=\"" +
           std::string(kAnchors[static_cast<std::size_t>(anchor)]) + "\"" + turn + ">" +
           escaped(words) + "</text>\n";
}

double text_width(std::string_view words, double size) {
  double characters = 0.0;
  for (const char c : words) {
    if ((static_cast<unsigned char>(c) & 0xC0u) != 0x80u) characters += 1.0;
  }
  return 0.6 * size * characters;
}

}  // namespace pinwright::api
