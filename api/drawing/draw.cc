#include "api/drawing/draw.h"

#include <algorithm>

#include "api/drawing/head.h"
#include "api/drawing/layout.h"
#include "api/drawing/marks.h"

namespace pinwright::api {
namespace {

Head head_of(const Block& block, const DrawOptions& options) {
  Head head;
  head.title = block.name.empty() ? block.id : block.name;
  std::string line = "Block " + block.id;
  if (options.revision) line += ", revision " + std::to_string(*options.revision);
  if (!block.size.empty()) line += ", size " + block.size;
  head.lines.push_back(line);
  if (!block.drafted_for.id.empty()) head.lines.push_back("Drafted for " + block.drafted_for.id);
  if (!block.fabric.name.empty()) {
    head.lines.push_back("Cloth: " + block.fabric.name + " (" +
                         std::string(to_text(block.fabric.kind)) + ")");
  }
  head.lines.push_back("True scale: print at 100 %. All lengths in mm.");
  head.legend = {{"cut", "cutting line"},
                 {"stitch", "stitching line, with the width of its allowance"},
                 {"fold", "fold of the cloth: no seam, no allowance"},
                 {"chain", "middle line of a dart"},
                 {"grain", "grain of the cloth"},
                 {"notch", "notch, cut into the allowance"},
                 {"thin", "lengthen or shorten between the two lines"}};
  return head;
}

std::vector<std::string> piece_words(const Block& block, const Piece& piece,
                                     const DrawOptions& options) {
  std::vector<std::string> words = {piece.name.empty() ? piece.id : piece.name};
  if (!block.size.empty()) words.push_back("Size " + block.size);
  words.push_back(cut_words(piece) + ", " + piece.cloth);
  std::string last = block.name.empty() ? block.id : block.name;
  if (options.revision) last += ", revision " + std::to_string(*options.revision);
  words.push_back(last);
  return words;
}

/// The cutting line without its stretch along the fold, in runs.
void draw_cutting_line(Page& page, const Laid& piece) {
  const std::size_t n = piece.cutting.points.size();
  if (n == 0) return;
  const std::size_t fold =
      piece.piece->fold ? edge_index(*piece.piece, *piece.piece->fold) : kNowhere;
  const auto on_fold = [&](std::size_t i) {
    return fold != kNowhere && piece.cutting.edge_of[i % n] == fold;
  };
  std::size_t first = 0;
  while (first < n && !on_fold(first)) ++first;
  if (first == n) {  // nowhere on a fold: one closed line
    std::vector<Vec2> ring;
    for (const Vec2 p : piece.cutting.points) ring.push_back(piece.frame(p));
    page.svg.path("cut", path_data(ring, true));
    page.taken.add_line(ring, true);
    return;
  }
  std::vector<Vec2> run;
  for (std::size_t k = first; k <= first + n; ++k) {
    if (!on_fold(k) && k < first + n) {
      if (run.empty()) run.push_back(piece.frame(piece.cutting.points[k % n]));
      run.push_back(piece.frame(piece.cutting.points[(k + 1) % n]));
    } else if (!run.empty()) {
      page.svg.path("cut", path_data(run));
      page.taken.add_line(run);
      run.clear();
    }
  }
}

void draw_stitching_line(Page& page, const Laid& piece) {
  for (const Edge& edge : piece.piece->edges) {
    page.svg.path(edge.id == piece.piece->fold ? "fold" : "stitch",
                  path_data(edge.curve, piece.frame),
                  attribute("data-edge", edge.id) + attribute("data-role", to_text(edge.role)));
  }
  for (const DartCap& cap : piece.caps) {
    page.svg.path("stitch", path_data(cap.to_peak, piece.frame));
    page.svg.path("stitch", path_data(cap.from_peak, piece.frame));
    for (const Curve* half : {&cap.to_peak, &cap.from_peak}) {
      page.taken.add_line(piece.frame(half->start()), piece.frame(half->end()));
    }
  }
  page.taken.add_line(piece.outline, true);
}

void draw_piece(Page& page, const Laid& piece, const std::vector<std::string>& words) {
  page.svg.open_group("piece", attribute("data-piece", piece.piece->id));
  draw_cutting_line(page, piece);
  draw_stitching_line(page, piece);
  draw_fold(page, piece);
  draw_centre_line(page, piece);
  draw_grainline(page, piece);
  draw_notches(page, piece);
  draw_darts(page, piece);
  draw_landmarks(page, piece);
  draw_lengthen_lines(page, piece);
  draw_allowances(page, piece);
  settle(page);
  draw_piece_words(page, piece, words);
  page.svg.close_group();
}

}  // namespace

std::string draw_svg(const Block& block, const DrawOptions& options) {
  Page page;
  page.text_mm = std::clamp(options.text_mm, 3.5, 5.0);
  std::vector<Laid> pieces;
  std::vector<Box> boxes;
  for (const Piece& piece : block.pieces) {
    pieces.push_back(laid(piece));
    boxes.push_back(extent(pieces.back()));
  }
  const Layout layout = lay_out(boxes, options.row_mm, options.gap_mm);
  const double width = std::max(layout.width, head_width());
  const Head head = head_of(block, options);
  const double top = draw_head(page, head, width);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Vec2 low = boxes[i].low;
    set_frame(pieces[i], Frame{{layout.low[i].x - low.x, top + layout.low[i].y + low.y}});
    draw_piece(page, pieces[i], piece_words(block, block.pieces[i], options));
  }
  return document(page.svg.body(), width, top + layout.height, head.title);
}

}  // namespace pinwright::api
