#pragma once
// Where on the page there is room for words: lines and words already there are kept clear of.

#include <optional>
#include <vector>

#include "engine/geometry/vec2.h"

namespace pinwright::api {

/// An upright or turned rectangle on the page.
struct TextBox {
  Vec2 centre;
  double width = 0.0;
  double height = 0.0;
  double angle = 0.0;  ///< degrees, clockwise on the page
};

class Clearance {
 public:
  void add_line(Vec2 a, Vec2 b);
  void add_line(const std::vector<Vec2>& points, bool closed = false);
  void add_box(const TextBox& box);

  /// No line and no other box within `apart` mm of the box.
  bool is_free(const TextBox& box, double apart = 0.8) const;
  /// How many lines and boxes the box runs into; a box counts as ten lines.
  int conflicts(const TextBox& box, double apart = 0.8) const;

 private:
  struct Segment {
    Vec2 a;
    Vec2 b;
  };
  std::vector<Segment> lines_;
  std::vector<TextBox> boxes_;
};

/// Inside a closed ring of page points (even-odd).
bool inside(const std::vector<Vec2>& ring, Vec2 p);

}  // namespace pinwright::api
