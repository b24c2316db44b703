#pragma once
// What is being drawn: the SVG text so far, and where the page is already taken.

#include "api/drawing/clearance.h"
#include "api/drawing/cutting_line.h"
#include "api/drawing/svg.h"

namespace pinwright::api {

/// How close a drawn curve is followed when words are kept clear of it.
inline constexpr double kClearanceFlatnessMm = 0.5;

/// Words that still look for their place: all lines are drawn first, so that none runs through
/// them.
struct Wish {
  std::string css_class;
  double size = 4.0;
  std::string words;
  std::vector<TextBox> places;  ///< in order of preference
  double apart = 0.8;           ///< mm, from lines and other words
};

struct Page {
  Svg svg;
  Clearance taken;
  double text_mm = 4.0;
  /// Wordings of one thing, the fullest first: the first that finds a place is written.
  std::vector<std::vector<Wish>> wishes;
};

/// A piece laid on the page.
struct Laid {
  const Piece* piece = nullptr;
  Frame frame;
  std::vector<DartCap> caps;
  CuttingLine cutting;        ///< empty when it could not be made
  std::vector<Vec2> outline;  ///< the stitching line, on the page, flattened
};

/// The piece with everything that is derived from it, not yet moved anywhere.
Laid laid(const Piece& piece);
/// Moves it there: fills in `outline`.
void set_frame(Laid& piece, const Frame& frame);
/// Bounds of the cutting and the stitching line, the piece's coordinates.
Box extent(const Laid& piece);

/// Outward unit normal of an edge at a place, piece's coordinates (the ring runs
/// counter-clockwise).
Vec2 outward(const Curve& edge, CurvePlace at);
/// From a point on the stitching line along a direction, how far the cutting line is; `otherwise`
/// when it is not met within 60 mm.
double reach_of_cut(const CuttingLine& cutting, Vec2 from, Vec2 direction, double otherwise);

/// Turns a page direction into the angle of text that is read from below or from the right.
double reading_angle(Vec2 page_direction);

/// Fulfils the wishes in their order and forgets them; what finds no free place stays unwritten.
void settle(Page& page);
/// Writes words into the box and takes its room.
void write(Page& page, const TextBox& box, std::string_view css_class, double size,
           std::string_view words);
TextBox box_for(std::string_view words, double size, Vec2 centre, double angle = 0.0);

}  // namespace pinwright::api
