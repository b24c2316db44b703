#include "api/drawing/marks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "api/drawing/moves.h"
#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"
#include "engine/pattern/opened_piece.h"

namespace pinwright::api {
namespace {

void tick(Page& page, const Laid& piece, Vec2 at, Vec2 direction, double otherwise) {
  const double reach = reach_of_cut(piece.cutting, at, direction, otherwise);
  const Vec2 end = at + reach * unit(direction);
  page.svg.line("notch", piece.frame(at), piece.frame(end));
  page.taken.add_line(piece.frame(at), piece.frame(end));
}

void wish(Page& page, double size, const std::string& words, std::vector<TextBox> places) {
  page.wishes.push_back({{"words", size, words, std::move(places)}});
}

/// Whether the words' box lies inside the piece with both ends and its middle.
bool lies_inside(const Laid& piece, const TextBox& box) {
  const Vec2 half{box.width / 2, 0.0};
  return inside(piece.outline, box.centre) && inside(piece.outline, box.centre - half) &&
         inside(piece.outline, box.centre + half);
}

}  // namespace

std::string plain(std::string_view id) {
  std::string out(id);
  std::replace(out.begin(), out.end(), '-', ' ');
  return out;
}

std::string cut_words(const Piece& piece) {
  std::string out = "Cut " + std::to_string(piece.cut.count);
  if (piece.fold) out += " on the fold";
  if (piece.cut.mirrored_pair) out += ", left and right";
  if (piece.side != Side::both) out += ", " + std::string(to_text(piece.side)) + " side";
  // Left and right are not to be swapped when it is laid on the cloth.
  if (piece.centre_line || piece.side != Side::both) out += ", right side of the cloth up";
  return out;
}

void draw_notches(Page& page, const Laid& piece) {
  for (const Notch& notch : piece.piece->notches) {
    const Edge* edge = find_edge(*piece.piece, notch.edge);
    if (edge == nullptr) continue;
    const CurvePlace place = place_at(edge->curve, notch.at_mm);
    const Vec2 at = point(edge->curve, place);
    const Vec2 normal = outward(edge->curve, place);
    if (edge->allowance.width_mm > 0.0) {
      tick(page, piece, at, normal, edge->allowance.width_mm);
    } else {
      page.svg.line("notch", piece.frame(at), piece.frame(at - 5.0 * normal));
    }
  }
  for (const DartCap& cap : piece.caps) {
    for (const Vec2 mouth : {cap.to_peak.start(), cap.from_peak.end()}) {
      tick(page, piece, mouth, mouth - cap.point, 5.0);
    }
  }
}

void draw_darts(Page& page, const Laid& piece) {
  for (const DartCap& cap : piece.caps) {
    const Dart& dart = piece.piece->darts[cap.dart];
    const Vec2 peak = cap.to_peak.end();
    page.svg.circle("mark", piece.frame(cap.point), 1.5);
    page.svg.line("chain", piece.frame(cap.point), piece.frame(peak));
    page.taken.add_line(piece.frame(cap.point), piece.frame(peak));
    const Vec2 legs = 0.5 * (cap.to_peak.start() + cap.from_peak.end());
    const std::string words = plain(dart.id);
    const std::string intake = mm_text(dart_intake(*piece.piece, dart));
    const Vec2 along = legs - cap.point;
    const double angle = reading_angle(Frame::turned(along));
    const double size = 3.5;
    // between a leg and the middle line, as near the mouth as there is room; else beyond the point
    std::vector<Wish> wordings;
    for (const std::string& text : {words + ", " + intake, intake}) {
      Wish one{"words", size, text, {}};
      const Vec2 side = unit(left_normal(along));
      for (double share = 0.9; share > 0.3; share -= 0.05) {
        const double gap = 0.25 * share * dart_intake(*piece.piece, dart);
        for (const double sign : {1.0, -1.0}) {
          one.places.push_back(box_for(
              text, size, piece.frame(cap.point + share * along + sign * gap * side), angle));
        }
      }
      for (const double beyond : {5.0, 9.0, 14.0, 20.0, 28.0}) {
        const double way = text_width(text, size) / 2 + beyond;
        one.places.push_back(
            box_for(text, size, piece.frame(cap.point - way * unit(along)), angle));
      }
      // beside the dart
      for (const double share : {0.7, 0.5, 0.3}) {
        for (const double sign : {1.0, -1.0}) {
          const double gap = 0.5 * share * dart_intake(*piece.piece, dart) + 4.0;
          one.places.push_back(box_for(
              text, size, piece.frame(cap.point + share * along + sign * gap * side), angle));
        }
      }
      wordings.push_back(std::move(one));
    }
    page.wishes.push_back(std::move(wordings));
  }
}

void draw_fold(Page& page, const Laid& piece) {
  if (!piece.piece->fold) return;
  const Edge* edge = find_edge(*piece.piece, *piece.piece->fold);
  if (edge == nullptr) return;
  const Vec2 a = edge->curve.start();
  const Vec2 b = edge->curve.end();
  const Vec2 in = left_normal(unit(b - a));
  const Vec2 from = lerp(a, b, 0.15) + 12.0 * in;
  const Vec2 to = lerp(a, b, 0.85) + 12.0 * in;
  const std::vector<Vec2> bracket = {piece.frame(from - 12.0 * in), piece.frame(from),
                                     piece.frame(to), piece.frame(to - 12.0 * in)};
  page.svg.path("thin", path_data(bracket));
  page.svg.arrowhead(bracket.front(), bracket.front() - bracket[1], 4.0);
  page.svg.arrowhead(bracket.back(), bracket.back() - bracket[2], 4.0);
  page.taken.add_line(bracket);
  const std::string words = plain(to_text(edge->role)) + ": place on fold";
  std::vector<TextBox> places;
  for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7}) {
    places.push_back(box_for(words, page.text_mm, piece.frame(lerp(a, b, share) + 6.0 * in),
                             reading_angle(Frame::turned(b - a))));
  }
  wish(page, page.text_mm, words, places);
}

