#include "engine/constraint/standing.h"

#include <algorithm>
#include <map>
#include <string_view>

namespace pinwright {
namespace {

class Finder {
 public:
  explicit Finder(const Block& block) : block_(block) {
    for (std::size_t p = 0; p < block.pieces.size(); ++p) by_id_.emplace(block.pieces[p].id, p);
  }
  EdgeAt operator()(std::string_view piece, std::string_view edge) const {
    const auto found = by_id_.find(piece);
    if (found == by_id_.end()) return {kNowhere, kNowhere};
    const std::size_t e = edge_index(block_.pieces[found->second], edge);
    return e == kNowhere ? EdgeAt{kNowhere, kNowhere} : EdgeAt{found->second, e};
  }

 private:
  const Block& block_;
  std::map<std::string_view, std::size_t> by_id_;
};

bool is_cap(const Block& block, EdgeAt at) {
  return at.piece != kNowhere && block.pieces[at.piece].edges[at.edge].role == EdgeRole::cap;
}

}  // namespace

Standing::Standing(const Block& block) {
  const Finder find(block);
  seams_.reserve(block.seams.size());
  for (std::size_t s = 0; s < block.seams.size(); ++s) {
    const Seam& seam = block.seams[s];
    SeamAt at;
    at.seam = s;
    for (const RunPart& part : seam.a) at.a.push_back(find(part.piece, part.edge));
    for (const RunPart& part : seam.b) at.b.push_back(find(part.piece, part.edge));
    at.cap = !at.a.empty() &&
             std::all_of(at.a.begin(), at.a.end(), [&](EdgeAt e) { return is_cap(block, e); });
    if (!at.cap) {
      sewn_.insert(at.a.begin(), at.a.end());
      sewn_.insert(at.b.begin(), at.b.end());
    }
    seams_.push_back(std::move(at));
  }
  joins_.reserve(block.joins.size());
  for (std::size_t j = 0; j < block.joins.size(); ++j) {
    JoinAt at;
    at.join = j;
    for (const CornerRef& c : block.joins[j].corners) {
      at.corners.emplace_back(find(c.piece, c.before), find(c.piece, c.after));
      at.edges.push_back(at.corners.back().first);
      at.edges.push_back(at.corners.back().second);
    }
    std::sort(at.edges.begin(), at.edges.end());
    at.edges.erase(std::unique(at.edges.begin(), at.edges.end()), at.edges.end());
    at.cap =
        std::any_of(at.edges.begin(), at.edges.end(), [&](EdgeAt e) { return is_cap(block, e); });
    joins_.push_back(std::move(at));
  }
}

double join_residual(const Block& block, const JoinAt& join) {
  double sum = -block.joins[join.join].target_rad;
  for (const auto& [before, after] : join.corners)
    sum += corner_angle(block.pieces[before.piece], before.edge);
  return sum;
}

AngleConstraint angle_of(const Block& block, const JoinAt& join) {
  AngleConstraint angle{block.joins[join.join].name, {}, block.joins[join.join].target_rad};
  for (const auto& [before, after] : join.corners)
    angle.corners.push_back({before.piece, before.edge});
  return angle;
}

LengthConstraint equal_runs(const Block& block, const SeamAt& seam) {
  const Seam& sewn = block.seams[seam.seam];
  LengthConstraint equal{sewn.name + " sews together", {}, stated_ease(sewn)};
  for (const EdgeAt e : seam.a) equal.terms.push_back({e, 1.0});
  for (const EdgeAt e : seam.b) equal.terms.push_back({e, -1.0});
  return equal;
}

System standing_system(const Block& block, std::vector<EdgeAt> free_edges,
                       std::vector<FreeCorner> free_corners) {
  System system;
  system.free_edges = std::move(free_edges);
  system.free_corners = std::move(free_corners);
  std::set<EdgeAt> moving(system.free_edges.begin(), system.free_edges.end());
  for (const FreeCorner& c : system.free_corners) {
    const std::size_t n = block.pieces[c.corner.piece].edges.size();
    moving.insert({c.corner.piece, c.corner.edge});
    moving.insert({c.corner.piece, (c.corner.edge + 1) % n});
  }
  const auto moves = [&](EdgeAt e) { return moving.contains(e); };
  const Standing standing(block);
  for (const SeamAt& seam : standing.seams())
    if (std::any_of(seam.a.begin(), seam.a.end(), moves) ||
        std::any_of(seam.b.begin(), seam.b.end(), moves))
      system.lengths.push_back(equal_runs(block, seam));
  for (const JoinAt& join : standing.joins())
    if (std::any_of(join.edges.begin(), join.edges.end(), moves))
      system.angles.push_back(angle_of(block, join));
  for (std::size_t p = 0; p < block.pieces.size(); ++p) {
    for (const Dart& dart : block.pieces[p].darts) {
      const EdgeAt in{p, edge_index(block.pieces[p], dart.leg_in)};
      const EdgeAt out{p, edge_index(block.pieces[p], dart.leg_out)};
      if (moves(in) || moves(out))
        system.lengths.push_back(
            {"the legs of the " + dart.id + " are equal", {{in, 1.0}, {out, -1.0}}, 0.0});
    }
  }
  add_limits(limits_of(block, block.drafted_for.body, block.fabric, Words::no), block, system,
             Words::yes);
  return system;
}

}  // namespace pinwright
