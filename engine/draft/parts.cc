#include "engine/draft/parts.h"

#include <cstdio>
#include <utility>

namespace pinwright::drafting {

Edge curved(std::string id, EdgeRole role, Curve curve, double allowance_mm) {
  return {std::move(id), role, std::move(curve), false, {allowance_mm, AllowanceKind::plain}};
}

Edge ruled(std::string id, EdgeRole role, Vec2 from, Vec2 to, double allowance_mm) {
  return {
      std::move(id), role, straight_curve(from, to), true, {allowance_mm, AllowanceKind::plain}};
}

Edge folded_at(std::string id, EdgeRole role, Vec2 from, Vec2 to) {
  return ruled(std::move(id), role, from, to, 0.0);
}

Edge hemmed(Edge edge) {
  edge.allowance.kind = AllowanceKind::hem;
  return edge;
}

Problem impossible(std::string_view measurement, std::string what, std::string mend) {
  return {"draft-impossible", "/wearer/body/" + std::string(measurement), std::move(what),
          std::move(mend)};
}

std::string mm_text(double mm) {
  char text[40];
  std::snprintf(text, sizeof text, "%.1f mm", mm);
  return text;
}

}  // namespace pinwright::drafting
