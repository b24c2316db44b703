// Corners of the cutting line.
//
//            a's line                       M  mitre: both lines are carried on to where they meet
//   --------------------------+ - - - - -+    (or cut back to it, at a hollow corner and where one
//   ==== a =================C            :    allowance is much wider than the other)
//                           |            |  b's line
//                           b            |
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "engine/geometry/offset_path.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

constexpr double kMitreLimit = 4.0;
constexpr double kSamePlaceMm = 1e-6;

/// What lies between two runs. Positions count points along a run: 2.25 is a quarter of the way
/// from point 2 to point 3; below 0 and past the last point they mean nothing, so carried-on lines
/// are told by `path` alone.
struct Joint {
  double cut_a = 0.0;      ///< a is kept up to here
  double cut_b = 0.0;      ///< b is kept from here
  std::vector<Vec2> path;  ///< points between, cut places included
  std::vector<bool> of_b;  ///< line from path[i] to path[i + 1] belongs to b
  std::vector<bool> parallel;
};

double last_position(const Run& r) { return static_cast<double>(r.moved.size() - 1); }

struct Meet {
  double on_a = 0.0, on_b = 0.0;
  Vec2 point;
};

/// Where two lines of segments cross, the crossing nearest to `near`; only segments that come
/// within `reach` of it are looked at.
std::optional<Meet> meet(const std::vector<Vec2>& a, const std::vector<Vec2>& b, Vec2 near,
                         double reach) {
  const auto close = [&](Vec2 p, Vec2 q) {
    const Vec2 d = q - p;
    const double run = dot(d, d);
    const double u = run > 0.0 ? std::clamp(dot(near - p, d) / run, 0.0, 1.0) : 0.0;
    return distance(near, p + u * d) <= reach;
  };
  std::vector<std::size_t> in_b;
  for (std::size_t j = 0; j + 1 < b.size(); ++j) {
    if (close(b[j], b[j + 1])) in_b.push_back(j);
  }
  std::optional<Meet> best;
  for (std::size_t i = 0; i + 1 < a.size(); ++i) {
    if (!close(a[i], a[i + 1])) continue;
    for (const std::size_t j : in_b) {
      const Vec2 da = a[i + 1] - a[i], db = b[j + 1] - b[j];
      const double det = cross(da, db);
      if (std::abs(det) <= 1e-12 * norm(da) * norm(db)) continue;
      const double u = cross(b[j] - a[i], db) / det, v = cross(b[j] - a[i], da) / det;
      constexpr double kEdge = 1e-12;
      if (u < -kEdge || u > 1 + kEdge || v < -kEdge || v > 1 + kEdge) continue;
      const double uc = std::clamp(u, 0.0, 1.0);
      const Meet m{static_cast<double>(i) + uc, static_cast<double>(j) + std::clamp(v, 0.0, 1.0),
                   a[i] + uc * da};
      if (!best || distance(m.point, near) < distance(best->point, near)) best = m;
    }
  }
  return best;
}

Joint at_point(const Run& a, Vec2 m) {
  return {last_position(a), 0.0, {a.moved.back(), m}, {false}, {true}};
}

/// From the end of a to the start of b without a mitre; at a hollow corner by way of the corner,
/// which leaves a loop that the clean-up removes.
Joint stepped(const Run& a, const Run& b, bool hollow) {
  if (hollow) {
    return {last_position(a),
            0.0,
            {a.moved.back(), a.end, b.moved.front()},
            {false, true},
            {false, false}};
  }
  return {last_position(a), 0.0, {a.moved.back(), b.moved.front()}, {false}, {false}};
}

