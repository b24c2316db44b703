#include "engine/alteration/dart_topology.h"

#include <algorithm>
#include <numbers>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/nearest.h"

namespace pinwright {
namespace {

bool taken(const Piece& piece, const std::string& id) {
  return edge_index(piece, id) != kNowhere ||
         std::any_of(piece.darts.begin(), piece.darts.end(),
                     [&](const Dart& d) { return d.id == id; });
}

std::string free_id(const Piece& piece, const std::string& wish) {
  if (!taken(piece, wish)) return wish;
  for (int i = 2;; ++i) {
    const std::string id = wish + "-" + std::to_string(i);
    if (!taken(piece, id)) return id;
  }
}

std::string dart_name(const Piece& piece, EdgeRole role) {
  const std::string seam = role == EdgeRole::side && piece.id == "front" ? "bust"
                           : role == EdgeRole::side                      ? "side"
                           : role == EdgeRole::shoulder                  ? "shoulder"
                                                                         : "waist";
  for (int i = 1;; ++i) {
    const std::string id = seam + "-dart" + (i == 1 ? "" : "-" + std::to_string(i));
    if (!taken(piece, id) && !taken(piece, id + "-in") && !taken(piece, id + "-out")) return id;
  }
}

std::pair<std::string, std::string> part_names(const Piece& piece, const Edge& edge) {
  const bool side = edge.role == EdgeRole::side;
  const std::string first = free_id(piece, edge.id + (side ? "-lower" : "-1"));
  const std::string second = free_id(piece, edge.id + (side ? "-upper" : "-2"));
  return {first, second};
}

// "side-lower" and "side-upper" give "side".
std::string common_name(const Piece& piece, const std::string& a, const std::string& b) {
  std::size_t n = 0;
  while (n < a.size() && n < b.size() && a[n] == b[n]) ++n;
  const std::size_t dash = a.rfind('-', n);
  const std::string base = dash == std::string::npos || dash == 0 ? a : a.substr(0, dash);
  return base == a || base == b ? base : free_id(piece, base);
}

void part_runs(std::vector<RunPart>& run, const std::string& piece, const std::string& edge,
               const std::string& first, const std::string& second) {
  for (std::size_t i = 0; i < run.size(); ++i) {
    if (run[i].piece != piece || run[i].edge != edge) continue;
    const RunPart whole = run[i];
    run[i].edge = whole.reversed ? second : first;
    run.insert(run.begin() + static_cast<std::ptrdiff_t>(i) + 1,
               RunPart{piece, whole.reversed ? first : second, whole.reversed});
    ++i;
  }
}

void join_runs(std::vector<RunPart>& run, const std::string& piece, const std::string& first,
               const std::string& second, const std::string& whole) {
  for (std::size_t i = 0; i < run.size(); ++i) {
    if (run[i].piece != piece) continue;
    if (run[i].edge == second) {
      run.erase(run.begin() + static_cast<std::ptrdiff_t>(i));
      --i;
    } else if (run[i].edge == first) {
      run[i].edge = whole;
    }
  }
}

// The ring of one piece parted at a place; returns the index of the first part.
void part_ring(Piece& piece, const std::string& edge_id, double s, Vec2 point,
               const std::pair<std::string, std::string>& parts, const std::string& dart,
               const std::string& toward) {
  const std::size_t i = edge_index(piece, edge_id);
  const Edge whole = piece.edges[i];
  auto [first_curve, second_curve] = split(whole.curve, place_at(whole.curve, s));
  const double at = length(first_curve);
  if (whole.straight) {
    first_curve = straight_curve(first_curve.start(), first_curve.end());
    second_curve = straight_curve(second_curve.start(), second_curve.end());
  }
  second_curve.points.front() = first_curve.points.back();
  Edge first = whole;
  first.id = parts.first;
  first.curve = first_curve;
  Edge second = whole;
  second.id = parts.second;
  second.curve = second_curve;
  const Vec2 mouth = first_curve.end();
  const auto leg = [&](const char* end, Vec2 from, Vec2 to) {
    Edge e = whole;
    e.id = dart + end;
    e.role = EdgeRole::dart_leg;
    e.curve = straight_curve(from, to);
    e.straight = true;
    return e;
  };
  piece.edges[i] = first;
  const std::vector<Edge> more = {leg("-in", mouth, point), leg("-out", point, mouth), second};
  piece.edges.insert(piece.edges.begin() + static_cast<std::ptrdiff_t>(i) + 1, more.begin(),
                     more.end());
  for (Notch& n : piece.notches) {
    if (n.edge != edge_id) continue;
    const bool above = n.at_mm > at;
    n.edge = above ? parts.second : parts.first;
    if (above) n.at_mm -= at;
  }
  piece.darts.push_back({dart, dart + "-in", dart + "-out", toward});
}

std::size_t join_ring(Piece& piece, const DartPlace& d, const std::string& whole, const Curve& line,
                      bool straight) {
  const std::string first = piece.edges[d.before].id;
  const std::string second = piece.edges[d.after].id;
  for (Notch& n : piece.notches) {
    if (n.edge != first && n.edge != second) continue;
    const Vec2 p = point_at(find_edge(piece, n.edge)->curve, n.at_mm);
    n.at_mm = length_to(line, nearest(line, p).at);
    n.edge = whole;
  }
  Edge one = piece.edges[d.before];
  one.id = whole;
  one.curve = straight ? straight_curve(line.start(), line.end()) : line;
  one.straight = straight;
  // The four edges before, in, out, after become one; the ring may begin among them.
  std::vector<Edge> ring;
  std::size_t at = 0;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    if (i == d.in || i == d.out || i == d.after) continue;
    if (i == d.before) at = ring.size();
    ring.push_back(i == d.before ? one : piece.edges[i]);
  }
  piece.edges = std::move(ring);
  piece.darts.erase(piece.darts.begin() + static_cast<std::ptrdiff_t>(d.dart));
  return at;
}

std::vector<std::size_t> linings_of(const Block& block, const std::string& shell) {
  std::vector<std::size_t> pieces;
  for (const Lining& l : block.linings)
    if (l.shell == shell && piece_index(block, l.piece) != kNowhere)
      pieces.push_back(piece_index(block, l.piece));
  return pieces;
}

}  // namespace