void draw_centre_line(Page& page, const Laid& piece) {
  if (!piece.piece->centre_line) return;
  const Edge& line = *piece.piece->centre_line;
  const Vec2 a = line.curve.start();
  const Vec2 b = line.curve.end();
  page.svg.path("chain", path_data(line.curve, piece.frame),
                attribute("data-centre-line", line.id));
  page.taken.add_line(piece.frame(a), piece.frame(b));
  const std::string words = plain(to_text(line.role)) + ", wearer's left and right differ";
  std::vector<TextBox> places;
  for (const double off : {4.0, -4.0}) {
    for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7}) {
      places.push_back(box_for(words, page.text_mm, piece.frame(lerp(a, b, share) + Vec2{off, 0.0}),
                               reading_angle(Frame::turned(b - a))));
    }
  }
  wish(page, page.text_mm, words, places);
  // Which half is whose: words near the top of the line.
  const Side drawn = drawn_side(*piece.piece);
  for (const Side side : {Side::left, Side::right}) {
    const double sign = side == drawn ? 1.0 : -1.0;
    const std::string whose = "wearer's " + std::string(to_text(side));
    std::vector<TextBox> at;
    for (const double out : {28.0, 36.0, 44.0})
      for (const double share : {0.12, 0.2, 0.28, 0.36, 0.5, 0.65})
        at.push_back(
            box_for(whose, page.text_mm, piece.frame(lerp(a, b, share) + Vec2{sign * out, 0.0})));
    wish(page, page.text_mm, whose, at);
  }
}

void draw_grainline(Page& page, const Laid& piece) {
  const Vec2 from = piece.frame(piece.piece->grainline.from);
  const Vec2 to = piece.frame(piece.piece->grainline.to);
  if (distance(from, to) < 1.0) return;
  page.svg.line("grain", from, to);
  const double head = std::min(5.0, 0.25 * distance(from, to));
  page.svg.arrowhead(from, from - to, head);
  page.svg.arrowhead(to, to - from, head);
  page.taken.add_line(from, to);
  const Vec2 along = unit(to - from);
  const Vec2 side = left_normal(along);
  std::vector<TextBox> places;
  for (const double share : {0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85}) {
    for (const double sign : {1.0, -1.0}) {
      places.push_back(box_for("grain", page.text_mm, lerp(from, to, share) + (sign * 3.6) * side,
                               reading_angle(along)));
    }
  }
  wish(page, page.text_mm, "grain", places);
}

void draw_lengthen_lines(Page& page, const Laid& piece) {
  for (const Line& line : piece.piece->lengthen_lines) {
    const Vec2 from = piece.frame(line.from);
    const Vec2 to = piece.frame(line.to);
    const Vec2 side = 1.2 * left_normal(unit(to - from));
    for (const double sign : {1.0, -1.0}) {
      page.svg.line("thin", from + sign * side, to + sign * side);
      page.taken.add_line(from + sign * side, to + sign * side);
    }
    const std::string words = "lengthen or shorten here";
    std::vector<TextBox> places;
    for (const double share : {0.5, 0.6, 0.4, 0.7, 0.3, 0.75}) {
      for (const double sign : {-1.0, 1.0}) {
        places.push_back(box_for(words, 3.5, lerp(from, to, share) + (sign * 3.2) * side,
                                 reading_angle(to - from)));
      }
    }
    wish(page, 3.5, words, places);
  }
}

