#pragma once
// Reads a drawing back with an XML library, to judge it from outside.

#include <map>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "api/drawing/clearance.h"
#include "engine/geometry/curve.h"

namespace pinwright::testing {

struct DrawnPath {
  std::string piece;
  std::string css_class;
  std::string edge;
  std::string data;
};

struct DrawnText {
  std::string css_class;
  std::string words;
  api::TextBox box;  ///< as wide as the drawing's own reckoning
};

struct Drawn {
  bool well_formed = false;
  double width_mm = 0.0;
  double height_mm = 0.0;
  std::vector<double> view_box;
  std::vector<DrawnPath> paths;
  std::vector<DrawnText> texts;

  std::vector<DrawnPath> of_class(const std::string& css_class) const;
  std::vector<std::string> words_of_class(const std::string& css_class) const;
  const DrawnPath* edge(const std::string& piece, const std::string& id) const;
};

Drawn read_drawing(const std::string& svg);

/// The points of a path of M, C and L with absolute coordinates; as a chain of cubics when it has
/// C.
std::vector<Vec2> path_points(const std::string& data);
Curve path_curve(const std::string& data);

}  // namespace pinwright::testing
