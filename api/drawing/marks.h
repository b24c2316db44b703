#pragma once
// What is marked on a piece besides its two lines. Lines are drawn at once, words are only wished
// for (Page::wishes): settle() writes them when all lines are there.

#include "api/drawing/page.h"

namespace pinwright::api {

/// Ticks from the stitching line out to the cutting line; where the edge has no allowance, 5 mm
/// inward. Also at both points of a dart's mouth, along the legs.
void draw_notches(Page& page, const Laid& piece);
/// A ring at each dart's point, the middle line in dash-dot out to the peak of the cap, its name.
void draw_darts(Page& page, const Laid& piece);
/// A bracketed arrow inside that points at the fold edge, "place on fold".
void draw_fold(Page& page, const Laid& piece);
/// The centre of a piece whose left and right differ, and which half is whose.
void draw_centre_line(Page& page, const Laid& piece);
/// The grainline with a head at both ends, its name along it.
void draw_grainline(Page& page, const Laid& piece);
/// Two parallel thin lines with their words.
void draw_lengthen_lines(Page& page, const Laid& piece);
/// A cross in a circle, with the landmark's name; only a dot where it lies on the outline.
void draw_landmarks(Page& page, const Laid& piece);
/// The width of each allowance in the middle of it, along the edge.
void draw_allowances(Page& page, const Laid& piece);
/// Lines of words near the middle of the piece where there is room; call after settle().
void draw_piece_words(Page& page, const Laid& piece, const std::vector<std::string>& words);

/// "bust-point" -> "bust point".
std::string plain(std::string_view id);
/// "Cut 1 on the fold", "Cut 2, left and right", "Cut 1".
std::string cut_words(const Piece& piece);

}  // namespace pinwright::api