void draw_landmarks(Page& page, const Laid& piece) {
  for (const Landmark& mark : piece.piece->landmarks) {
    const Vec2 at = piece.frame(mark.at);
    const bool on_line = on_outline(*piece.piece, mark.at);
    if (on_line) {
      page.svg.circle("dot", at, 0.9);
    } else {
      page.svg.circle("mark", at, 3.0);
      page.svg.line("mark", at - Vec2{4.5, 0}, at + Vec2{4.5, 0});
      page.svg.line("mark", at - Vec2{0, 4.5}, at + Vec2{0, 4.5});
      page.taken.add_box({at, 9.0, 9.0, 0.0});
    }
    const std::string words = plain(mark.id);
    const double w = text_width(words, 3.5) / 2;
    const double near = on_line ? 2.0 : 7.0;
    std::vector<TextBox> places;
    for (double more = 0.0; more <= 12.0; more += 2.0) {
      const double x = w + near + more;
      const double y = near + 1.0 + more;
      for (const Vec2 off : {Vec2{0, y}, Vec2{0, -y}, Vec2{x, 0}, Vec2{-x, 0}, Vec2{x, y},
                             Vec2{-x, y}, Vec2{x, -y}, Vec2{-x, -y}}) {
        const TextBox box = box_for(words, 3.5, at + off);
        if (lies_inside(piece, box)) places.push_back(box);
      }
    }
    wish(page, 3.5, words, std::move(places));
  }
}

void draw_allowances(Page& page, const Laid& piece) {
  for (const Edge& edge : piece.piece->edges) {
    if (edge.role == EdgeRole::dart_leg || edge.id == piece.piece->fold) continue;
    const double width = edge.allowance.width_mm;
    const bool hem = edge.allowance.kind == AllowanceKind::hem;
    const double total = length(edge.curve);
    std::vector<std::string> wordings;
    if (width == 0.0) {
      wordings = {"no allowance"};
    } else if (hem) {
      wordings = {mm_text(width) + " hem, fold back on the dashed line", mm_text(width) + " hem",
                  mm_text(width)};
    } else {
      wordings = {mm_text(width)};
    }
    // small words in a narrow allowance; inside the piece when even they do not fit
    const double size = width >= 5.0 ? std::min(3.5, 0.7 * width) : 3.5;
    const double off = width >= 5.0 ? 0.5 * width : -3.5;
    std::vector<Wish> wishes;
    for (const std::string& words : wordings) {
      if (text_width(words, size) > 0.8 * total) continue;
      Wish one{"words", size, words, {}, 0.4};
      for (const double share : {0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.2, 0.8}) {
        const CurvePlace place = place_at(edge.curve, share * total);
        const Vec2 at = point(edge.curve, place) + off * outward(edge.curve, place);
        TextBox box = box_for(words, size, piece.frame(at),
                              reading_angle(Frame::turned(tangent(edge.curve, place))));
        box.height = 0.75 * size;  // digits and lower-case letters: no need of the full line
        one.places.push_back(box);
      }
      wishes.push_back(std::move(one));
    }
    page.wishes.push_back(std::move(wishes));
  }
}

namespace {

/// All lines of words as one box; the first line is a size bigger.
TextBox block_box(const std::vector<std::string>& words, double size, Vec2 centre, double angle) {
  double width = 0.0;
  for (const std::string& line : words) width = std::max(width, text_width(line, size));
  width = std::max(width, text_width(words.front(), 1.25 * size));
  return {centre, width, 1.5 * size * static_cast<double>(words.size()) + 0.4 * size, angle};
}

void write_block(Page& page, const std::vector<std::string>& words, const TextBox& box,
                 double size) {
  const double angle = radians(box.angle);
  const Vec2 down{-std::sin(angle), std::cos(angle)};
  const double step = 1.5 * size;
  double at = -0.5 * step * static_cast<double>(words.size() - 1);
  bool first = true;
  for (const std::string& line : words) {
    const bool name = first && words.size() > 1;
    page.svg.text(name ? "name" : "words", box.centre + at * down, name ? 1.25 * size : size, line,
                  Anchor::middle, box.angle);
    first = false;
    at += step;
  }
  page.taken.add_box(box);
}

}  // namespace

void draw_piece_words(Page& page, const Laid& piece, const std::vector<std::string>& words) {
  Vec2 low{1e9, 1e9};
  Vec2 high{-1e9, -1e9};
  Vec2 middle;
  for (const Vec2 p : piece.outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  middle = lerp(low, high, 0.5);
  std::string one_line;
  for (const std::string& line : words) one_line += (one_line.empty() ? "" : ", ") + line;
  const std::array<std::vector<std::string>, 2> shapes = {words, {one_line}};
  for (const auto& shape : shapes) {
    for (const double size : {page.text_mm, 3.5, 3.0}) {
      TextBox best;
      double best_distance = 1e18;
      for (const double angle : {0.0, -90.0}) {
        for (double y = low.y + 2; y < high.y; y += 4) {
          for (double x = low.x + 2; x < high.x; x += 4) {
            const TextBox box = block_box(shape, size, {x, y}, angle);
            const double away = distance({x, y}, middle) + (angle == 0.0 ? 0.0 : 1e6);
            if (away < best_distance && inside(piece.outline, {x, y}) &&
                page.taken.is_free(box, 2.0)) {
              best = box;
              best_distance = away;
            }
          }
        }
        if (best_distance < 1e18) break;
      }
      if (best_distance < 1e18) {
        write_block(page, shape, best, size);
        return;
      }
    }
  }
  // no room at all: below the piece, where nothing else stands
  const double size = 3.5;
  write_block(page, {one_line}, block_box({one_line}, size, {middle.x, high.y + 25.0}, 0.0), size);
}

}  // namespace pinwright::api
