#include "engine/pattern/opened_piece.h"

#include <algorithm>
#include <cmath>

#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kSameNotchMm = 1e-9;

/// Exact in both directions; zero stays the zero it is.
Vec2 across(Vec2 p) { return {p.x == 0.0 ? p.x : -p.x, p.y}; }

Curve across(const Curve& curve) {
  Curve out;
  out.points.assign(curve.points.rbegin(), curve.points.rend());
  for (Vec2& p : out.points) p = across(p);
  return out;
}

Line across(const Line& line) { return {line.id, across(line.from), across(line.to)}; }

/// The other direction of a place on an edge. `half` is the edge in the half's own direction, so
/// that both ways take the same length.
double from_other_end(const Curve& half, const Curve& turned, double at) {
  return std::clamp(length(half) - at, 0.0, length(turned));
}

/// The same piece seen from the other side of the cloth: x -> -x, the ring reversed.
Piece mirrored(const Piece& piece, bool back) {
  Piece out = piece;
  std::reverse(out.edges.begin(), out.edges.end());
  for (Edge& edge : out.edges) edge.curve = across(edge.curve);
  for (Notch& notch : out.notches) {
    const Edge* was = find_edge(piece, notch.edge);
    const Edge* is = find_edge(out, notch.edge);
    if (was == nullptr || is == nullptr) continue;
    const Curve& half = back ? is->curve : was->curve;
    notch.at_mm = from_other_end(half, is->curve, notch.at_mm);
  }
  for (Dart& dart : out.darts) std::swap(dart.leg_in, dart.leg_out);
  for (Landmark& mark : out.landmarks) mark.at = across(mark.at);
  for (Line& line : out.lengthen_lines) line = across(line);
  out.grainline = across(out.grainline);
  return out;
}

/// Whether both halves have this mark in the same place on the centre line. An id that ends like a
/// side's always gets its side, so that it can be told apart.
bool is_common(const Landmark& mark, const Piece& other) {
  if (mark.at.x != 0.0) return false;
  if (without_side(mark.id, Side::left) || without_side(mark.id, Side::right)) return false;
  const Landmark* match = find_landmark(other, mark.id);
  return match != nullptr && match->at == mark.at;
}

void add_suffix(Piece& piece, const Piece& other, Side side) {
  for (Dart& dart : piece.darts) {
    dart.id = with_side(dart.id, side);
    dart.leg_in = with_side(dart.leg_in, side);
    dart.leg_out = with_side(dart.leg_out, side);
    const Landmark* aim = find_landmark(piece, dart.toward);
    if (aim != nullptr && !is_common(*aim, other)) dart.toward = with_side(dart.toward, side);
  }
  for (Landmark& mark : piece.landmarks)
    if (!is_common(mark, other)) mark.id = with_side(mark.id, side);
  for (Edge& edge : piece.edges) edge.id = with_side(edge.id, side);
  for (Notch& notch : piece.notches) {
    notch.id = with_side(notch.id, side);
    notch.edge = with_side(notch.edge, side);
  }
  for (Line& line : piece.lengthen_lines) line.id = with_side(line.id, side);
}

template <class List>
void append(List& to, const List& from) {
  to.insert(to.end(), from.begin(), from.end());
}

Problem mixed(const Piece& piece) {
  return {"sides-mixed", "piece " + piece.id,
          "the edges left and right of its centre line are not those of two halves",
          "give every edge but the centre line as a pair that ends in -left and -right, the right "
          "ones in the reversed order of the left ones"};
}

/// Ids of one side in the order of the list, without suffix.
template <class List>
std::vector<std::string> ids_of(const List& list, Side side) {
  std::vector<std::string> ids;
  for (const auto& one : list)
    if (auto id = without_side(one.id, side)) ids.push_back(std::move(*id));
  return ids;
}

/// The members named by `ids` and the side, in that order.
template <class List>
bool pick(const List& all, const std::vector<std::string>& ids, Side side, List& out) {
  for (const std::string& id : ids) {
    const std::string wanted = with_side(id, side);
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.id == wanted; });
    if (found == all.end()) return false;
    out.push_back(*found);
    out.back().id = id;
  }
  return true;
}

}  // namespace

std::string_view suffix(Side side) {
  if (side == Side::both) return "";
  return side == Side::left ? "-left" : "-right";
}

std::string with_side(const std::string& id, Side side) { return id + std::string(suffix(side)); }

std::optional<std::string> without_side(const std::string& id, Side side) {
  const std::string_view end = suffix(side);
  if (end.empty() || id.size() <= end.size() || !id.ends_with(end)) return {};
  return id.substr(0, id.size() - end.size());
}

Side other_side(Side side) {
  if (side == Side::both) return side;
  return side == Side::left ? Side::right : Side::left;
}

Side drawn_side(const Piece& piece) {
  const bool right = edge_of_role(piece, EdgeRole::centre_back) != nullptr ||
                     edge_of_role(piece, EdgeRole::cap) != nullptr ||
                     (piece.centre_line && piece.centre_line->role == EdgeRole::centre_back);
  return right ? Side::right : Side::left;
}

bool is_half(const Piece& piece) { return piece.fold && find_edge(piece, *piece.fold) != nullptr; }

bool is_pair(const Piece& piece) {
  if (piece.fold || piece.centre_line || piece.side != Side::both || piece.cut.count % 2 != 0)
    return false;
  return piece.cut.mirrored_pair || edge_of_role(piece, EdgeRole::opening) != nullptr;
}

