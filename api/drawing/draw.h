#pragma once
// True-scale drawings for the cutting table: one unit of the drawing is one millimetre of paper.

#include <optional>
#include <string>
#include <vector>

#include "engine/alteration/alter.h"
#include "engine/pattern/block.h"
#include "engine/proof/proof.h"

namespace pinwright::api {

struct DrawOptions {
  std::optional<int> revision;  ///< written beside the block's name
  double row_mm = 1500.0;       ///< pieces are laid side by side until a row is this wide
  double gap_mm = 30.0;         ///< paper between two pieces, at least
  double text_mm = 4.0;         ///< size of plain text, held between 3.5 and 5
};

/// The pieces of a block: cutting line (thick, solid) and stitching line (thin, short dashes; cubic
/// paths, nothing approximated), notches out to the cutting line, darts with their cap, grainline,
/// fold, lines for lengthening, landmarks, allowance widths, what the piece is and how it is cut;
/// above them the block, a legend and a square of 50 mm to check the print by.
///
/// width and height are the viewBox in mm. Each edge is a <path class="stitch" data-edge="...">
/// inside <g class="piece" data-piece="...">. The same block gives the same bytes. REQUIRES: a
/// block that check_block passes; a piece whose cutting line cannot be made is drawn without one.
std::string draw_svg(const Block& block, const DrawOptions& options = {});

/// What changed, on the same paper: both versions of a piece lie on the same coordinates; the line
/// before in thin long dashes (class "before"), the line after solid and thick ("after"), an edge
/// that did not move once and thin ("same"); arrows from old to new with the distance wherever the
/// line moved by more than 0.5 mm, one at each place where the move is greatest (class "move").
/// Above them what was done (the notes), the measures that changed and, with a proof, its verdict.
/// Pieces are matched by id; one that is only in one of the two blocks is drawn in its style.
std::string draw_change_svg(const Block& before, const Block& after,
                            const std::vector<StepNote>& notes, const Proof* proof = nullptr,
                            const DrawOptions& options = {});

}  // namespace pinwright::api
