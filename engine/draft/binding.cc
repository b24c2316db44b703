#include "engine/draft/binding.h"

#include "engine/draft/parts.h"

namespace pinwright::drafting {

Piece strip(const StripAsk& ask) {
  const double half = ask.ratio * (ask.front_neckline_mm + ask.back_neckline_mm);
  const double back = ask.ratio * ask.back_neckline_mm;
  const Vec2 a{0.0, 0.0};
  const Vec2 b{2.0 * half, 0.0};
  const Vec2 c{2.0 * half, 2.0 * ask.finished_width_mm};
  const Vec2 d{0.0, 2.0 * ask.finished_width_mm};
  Piece piece;
  piece.id = "neck-binding";
  piece.name = "Neck binding";
  piece.edges = {ruled("opening", EdgeRole::opening, a, b, ask.allowance_mm),
                 ruled("join-end", EdgeRole::join, b, c, ask.allowance_mm),
                 ruled("folded", EdgeRole::folded, c, d, ask.allowance_mm),
                 ruled("join-start", EdgeRole::join, d, a, ask.allowance_mm)};
  piece.notches = {{"shoulder-notch-1", "opening", back},
                   {"centre-front-notch", "opening", half},
                   {"shoulder-notch-2", "opening", 2.0 * half - back}};
  const double middle = ask.finished_width_mm;
  piece.grainline = {"grainline", {half, 0.3 * middle}, {half, 1.7 * middle}};
  piece.cut = {1, false};
  return piece;
}

}  // namespace pinwright::drafting
