#pragma once
// The few SVG elements that a pattern needs, written in page coordinates: mm, x right, y down.

#include <string>
#include <string_view>
#include <vector>

#include "engine/geometry/curve.h"

namespace pinwright::api {

/// Places a piece's paper (y up) on the page (y down).
struct Frame {
  Vec2 origin;  ///< where the piece's (0, 0) lies on the page
  Vec2 operator()(Vec2 p) const { return {origin.x + p.x, origin.y - p.y}; }
  /// A direction: only turned over.
  static Vec2 turned(Vec2 d) { return {d.x, -d.y}; }
};

/// Up to four decimals, no trailing zeros, never "-0"; independent of the locale.
std::string number(double value);
/// "9 mm", "7.5 mm": to a tenth.
std::string mm_text(double mm);
/// Text and attribute values: the five characters of XML escaped, control characters left out.
std::string escaped(std::string_view text);

/// "M x,y C ..." of a curve, one C a segment, exactly its control points.
std::string path_data(const Curve& curve, const Frame& frame);
/// "M x,y L ..." of page points.
std::string path_data(const std::vector<Vec2>& points, bool closed = false);

enum class Anchor { start, middle, end };

class Svg {
 public:
  /// `attributes`: further ones, ready written, e.g. data-edge="hem".
  void open_group(std::string_view css_class, std::string_view attributes = {});
  void close_group();
  void path(std::string_view css_class, const std::string& data, std::string_view attributes = {});
  void line(std::string_view css_class, Vec2 a, Vec2 b);
  void circle(std::string_view css_class, Vec2 centre, double radius);
  void rectangle(std::string_view css_class, Vec2 low, Vec2 high);
  /// A filled arrowhead with its tip at `tip`, pointing along `direction`.
  void arrowhead(Vec2 tip, Vec2 direction, double length);
  /// `at`: middle of the text's height at its anchor; `angle` in degrees, clockwise on the page.
  void text(std::string_view css_class, Vec2 at, double size, std::string_view words,
            Anchor anchor = Anchor::middle, double angle = 0.0);
  const std::string& body() const { return body_; }

 private:
  std::string body_;
  int depth_ = 1;
};

std::string attribute(std::string_view name, std::string_view value);

/// The width of a line of text in a common sans-serif, rather too wide than too narrow, mm.
double text_width(std::string_view words, double size);

}  // namespace pinwright::api
