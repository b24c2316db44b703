#include "api/drawing/moves.h"

#include <algorithm>
#include <cmath>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/nearest.h"

namespace pinwright::api {
namespace {

constexpr double kApartMm = 4.0;
constexpr double kShortStretchMm = 30.0;

Move move_of(Vec2 from, Vec2 to) { return {from, to, distance(from, to)}; }

std::vector<Move> profile(const Curve& before, const Curve& after) {
  const double total = length(after);
  const auto n = static_cast<std::size_t>(std::clamp(std::round(total / kApartMm), 16.0, 160.0));
  std::vector<Move> out;
  for (std::size_t k = 0; k <= n; ++k) {
    const Vec2 p = point_at(after, total * static_cast<double>(k) / static_cast<double>(n));
    out.push_back(move_of(nearest(before, p).point, p));
  }
  out.front() = move_of(before.start(), after.start());
  out.back() = move_of(before.end(), after.end());
  return out;
}

/// A stretch [from, to] of a profile about one greatest value.
struct Stretch {
  std::size_t from = 0;
  std::size_t to = 0;
};

/// Grows over all neighbours that are as great as the peak, nearly.
Stretch plateau(const std::vector<Move>& p, std::size_t peak) {
  const double least = 0.95 * p[peak].mm - 0.02;
  Stretch s{peak, peak};
  while (s.from > 0 && p[s.from - 1].mm >= least) --s.from;
  while (s.to + 1 < p.size() && p[s.to + 1].mm >= least) ++s.to;
  return s;
}

/// Grows on downhill until the values have risen by what is worth another arrow.
Stretch hill(const std::vector<Move>& p, Stretch s) {
  const auto worth = [](double low, double now) { return now > low + std::max(0.5, 0.15 * now); };
  double low = p[s.from].mm;
  while (s.from > 0 && !worth(low, p[s.from - 1].mm)) low = std::min(low, p[--s.from].mm);
  low = p[s.to].mm;
  while (s.to + 1 < p.size() && !worth(low, p[s.to + 1].mm)) low = std::min(low, p[++s.to].mm);
  return s;
}

/// What an edge's profile has to tell: moves inside it, and whether its corners are told by them.
struct EdgeMoves {
  std::vector<Move> inner;
  bool start_told = false;
  bool end_told = false;
};

EdgeMoves edge_moves(const std::vector<Move>& p, double total) {
  EdgeMoves out;
  std::vector<bool> taken(p.size(), false);
  const double step = total / static_cast<double>(p.size() - 1);
  while (true) {
    std::size_t peak = p.size();
    for (std::size_t k = 0; k < p.size(); ++k) {
      if (!taken[k] && (peak == p.size() || p[k].mm > p[peak].mm)) peak = k;
    }
    if (peak == p.size() || p[peak].mm < kLeastMoveMm) return out;
    const Stretch top = plateau(p, peak);
    const Stretch all = hill(p, top);
    // the foot of a hill already told is no peak of its own
    const bool foot = (all.from > 0 && taken[all.from] && taken[peak > 0 ? peak - 1 : 0]) ||
                      (peak + 1 < p.size() && taken[peak + 1]);
    std::fill(taken.begin() + static_cast<std::ptrdiff_t>(all.from),
              taken.begin() + static_cast<std::ptrdiff_t>(all.to) + 1, true);
    if (foot) continue;
    const bool at_start = top.from == 0;
    const bool at_end = top.to + 1 == p.size();
    const double long_enough = std::min(kShortStretchMm, 0.25 * total);
    const bool corner = (at_start || at_end) && !(at_start && at_end) &&
                        step * static_cast<double>(top.to - top.from) < long_enough;
    if (corner) continue;  // told by the corner itself
    out.inner.push_back(p[(top.from + top.to) / 2]);
    out.start_told = out.start_told || at_start;
    out.end_told = out.end_told || at_end;
  }
}

}  // namespace

bool on_outline(const Piece& piece, Vec2 at) {
  return std::any_of(piece.edges.begin(), piece.edges.end(),
                     [at](const Edge& edge) { return nearest(edge.curve, at).distance < 1.0; });
}

double greatest_move(const Curve& before, const Curve& after) {
  double most = 0.0;
  if (before == after) return most;
  for (const Move& move : profile(before, after)) most = std::max(most, move.mm);
  return most;
}

std::vector<Move> moves(const Piece& before, const Piece& after) {
  const std::size_t n = after.edges.size();
  std::vector<Move> out;
  std::vector<Move> corner(n);  // corner i: where edge i ends
  std::vector<bool> told(n, false);
  for (std::size_t i = 0; i < n; ++i) {
    const Edge* old = find_edge(before, after.edges[i].id);
    if (old == nullptr || old->curve == after.edges[i].curve) continue;
    const auto p = profile(old->curve, after.edges[i].curve);
    const EdgeMoves found = edge_moves(p, length(after.edges[i].curve));
    out.insert(out.end(), found.inner.begin(), found.inner.end());
    const std::size_t start = (i + n - 1) % n;
    corner[i] = p.back();
    corner[start] = p.front();
    told[i] = told[i] || found.end_told;
    told[start] = told[start] || found.start_told;
  }
  for (std::size_t i = 0; i < n; ++i) {
    if (!told[i] && corner[i].mm >= kLeastMoveMm) out.push_back(corner[i]);
  }
  for (const Landmark& mark : after.landmarks) {
    const Landmark* old = find_landmark(before, mark.id);
    if (old == nullptr || on_outline(after, mark.at)) continue;
    const Move move = move_of(old->at, mark.at);
    const bool told_already = std::any_of(out.begin(), out.end(), [&](const Move& m) {
      return distance(m.from, move.from) < 1.0 && distance(m.to, move.to) < 1.0;
    });
    if (move.mm >= kLeastMoveMm && !told_already) out.push_back(move);
  }
  return out;
}

}  // namespace pinwright::api
