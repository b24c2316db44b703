#include <algorithm>
#include <cmath>
#include <numbers>

#include "api/drawing/draw.h"
#include "api/drawing/head.h"
#include "api/drawing/layout.h"
#include "api/drawing/marks.h"
#include "api/drawing/moves.h"
#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/tolerance.h"
#include "engine/pattern/sides.h"

namespace pinwright::api {
namespace {

/// Both versions of a piece; either may be missing, not both.
struct Pair {
  const Piece* before = nullptr;
  const Piece* after = nullptr;
  std::optional<Laid> old_laid;
  std::optional<Laid> new_laid;
};

std::vector<Pair> pairs(const Block& before, const Block& after) {
  std::vector<Pair> out;
  for (const Piece& piece : after.pieces) {
    out.push_back({find_piece(before, piece.id), &piece, {}, {}});
  }
  for (const Piece& piece : before.pieces) {
    if (find_piece(after, piece.id) == nullptr) out.push_back({&piece, nullptr, {}, {}});
  }
  for (Pair& pair : out) {
    if (pair.before != nullptr) pair.old_laid = laid(*pair.before);
    if (pair.after != nullptr) pair.new_laid = laid(*pair.after);
  }
  return out;
}

Box extent(const Pair& pair) {
  if (!pair.old_laid) return extent(*pair.new_laid);
  if (!pair.new_laid) return extent(*pair.old_laid);
  const Box a = extent(*pair.old_laid);
  const Box b = extent(*pair.new_laid);
  return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
          {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

std::string edge_attributes(const Edge& edge) { return attribute("data-edge", edge.id); }

void take_curve(Page& page, const Curve& curve, const Frame& frame) {
  std::vector<Vec2> points = flatten(curve, kClearanceFlatnessMm);
  for (Vec2& p : points) p = frame(p);
  page.taken.add_line(points);
}

/// No pencil could draw the two lines apart.
bool same_line(const Piece* other, const Edge& edge) {
  const Edge* match = other == nullptr ? nullptr : find_edge(*other, edge.id);
  return match != nullptr && greatest_move(match->curve, edge.curve) < kSeamMm;
}

void draw_lines(Page& page, const Pair& pair, const Frame& frame) {
  if (pair.new_laid && !pair.new_laid->cutting.points.empty()) {
    std::vector<Vec2> ring;
    for (const Vec2 p : pair.new_laid->cutting.points) ring.push_back(frame(p));
    page.svg.path("outer", path_data(ring, true));
    page.taken.add_line(ring, true);
  }
  if (pair.before != nullptr) {
    for (const Edge& edge : pair.before->edges) {
      if (same_line(pair.after, edge)) continue;
      // the fold lies on the same line before and after: its ends are told by their neighbours
      if (pair.after != nullptr && edge.id == pair.before->fold) continue;
      page.svg.path("before", path_data(edge.curve, frame), edge_attributes(edge));
      take_curve(page, edge.curve, frame);
    }
  }
  if (pair.after == nullptr) return;
  for (const Edge& edge : pair.after->edges) {
    const bool same = same_line(pair.before, edge);
    const char* style = edge.id == pair.after->fold ? "fold" : same ? "same" : "after";
    page.svg.path(style, path_data(edge.curve, frame), edge_attributes(edge));
    take_curve(page, edge.curve, frame);
  }
}

/// Landmarks and notches where they were, when they moved.
void draw_old_marks(Page& page, const Pair& pair, const Frame& frame) {
  if (pair.before == nullptr) return;
  for (const Landmark& mark : pair.before->landmarks) {
    if (on_outline(*pair.before, mark.at)) continue;
    const Landmark* now = pair.after == nullptr ? nullptr : find_landmark(*pair.after, mark.id);
    if (now != nullptr && distance(now->at, mark.at) < kLeastMoveMm) continue;
    page.svg.circle("mark-before", frame(mark.at), 3.0);
  }
  for (const Notch& notch : pair.before->notches) {
    const Edge* edge = find_edge(*pair.before, notch.edge);
    if (edge == nullptr) continue;
    const CurvePlace place = place_at(edge->curve, notch.at_mm);
    const Vec2 at = point(edge->curve, place);
    if (pair.after != nullptr) {
      const Notch* now = find_notch(*pair.after, notch.id);
      const Edge* now_on = now == nullptr ? nullptr : find_edge(*pair.after, now->edge);
      if (now_on != nullptr && distance(point_at(now_on->curve, now->at_mm), at) < kLeastMoveMm) {
        continue;
      }
    }
    const Vec2 out = outward(edge->curve, place);
    page.svg.line("mark-before", frame(at), frame(at + 6.0 * out));
  }
}

void draw_move(Page& page, const Move& move, const Frame& frame) {
  const Vec2 tip = frame(move.to);
  const Vec2 direction = unit(tip - frame(move.from));
  // a short move is shown by a longer arrow that comes from the old side
  const double shaft = std::max(move.mm, 7.0);
  const Vec2 tail = tip - shaft * direction;
  page.svg.line("move", tail, tip);
  page.svg.arrowhead(tip, direction, 2.2);
  page.taken.add_line(tail, tip);
}

void draw_move_label(Page& page, const Move& move, const Frame& frame) {
  const std::string words = mm_text(move.mm);
  const Vec2 tip = frame(move.to);
  const Vec2 direction = unit(tip - frame(move.from));
  const Vec2 tail = tip - std::max(move.mm, 7.0) * direction;
  const Vec2 middle = lerp(tail, tip, 0.5);
  const double size = page.text_mm;
  TextBox best;
  int best_conflicts = -1;
  for (double ring = 3.0; ring <= 45.0 && best_conflicts != 0; ring += 1.5) {
    for (int k = 0; k < 24; ++k) {
      const double angle = 2.0 * std::numbers::pi * k / 24.0;
      const Vec2 ray{std::cos(angle), std::sin(angle)};
      TextBox box = box_for(words, size, middle);
      box.height = 0.8 * size;
      box.centre = middle + Vec2{ray.x * (ring + box.width / 2), ray.y * (ring + box.height / 2)};
      const int conflicts = page.taken.conflicts(box, 0.9);
      if (best_conflicts < 0 || conflicts < best_conflicts) {
        best = box;
        best_conflicts = conflicts;
      }
      if (conflicts == 0) break;
    }
  }
  const Vec2 to_box = best.centre - middle;
  const double gap_x = std::max(0.0, std::abs(to_box.x) - best.width / 2);
  const double gap_y = std::max(0.0, std::abs(to_box.y) - best.height / 2);
  if (std::hypot(gap_x, gap_y) > 10.0) {
    const Vec2 foot{
        best.centre.x - std::copysign(std::min(std::abs(to_box.x), best.width / 2 + 0.8), to_box.x),
        best.centre.y -
            std::copysign(std::min(std::abs(to_box.y), best.height / 2 + 0.8), to_box.y)};
    page.svg.line("lead", middle, foot);
    page.taken.add_line(middle, foot);
  }
  page.svg.text("move-words", best.centre, size, words, Anchor::middle);
  page.taken.add_box(best);
}

std::string state_of(const Pair& pair) {
  if (pair.before == nullptr) return "new piece";
  if (pair.after == nullptr) return "no longer a piece";
  if (*pair.before == *pair.after) return "not changed";
  double most = 0.0;
  for (const Edge& edge : pair.after->edges) {
    const Edge* old = find_edge(*pair.before, edge.id);
    most = std::max(most, old == nullptr ? 1e9 : greatest_move(old->curve, edge.curve));
  }
  return most < kLeastMoveMm ? "moved by less than " + mm_text(kLeastMoveMm) : "changed";
}

void draw_pair(Page& page, Pair& pair, const Frame& frame) {
  const Piece& piece = pair.after != nullptr ? *pair.after : *pair.before;
  Laid& shown = pair.new_laid ? *pair.new_laid : *pair.old_laid;
  set_frame(shown, frame);
  page.svg.open_group("piece", attribute("data-piece", piece.id));
  draw_lines(page, pair, frame);
  draw_old_marks(page, pair, frame);
  draw_fold(page, shown);
  draw_centre_line(page, shown);
  draw_grainline(page, shown);
  draw_notches(page, shown);
  draw_darts(page, shown);
  draw_landmarks(page, shown);
  std::vector<Move> found;
  if (pair.before != nullptr && pair.after != nullptr) found = moves(*pair.before, *pair.after);
  page.svg.open_group("moves");
  for (const Move& move : found) draw_move(page, move, frame);
  for (const Move& move : found) draw_move_label(page, move, frame);
  page.svg.close_group();
  settle(page);
  draw_piece_words(page, shown, {piece.name.empty() ? piece.id : piece.name, state_of(pair)});
  page.svg.close_group();
}

std::string measure_line(const MeasureProof& m) {
  const bool angle = m.kind == MeasureKind::angle;
  const auto said = [&](double value) {
    if (!angle) return mm_text(value);
    const std::string text = mm_text(degrees(value));
    return text.substr(0, text.size() - 3) + "\u00B0";
  };
  std::string out = m.name + ": " + said(m.before) + " \u2192 " + said(m.after);
  if (m.target) out += " (wanted " + said(*m.target) + ")";
  return out;
}

Head head_of(const Block& after, const std::vector<StepNote>& notes, const Proof* proof,
             const DrawOptions& options) {
  Head head;
  head.title = "What changed: " + (after.name.empty() ? after.id : after.name);
  std::string line = "Block " + after.id;
  if (options.revision) line += ", revision " + std::to_string(*options.revision);
  if (!after.size.empty()) line += ", size " + after.size;
  head.lines.push_back(line + ". True scale: print at 100 %. All lengths in mm.");
  for (std::size_t i = 0; i < notes.size(); ++i) {
    std::string note = std::to_string(i + 1) + ". " + notes[i].text;
    if (!notes[i].follow.empty()) {
      note += "; followed:";
      for (const std::string& piece : notes[i].follow) {
        note += (piece == notes[i].follow.front() ? " " : ", ") + plain(piece);
      }
    }
    head.lines.push_back(note);
  }
  if (proof != nullptr) {
    head.lines.push_back(proof->pass ? "Proof: passed, the pieces sew together."
                                     : "Proof: NOT passed, do not cut.");
    for (const Problem& failure : proof->failures) {
      head.lines.push_back("   " + failure.place + ": " + failure.what);
    }
    for (const MeasureProof& m : proof->measures) {
      const double least = m.kind == MeasureKind::angle ? radians(0.1) : kLeastMoveMm;
      if (std::abs(m.after - m.before) >= least) head.lines.push_back(measure_line(m));
    }
  }
  head.legend = {{"before", "stitching line before"},
                 {"after", "stitching line after"},
                 {"same", "stitching line that did not move (0.1 mm)"},
                 {"outer", "cutting line after"},
                 {"fold", "fold of the cloth"},
                 {"chain", "middle line of a dart"},
                 {"grain", "grain of the cloth"},
                 {"notch", "notch after (before: small dashes)"}};
  return head;
}

}  // namespace

std::string draw_change_svg(const Block& was, const Block& is, const std::vector<StepNote>& notes,
                            const Proof* proof, const DrawOptions& options) {
  // A piece that was opened, or closed again, is held against the whole of what it was.
  const Block before = opened_like(was, is);
  const Block after = opened_like(is, was);
  Page page;
  page.text_mm = std::clamp(options.text_mm, 3.5, 5.0);
  std::vector<Pair> all = pairs(before, after);
  std::vector<Box> boxes;
  for (const Pair& pair : all) boxes.push_back(extent(pair));
  const Layout layout = lay_out(boxes, options.row_mm, std::max(options.gap_mm, 30.0));
  const double width = std::max(layout.width, head_width());
  const Head head = head_of(after, notes, proof, options);
  const double top = draw_head(page, head, width);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Vec2 low = boxes[i].low;
    draw_pair(page, all[i], Frame{{layout.low[i].x - low.x, top + layout.low[i].y + low.y}});
  }
  return document(page.svg.body(), width, top + layout.height, head.title);
}

}  // namespace pinwright::api
