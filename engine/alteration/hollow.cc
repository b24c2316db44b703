#include "engine/alteration/hollow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

const double kMostLogWeight = std::log(5.0);
constexpr double kMetMm = 1e-9;

struct Triangle {
  Vec2 a, t, b;
};

std::optional<Triangle> triangle_of(Vec2 a, Vec2 along_a, Vec2 b, Vec2 along_b) {
  const double det = cross(along_a, along_b);
  if (std::abs(det) < 1e-6 * norm(along_a) * norm(along_b)) return {};
  const double from_a = cross(b - a, along_b) / det;
  const double to_b = cross(b - a, along_a) / -det;
  if (!(from_a > 0.0 && to_b > 0.0)) return {};
  return Triangle{a, a + from_a * along_a, b};
}

// Weights of a point in the triangle; they sum to 1.
using Weights = std::array<double, 3>;

Weights weights_in(const Triangle& tri, Vec2 p) {
  const double whole = cross(tri.t - tri.a, tri.b - tri.a);
  const double of_t = cross(p - tri.a, tri.b - tri.a) / whole;
  const double of_b = cross(tri.t - tri.a, p - tri.a) / whole;
  return {1.0 - of_t - of_b, of_t, of_b};
}

class Redrawing {
 public:
  Redrawing(const Curve& was, const Triangle& from, const Triangle& to) : to_(to) {
    for (const Vec2 p : was.points) weights_.push_back(weights_in(from, p));
  }
  bool inside() const {
    return std::all_of(weights_.begin(), weights_.end(), [](const Weights& w) {
      return w[0] >= -1e-6 && w[1] >= -1e-6 && w[2] >= -1e-6;
    });
  }
  // log weights: of T, of A.
  Curve at(const std::array<double, 2>& logs) const {
    const double of_t = std::exp(logs[0]);
    const double of_a = std::exp(logs[1]);
    Curve curve;
    for (const Weights& w : weights_) {
      const double a = of_a * w[0];
      const double t = of_t * w[1];
      const double sum = a + t + w[2];
      curve.points.push_back((a / sum) * to_.a + (t / sum) * to_.t + (w[2] / sum) * to_.b);
    }
    curve.points.front() = to_.a;
    curve.points.back() = to_.b;
    return curve;
  }

 private:
  Triangle to_;
  std::vector<Weights> weights_;
};

// How far the curve is from what is asked; nothing when it does not pass the level once.
std::optional<std::vector<double>> misses(const Curve& curve, const HollowAsk& ask) {
  std::vector<double> miss;
  if (ask.length) miss.push_back(length(curve) - *ask.length);
  if (ask.level) {
    const std::vector<CurvePlace> places = at_height(curve, *ask.level);
    if (places.size() != 1) return {};
    miss.push_back(point(curve, places.front()).x - ask.x);
  }
  return miss;
}

double worst(const std::vector<double>& miss) {
  double most = 0.0;
  for (const double m : miss) most = std::max(most, std::abs(m));
  return most;
}

// One Newton step in the log weights by differences; a single wish uses the weight of T alone.
std::optional<std::array<double, 2>> newton_step(const Redrawing& drawing, const HollowAsk& ask,
                                                 const std::array<double, 2>& logs,
                                                 const std::vector<double>& miss) {
  constexpr double kStep = 1e-6;
  double slope[2][2] = {};
  for (std::size_t k = 0; k < miss.size(); ++k) {
    std::array<double, 2> aside = logs;
    aside[k] += kStep;
    const auto there = misses(drawing.at(aside), ask);
    if (!there) return {};
    for (std::size_t i = 0; i < miss.size(); ++i) slope[i][k] = ((*there)[i] - miss[i]) / kStep;
  }
  if (miss.size() == 1) {
    if (std::abs(slope[0][0]) < 1e-9) return {};
    return std::array<double, 2>{-miss[0] / slope[0][0], 0.0};
  }
  const double det = slope[0][0] * slope[1][1] - slope[0][1] * slope[1][0];
  if (std::abs(det) < 1e-9) return {};
  return std::array<double, 2>{-(miss[0] * slope[1][1] - miss[1] * slope[0][1]) / det,
                               -(slope[0][0] * miss[1] - slope[1][0] * miss[0]) / det};
}

}  // namespace

std::optional<Curve> redraw_hollow(const Curve& was, const HollowAsk& ask) {
  if (was.segments() == 0 || inflections(was) != 0) return {};
  const auto from = triangle_of(was.start(), start_tangent(was), was.end(), end_tangent(was));
  const auto to = triangle_of(ask.start, ask.start_direction, ask.end, ask.end_direction);
  if (!from || !to) return {};
  const Redrawing drawing(was, *from, *to);
  if (!drawing.inside()) return {};
  std::array<double, 2> logs = {0.0, 0.0};
  for (int round = 0; round < 40; ++round) {
    const Curve curve = drawing.at(logs);
    const auto miss = misses(curve, ask);
    if (!miss) return {};
    if (worst(*miss) <= kMetMm) return curve;
    const auto step = newton_step(drawing, ask, logs, *miss);
    if (!step) return {};
    double share = std::min(1.0, 0.5 / std::max(std::abs((*step)[0]), std::abs((*step)[1])));
    for (;; share *= 0.5) {
      if (share < 1e-4) return {};
      const std::array<double, 2> next = {logs[0] + share * (*step)[0],
                                          logs[1] + share * (*step)[1]};
      if (std::max(std::abs(next[0]), std::abs(next[1])) > kMostLogWeight) continue;
      const auto there = misses(drawing.at(next), ask);
      if (!there || worst(*there) >= worst(*miss)) continue;
      logs = next;
      break;
    }
  }
  return {};
}

}  // namespace pinwright