Joint plain_joint(const Run& a, const Run& b) {
  const Vec2 qa = a.moved.back(), qb = b.moved.front();
  const double widest = std::max(a.allowance, b.allowance);
  if (distance(qa, qb) <= kSamePlaceMm) return {last_position(a), 0.0, {qa, qb}, {false}, {true}};
  const double corner = turn(a.end_dir, b.start_dir);
  const double sine = std::sin(corner), cosine = std::cos(corner);
  // how far past the end of a, and before the start of b, the two lines meet
  const double past_a = (b.allowance - a.allowance * cosine) / sine;
  const double before_b = (a.allowance - b.allowance * cosine) / sine;
  const bool hollow = corner < 0.0;
  const Vec2 mitre = qa + past_a * a.end_dir;
  const double limit = kMitreLimit * widest;
  if (!hollow && past_a >= 0.0 && before_b >= 0.0 && std::isfinite(past_a + before_b)) {
    if (distance(a.end, mitre) <= limit) {
      Joint j = at_point(a, mitre);
      j.path.push_back(qb), j.of_b.push_back(true), j.parallel.push_back(true);
      return j;
    }
    if (corner > 0.5 * std::numbers::pi) {
      // cut off square to the line from the corner to the mitre, a full limit out
      const Vec2 out = unit(mitre - a.end);
      const auto cut = [&](Vec2 from, Vec2 dir) {
        return from + (limit - dot(from - a.end, out)) / dot(dir, out) * dir;
      };
      Joint j = at_point(a, cut(qa, a.end_dir));
      j.path.push_back(cut(qb, -b.start_dir)), j.of_b.push_back(false), j.parallel.push_back(false);
      j.path.push_back(qb), j.of_b.push_back(true), j.parallel.push_back(true);
      return j;
    }
    return stepped(a, b, false);
  }
  // at least one line is cut back: meet the lines themselves, carried on as far as a mitre may go
  std::vector<Vec2> la = a.moved, lb = b.moved;
  const double carry = limit + widest;
  if (!hollow) {
    la.push_back(qa + carry * a.end_dir);
    lb.insert(lb.begin(), qb - carry * b.start_dir);
  }
  const double shift = hollow ? 0.0 : 1.0;
  const double reach = hollow ? 20.0 * widest : limit;
  const std::optional<Meet> m = meet(la, lb, a.end, reach);
  if (!m || (!hollow && distance(m->point, a.end) > limit)) return stepped(a, b, hollow);
  Joint j{std::min(m->on_a, last_position(a)), std::max(m->on_b - shift, 0.0), {}, {}, {}};
  if (m->on_a > last_position(a)) j.path = {qa, m->point}, j.of_b = {false}, j.parallel = {true};
  if (j.path.empty()) j.path = {m->point};
  if (m->on_b < shift) j.path.push_back(qb), j.of_b.push_back(true), j.parallel.push_back(true);
  return j;
}

Vec2 mirrored(Vec2 p, Vec2 on, Vec2 axis) {
  const Vec2 d = p - on;
  return on + 2.0 * dot(d, axis) * axis - d;
}

Run turned(const Run& r) {
  Run b = r;
  std::reverse(b.moved.begin(), b.moved.end());
  std::swap(b.start, b.end);
  b.start_dir = -r.end_dir, b.end_dir = -r.start_dir;
  return b;
}

