#include "engine/pattern/strip.h"

#include <algorithm>
#include <cmath>

#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kSameMm = 1e-9;
/// A notch this near to a seam belongs to the seam.
constexpr double kAtSeamMm = 0.01;

/// Places along the strip where one stretch ends and the next begins, with both ends.
std::vector<double> places(const std::vector<double>& stretches, double ratio) {
  std::vector<double> out = {0.0};
  double sum = 0.0;
  for (const double s : stretches) out.push_back(ratio * (sum += s));
  return out;
}

double carried(double at, const std::vector<double>& from, const std::vector<double>& to) {
  for (std::size_t i = 0; i < from.size(); ++i)
    if (std::abs(at - from[i]) <= kAtSeamMm) return to[i];
  for (std::size_t i = 1; i < from.size(); ++i) {
    if (at > from[i]) continue;
    const double share = (at - from[i - 1]) / (from[i] - from[i - 1]);
    return to[i - 1] + share * (to[i] - to[i - 1]);
  }
  return to.back() + (at - from.back());
}

double span(const std::vector<double>& p) { return p.back() - p.front(); }

}  // namespace

std::vector<double> opening_stretches(const Block& block, const Binding& binding) {
  std::vector<double> runs;
  for (const RunPart& part : binding.opening) {
    const Piece* piece = find_piece(block, part.piece);
    const Edge* edge = piece == nullptr ? nullptr : find_edge(*piece, part.edge);
    runs.push_back(edge == nullptr ? 0.0 : length(edge->curve));
  }
  if (binding.copies != 2) return runs;
  std::vector<double> round(runs.rbegin(), runs.rend());
  round.insert(round.end(), runs.begin(), runs.end());
  return round;
}

void cut_strip(Block& block, const Binding& binding, const std::vector<double>& before) {
  Piece* strip = find_piece(block, binding.piece);
  const Edge* opening = strip == nullptr ? nullptr : edge_of_role(*strip, EdgeRole::opening);
  if (opening == nullptr) return;
  const std::vector<double> after = opening_stretches(block, binding);
  const double left = opening->curve.start().x;
  const double was = opening->curve.end().x - left;
  const std::vector<double> to = places(after, binding.ratio);
  const bool known = before.size() == after.size();
  bool same = std::abs(was - span(to)) <= kSameMm;
  for (std::size_t i = 0; known && i < after.size(); ++i)
    same = same && std::abs(before[i] - after[i]) <= kSameMm;
  if (same) return;
  std::vector<double> from = places(known ? before : after, 1.0);
  const double stretch = was / span(from);
  for (double& place : from) place *= stretch;

  const auto at = [&](double x) { return carried(x, from, to); };
  const auto moved = [&](Vec2 p) { return Vec2{left + at(p.x - left), p.y}; };
  for (Notch& notch : strip->notches) {
    const Edge* edge = find_edge(*strip, notch.edge);
    if (edge == nullptr) continue;
    if (edge->role == EdgeRole::opening) notch.at_mm = at(notch.at_mm);
    if (edge->role == EdgeRole::folded) notch.at_mm = span(to) - at(was - notch.at_mm);
    notch.at_mm = std::min(notch.at_mm, edge->role == EdgeRole::join ? notch.at_mm : span(to));
  }
  for (Edge& edge : strip->edges)
    edge.curve = straight_curve(moved(edge.curve.start()), moved(edge.curve.end()));
  for (Landmark& mark : strip->landmarks) mark.at = moved(mark.at);
  for (Line& line : strip->lengthen_lines) line.from = moved(line.from), line.to = moved(line.to);
  strip->grainline.from = moved(strip->grainline.from);
  strip->grainline.to = moved(strip->grainline.to);
}

}  // namespace pinwright