Piece open_half(const Piece& left, const Piece& right) {
  const Side drawn = drawn_side(left);
  const Side turned = other_side(drawn);
  Piece base = drawn == Side::left ? left : right;
  const Piece other_half = drawn == Side::left ? right : left;
  Piece other = mirrored(other_half, false);
  const std::size_t fold = edge_index(base, *base.fold);
  const std::size_t n = base.edges.size();
  const Edge centre = base.edges[fold];
  add_suffix(base, other_half, drawn);
  add_suffix(other, drawn == Side::left ? left : right, turned);

  Piece out = base;
  out.edges.clear();
  const auto one = [&](std::size_t i) { out.edges.push_back(base.edges[i]); };
  const auto two = [&](std::size_t i) { out.edges.push_back(other.edges[n - 1 - i]); };
  for (std::size_t i = 0; i < fold; ++i) one(i);
  for (std::size_t i = fold; i-- > 0;) two(i);
  for (std::size_t i = n - 1; i > fold; --i) two(i);
  for (std::size_t i = fold + 1; i < n; ++i) one(i);
  append(out.notches, other.notches);
  append(out.darts, other.darts);
  for (const Landmark& mark : other.landmarks)
    if (landmark_index(out, mark.id) == kNowhere) out.landmarks.push_back(mark);
  append(out.lengthen_lines, other.lengthen_lines);
  out.fold.reset();
  out.centre_line = centre;
  return out;
}

Result<Piece> close_half(const Piece& opened, Side side) {
  if (!opened.centre_line || opened.edges.size() % 2 != 0) return mixed(opened);
  const Side drawn = drawn_side(opened);
  const std::vector<std::string> ids = ids_of(opened.edges, drawn);
  if (ids.size() * 2 != opened.edges.size()) return mixed(opened);
  std::size_t fold = 0;
  while (fold < opened.edges.size() && without_side(opened.edges[fold].id, drawn)) ++fold;

  Piece out = opened;
  out.edges.clear();
  out.notches.clear();
  out.darts.clear();
  out.landmarks.clear();
  out.lengthen_lines.clear();
  bool found = pick(opened.edges, ids, side, out.edges);
  found = found && pick(opened.notches, ids_of(opened.notches, drawn), side, out.notches);
  found = found && pick(opened.darts, ids_of(opened.darts, drawn), side, out.darts);
  found = found && pick(opened.lengthen_lines, ids_of(opened.lengthen_lines, drawn), side,
                        out.lengthen_lines);
  if (!found || fold > ids.size()) return mixed(opened);
  const auto plain = [&](std::string& id) {
    if (auto without = without_side(id, side)) id = std::move(*without);
  };
  for (Notch& notch : out.notches) plain(notch.edge);
  for (Dart& dart : out.darts) plain(dart.leg_in), plain(dart.leg_out), plain(dart.toward);
  for (const Landmark& mark : opened.landmarks) {
    Landmark one = mark;
    if (auto id = without_side(mark.id, drawn)) {
      const Landmark* match = find_landmark(opened, with_side(*id, side));
      if (match == nullptr) return mixed(opened);
      one = {*id, match->at};
    } else if (without_side(mark.id, other_side(drawn))) {
      continue;
    }
    // On the turned half everything is turned back below; a common mark lies on x = 0.
    out.landmarks.push_back(one);
  }
  out.centre_line.reset();
  out.fold = opened.centre_line->id;
  if (side != drawn) {
    std::reverse(out.edges.begin(), out.edges.end());  // mirrored() reverses them again
    out = mirrored(out, true);
    out.grainline = opened.grainline;
  }
  out.edges.insert(out.edges.begin() + static_cast<std::ptrdiff_t>(fold), *opened.centre_line);
  return out;
}

Piece part_pair(const Piece& pair, Side side) {
  const bool turn = pair.cut.mirrored_pair && side != drawn_side(pair);
  Piece out = turn ? mirrored(pair, false) : pair;
  out.id = with_side(pair.id, side);
  if (!pair.name.empty()) out.name = pair.name + ", " + std::string(to_text(side));
  out.cut = {pair.cut.count / 2, false};
  out.side = side;
  return out;
}

Piece pair_again(const Piece& parted) {
  const Side side = parted.side;
  const bool strip = edge_of_role(parted, EdgeRole::opening) != nullptr;
  Piece out = !strip && side != drawn_side(parted) ? mirrored(parted, true) : parted;
  if (auto id = without_side(parted.id, side)) out.id = std::move(*id);
  const std::string said = ", " + std::string(to_text(side));
  if (out.name.ends_with(said)) out.name.resize(out.name.size() - said.size());
  out.cut = {parted.cut.count * 2, !strip};
  out.side = Side::both;
  return out;
}

Piece settled(const Piece& half) {
  if (!is_half(half) && !is_pair(half)) return half;
  Piece out = half;
  for (Notch& notch : out.notches) {
    const Edge* edge = find_edge(out, notch.edge);
    if (edge == nullptr) continue;
    const double other = from_other_end(edge->curve, across(edge->curve), notch.at_mm);
    notch.at_mm = from_other_end(edge->curve, edge->curve, other);
  }
  return out;
}

bool same_piece(const Piece& a, const Piece& b) {
  if (a.notches.size() != b.notches.size()) return false;
  Piece other = b;
  for (std::size_t i = 0; i < a.notches.size(); ++i)
    if (std::abs(a.notches[i].at_mm - b.notches[i].at_mm) <= kSameNotchMm)
      other.notches[i].at_mm = a.notches[i].at_mm;
  return a == other;
}

}  // namespace pinwright
