#include "tests/api/drawing/svg_reader.h"

#include <cstdlib>
#include <sstream>

#include "api/drawing/svg.h"

namespace pinwright::testing {
namespace {

double mm(const std::string& text) {
  return text.size() > 2 && text.substr(text.size() - 2) == "mm" ? std::atof(text.c_str()) : -1.0;
}

DrawnText text_of(const pugi::xml_node& node) {
  DrawnText out;
  out.css_class = node.attribute("class").value();
  out.words = node.text().get();
  const double size = node.attribute("font-size").as_double();
  const double width = api::text_width(out.words, size);
  const std::string anchor = node.attribute("text-anchor").value();
  const double shift = anchor == "start" ? width / 2 : anchor == "end" ? -width / 2 : 0.0;
  out.box = {
      {node.attribute("x").as_double() + shift, node.attribute("y").as_double() - 0.35 * size},
      width,
      0.7 * size,
      0.0};
  double angle = 0.0;
  double x = 0.0;
  double y = 0.0;
  if (std::sscanf(node.attribute("transform").value(), "rotate(%lf %lf %lf)", &angle, &x, &y) ==
      3) {
    out.box.centre = {x, y};
    out.box.angle = angle;
  }
  return out;
}

void walk(const pugi::xml_node& node, const std::string& piece, Drawn& out) {
  for (const pugi::xml_node& child : node.children()) {
    const std::string name = child.name();
    if (name == "g") {
      const std::string inner = child.attribute("data-piece").value();
      walk(child, inner.empty() ? piece : inner, out);
    } else if (name == "path") {
      out.paths.push_back({piece, child.attribute("class").value(),
                           child.attribute("data-edge").value(), child.attribute("d").value()});
    } else if (name == "text") {
      out.texts.push_back(text_of(child));
    }
  }
}

}  // namespace

std::vector<DrawnPath> Drawn::of_class(const std::string& css_class) const {
  std::vector<DrawnPath> out;
  for (const DrawnPath& path : paths) {
    if (path.css_class == css_class) out.push_back(path);
  }
  return out;
}

std::vector<std::string> Drawn::words_of_class(const std::string& css_class) const {
  std::vector<std::string> out;
  for (const DrawnText& text : texts) {
    if (text.css_class == css_class) out.push_back(text.words);
  }
  return out;
}

const DrawnPath* Drawn::edge(const std::string& piece, const std::string& id) const {
  for (const DrawnPath& path : paths) {
    if (path.piece == piece && path.edge == id) return &path;
  }
  return nullptr;
}

Drawn read_drawing(const std::string& svg) {
  Drawn out;
  pugi::xml_document document;
  const auto parsed = document.load_string(svg.c_str(), pugi::parse_full);
  const pugi::xml_node root = document.child("svg");
  out.well_formed = parsed && root;
  out.width_mm = mm(root.attribute("width").value());
  out.height_mm = mm(root.attribute("height").value());
  std::istringstream numbers(root.attribute("viewBox").value());
  for (double value = 0.0; numbers >> value;) out.view_box.push_back(value);
  walk(root, "", out);
  return out;
}

std::vector<Vec2> path_points(const std::string& data) {
  std::string plain;
  for (const char c : data) plain += c == ',' || c == 'M' || c == 'C' || c == 'L' ? ' ' : c;
  std::istringstream numbers(plain);
  std::vector<Vec2> out;
  for (Vec2 p; numbers >> p.x >> p.y;) out.push_back(p);
  return out;
}

Curve path_curve(const std::string& data) { return {path_points(data)}; }

}  // namespace pinwright::testing