/// The end of a hem: side's line runs down to the fold, then its mirror image at the fold runs down
/// to the hem's line. Here the side comes first; the other end is made by turning both round.
std::optional<Joint> fold_joint(const Run& side, const Run& hem) {
  const Vec2 axis = hem.start_dir, corner = hem.start;
  const double far = 1e3 * (hem.allowance + side.allowance);
  std::vector<Vec2> line = side.moved;
  line.push_back(line.back() + far * side.end_dir);
  const std::vector<Vec2> fold{corner - far * axis, corner + far * axis};
  const std::optional<Meet> at_fold = meet(line, fold, corner, far);
  if (!at_fold || distance(at_fold->point, corner) > kMitreLimit * (side.allowance + 1e-3)) {
    return std::nullopt;
  }
  // from the fold up the side and past its start, mirrored
  std::vector<Vec2> down{at_fold->point};
  for (std::size_t i = static_cast<std::size_t>(std::ceil(at_fold->on_a)); i-- > 0;) {
    const Vec2 p = mirrored(line[i], corner, axis);
    if (distance(p, down.back()) > kSamePlaceMm) down.push_back(p);
  }
  const Vec2 on = side.moved.front() - far * side.start_dir;
  down.push_back(mirrored(on, corner, axis));
  std::vector<Vec2> edge = hem.moved;
  edge.insert(edge.begin(), hem.moved.front() - far * hem.start_dir);
  const std::optional<Meet> at_hem = meet(down, edge, corner, far);
  if (!at_hem || distance(at_hem->point, corner) > kMitreLimit * (hem.allowance + side.allowance)) {
    return std::nullopt;
  }
  Joint j{
      std::min(at_fold->on_a, last_position(side)), std::max(at_hem->on_b - 1.0, 0.0), {}, {}, {}};
  const auto line_to = [&](Vec2 p, bool of_hem, bool parallel) {
    j.path.push_back(p), j.of_b.push_back(of_hem), j.parallel.push_back(parallel);
  };
  j.path = {side.moved.back()};
  if (at_fold->on_a > last_position(side)) {
    line_to(at_fold->point, false, true);
  } else {
    j.path = {at_fold->point};
  }
  for (std::size_t i = 1; static_cast<double>(i) < at_hem->on_a; ++i) line_to(down[i], true, false);
  line_to(at_hem->point, true, false);
  if (at_hem->on_b < 1.0) line_to(hem.moved.front(), true, true);
  return j;
}

Joint joint_between(const Run& a, const Run& b) {
  const auto folds = [](const Run& r) { return r.kind == AllowanceKind::hem && r.allowance > 0.0; };
  if (folds(b) && !folds(a)) {
    if (auto j = fold_joint(a, b)) return *j;
  } else if (folds(a) && !folds(b)) {
    // turned round, outward is to the left; all that is used of a run mirrors with it
    if (auto j = fold_joint(turned(b), turned(a))) {
      Joint r;
      r.cut_a = last_position(a) - j->cut_b, r.cut_b = last_position(b) - j->cut_a;
      r.path.assign(j->path.rbegin(), j->path.rend());
      for (std::size_t i = j->of_b.size(); i-- > 0;) {
        r.of_b.push_back(!j->of_b[i]), r.parallel.push_back(j->parallel[i]);
      }
      return r;
    }
  }
  return plain_joint(a, b);
}

}  // namespace

RawLine joined_runs(const std::vector<Run>& runs) {
  const std::size_t n = runs.size();
  std::vector<Joint> joints(n);  // joints[i] stands before runs[i]
  for (std::size_t i = 0; i < n; ++i) joints[i] = joint_between(runs[(i + n - 1) % n], runs[i]);
  // a run cut back from both ends past itself: take its ends as they are and let the loop be
  // cleaned
  for (std::size_t i = 0; i < n; ++i) {
    if (joints[i].cut_b <= joints[(i + 1) % n].cut_a) continue;
    for (const std::size_t k : {i, (i + 1) % n}) {
      const Run& a = runs[(k + n - 1) % n];
      joints[k] = stepped(a, runs[k], turn(a.end_dir, runs[k].start_dir) < 0.0);
    }
  }
  RawLine raw;
  const auto add = [&](Vec2 p, std::size_t edge, bool parallel) {
    raw.points.push_back(p), raw.edge_of.push_back(edge), raw.parallel.push_back(parallel);
  };
  for (std::size_t i = 0; i < n; ++i) {
    const Joint& before = joints[i];
    const Run& r = runs[i];
    const std::size_t left = runs[(i + n - 1) % n].edge;
    for (std::size_t k = 0; k + 1 < before.path.size(); ++k) {
      add(before.path[k], before.of_b[k] ? r.edge : left, before.parallel[k]);
    }
    add(before.path.back(), r.edge, true);
    const double until = joints[(i + 1) % n].cut_a;
    for (double k = std::floor(before.cut_b) + 1.0; k < until; k += 1.0) {
      add(r.moved[static_cast<std::size_t>(k)], r.edge, true);
    }
  }
  return raw;
}

}  // namespace pinwright