DartPlace insert_dart(Block& block, std::size_t piece_at, std::size_t edge, double s, Vec2 point,
                      const std::string& toward) {
  Piece& piece = block.pieces[piece_at];
  const Edge whole = piece.edges[edge];
  const auto parts = part_names(piece, whole);
  const std::string dart = dart_name(piece, whole.role);
  for (const std::size_t lining : linings_of(block, piece.id))
    if (edge_index(block.pieces[lining], whole.id) != kNowhere)
      part_ring(block.pieces[lining], whole.id, s, point, parts, dart, toward);
  part_ring(piece, whole.id, s, point, parts, dart, toward);
  for (Seam& seam : block.seams)
    for (auto* run : {&seam.a, &seam.b})
      part_runs(*run, piece.id, whole.id, parts.first, parts.second);
  for (Binding& binding : block.bindings)
    part_runs(binding.opening, piece.id, whole.id, parts.first, parts.second);
  for (Join& join : block.joins) {
    for (CornerRef& c : join.corners) {
      if (c.piece != piece.id) continue;
      if (c.before == whole.id) c.before = parts.second;
      if (c.after == whole.id) c.after = parts.first;
    }
  }
  const std::string seam_name(to_text(whole.role));
  std::string id = seam_name + "-over-" + piece.id + "-" + dart;
  block.joins.push_back(
      {id,
       "The " + seam_name + " over the " + piece.id + "'s " + dart,
       {{piece.id, parts.first, dart + "-in"}, {piece.id, dart + "-out", parts.second}},
       std::numbers::pi});
  return place_of_dart(piece, piece_at, piece.darts.size() - 1);
}

std::size_t remove_dart(Block& block, const DartPlace& d, const Curve& line, bool straight) {
  Piece& piece = block.pieces[d.piece];
  const std::string first = piece.edges[d.before].id;
  const std::string second = piece.edges[d.after].id;
  const std::string in = piece.edges[d.in].id;
  const std::string out = piece.edges[d.out].id;
  const std::string dart = piece.darts[d.dart].id;
  const std::string whole = common_name(piece, first, second);
  for (const std::size_t lining : linings_of(block, piece.id)) {
    Piece& follows = block.pieces[lining];
    for (std::size_t i = 0; i < follows.darts.size(); ++i) {
      if (follows.darts[i].id != dart) continue;
      const DartPlace there = place_of_dart(follows, lining, i);
      join_ring(follows, there, whole, line, straight);
      break;
    }
  }
  const std::size_t at = join_ring(piece, d, whole, line, straight);
  for (Seam& seam : block.seams)
    for (auto* run : {&seam.a, &seam.b}) join_runs(*run, piece.id, first, second, whole);
  for (Binding& binding : block.bindings)
    join_runs(binding.opening, piece.id, first, second, whole);
  std::erase_if(block.joins, [&](const Join& join) {
    return std::any_of(join.corners.begin(), join.corners.end(), [&](const CornerRef& c) {
      return c.piece == piece.id && (c.after == in || c.before == out);
    });
  });
  for (Join& join : block.joins) {
    for (CornerRef& c : join.corners) {
      if (c.piece != piece.id) continue;
      if (c.before == second) c.before = whole;
      if (c.after == first) c.after = whole;
    }
  }
  return at;
}

Curve sewn_line(const Piece& piece, const DartPlace& d) {
  const Curve& first = piece.edges[d.before].curve;
  const Curve& second = piece.edges[d.after].curve;
  const Vec2 point = piece.edges[d.in].curve.end();
  const double angle = turn(second.start() - point, first.end() - point);
  Curve onto = apply(rotation_about(point, angle), second);
  onto.points.front() = first.end();
  return joined(first, onto);
}

void turn_part(Piece& piece, std::size_t first, std::size_t last, const Affine& motion) {
  const Piece old = piece;
  for (std::size_t corner = first;; corner = next_in(piece, corner)) {
    const Vec2 at = old.edges[corner].curve.end();
    for (Landmark& mark : piece.landmarks)
      if (mark.at == at) mark.at = apply(motion, at);
    if (corner == last) break;
    Edge& edge = piece.edges[next_in(piece, corner)];
    edge.curve = apply(motion, edge.curve);
    if (edge.straight) edge.curve = straight_curve(edge.curve.start(), edge.curve.end());
  }
  // The edges that lead to the part and away from it meet it at its ends.
  piece.edges[first].curve.points.back() = apply(motion, old.edges[first].curve.end());
  piece.edges[next_in(piece, last)].curve.points.front() =
      apply(motion, old.edges[last].curve.end());
  for (const std::size_t e : {first, next_in(piece, last)})
    if (piece.edges[e].straight)
      piece.edges[e].curve =
          straight_curve(piece.edges[e].curve.start(), piece.edges[e].curve.end());
}

}  // namespace pinwright
