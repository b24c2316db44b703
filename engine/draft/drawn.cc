#include "engine/draft/drawn.h"

#include <string>

#include "engine/geometry/area.h"
#include "engine/geometry/intersect.h"
#include "engine/geometry/tolerance.h"

namespace pinwright::drafting {
namespace {

bool finite_piece(const Piece& piece) {
  for (const Edge& edge : piece.edges) {
    for (const Vec2 p : edge.curve.points) {
      if (!finite(p)) return false;
    }
  }
  return true;
}

/// Neighbours share a corner; anywhere else two edges must not meet.
bool cross_each_other(const Piece& piece, std::size_t i, std::size_t j) {
  const std::size_t n = piece.edges.size();
  const Curve& a = piece.edges[i].curve;
  const Curve& b = piece.edges[j].curve;
  for (const Crossing& crossing : intersections(a, b)) {
    const bool after = (i + 1) % n == j && distance(crossing.point, a.end()) < kFlatnessMm;
    const bool before = (j + 1) % n == i && distance(crossing.point, b.end()) < kFlatnessMm;
    if (!after && !before) return true;
  }
  return false;
}

Problem told(const Piece& piece, const std::string& what) {
  return {"draft-impossible", "/wearer/body", "The outline of the " + piece.id + " " + what + ".",
          "Measurements contradict each other; take them again, girths and widths first."};
}

}  // namespace

Problems check_drawn(const Block& block) {
  Problems problems;
  for (const Piece& piece : block.pieces) {
    if (!finite_piece(piece)) {
      problems.push_back(told(piece, "cannot be drawn"));
      continue;
    }
    std::vector<Curve> ring;
    for (const Edge& edge : piece.edges) ring.push_back(edge.curve);
    if (signed_area(ring) <= 0.0) problems.push_back(told(piece, "turns inside out"));
    for (std::size_t i = 0; i < piece.edges.size(); ++i) {
      if (!self_intersections(piece.edges[i].curve).empty()) {
        problems.push_back(told(piece, "crosses itself at the " + piece.edges[i].id));
      }
      for (std::size_t j = i + 1; j < piece.edges.size(); ++j) {
        if (!cross_each_other(piece, i, j)) continue;
        problems.push_back(told(piece, "crosses itself where " + piece.edges[i].id + " and " +
                                           piece.edges[j].id + " meet"));
      }
    }
  }
  return problems;
}

Result<Block> looked_over(Result<Block> drawn) {
  if (!drawn) return drawn;
  Problems problems = check_drawn(*drawn);
  if (!problems.empty()) return problems;
  return drawn;
}

}  // namespace pinwright::drafting
