#include "real_systems.h"

#include <set>

#include "../alteration/skerry_blocks.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

EdgeAt at(const Block& block, const std::string& piece, const std::string& edge) {
  for (std::size_t p = 0; p < block.pieces.size(); ++p)
    if (block.pieces[p].id == piece) return {p, edge_index(block.pieces[p], edge)};
  return {kNowhere, kNowhere};
}

double length_of(const Block& block, EdgeAt e) {
  return length(block.pieces[e.piece].edges[e.edge].curve);
}

void longer(RealSystem& real, EdgeAt edge, double by) {
  real.system.free_edges.push_back(edge);
  real.system.lengths.push_back({"length", {{edge, 1.0}}, length_of(real.block, edge) + by});
}

// Every join with a free edge in it runs on.
void add_joins(RealSystem& real) {
  const std::set<EdgeAt> free(real.system.free_edges.begin(), real.system.free_edges.end());
  for (const Join& join : real.block.joins) {
    AngleConstraint angle{join.name, {}, join.target_rad};
    bool touched = false;
    for (const CornerRef& c : join.corners) {
      const EdgeAt before = at(real.block, c.piece, c.before);
      const EdgeAt after = at(real.block, c.piece, c.after);
      touched = touched || free.contains(before) || free.contains(after);
      angle.corners.push_back({before.piece, before.edge});
    }
    if (touched) real.system.angles.push_back(std::move(angle));
  }
}

RealSystem upper_body(const Block& block, double neckline, double armhole) {
  RealSystem real{block.kind + " upper body", block, {}};
  for (const std::string piece : {"front", "back"}) {
    longer(real, at(block, piece, "neckline"), neckline);
    longer(real, at(block, piece, "armhole"), armhole);
    const EdgeAt arm = at(block, piece, "armhole");
    const EdgeAt neck = at(block, piece, "neckline");
    real.system.free_corners.push_back({{arm.piece, arm.edge}, {false, true}});    // shoulder tip
    real.system.free_corners.push_back({{neck.piece, neck.edge}, {false, true}});  // centre
  }
  add_joins(real);
  return real;
}

RealSystem cap(const Block& block, double front, double back) {
  RealSystem real{block.kind + " cap", block, {}};
  longer(real, at(block, "sleeve", "cap-front"), front);
  longer(real, at(block, "sleeve", "cap-back"), back);
  const EdgeAt crown = at(block, "sleeve", "cap-front");
  real.system.free_corners.push_back({{crown.piece, crown.edge}, {true, true}});
  add_joins(real);
  return real;
}

}  // namespace

std::vector<RealSystem> real_systems() {
  std::vector<RealSystem> all;
  for (const Block* block : {&knit_top(), &woven_bodice()}) {
    all.push_back(upper_body(*block, 9.0, 4.0));
    all.push_back(upper_body(*block, 5.0, -3.0));
    all.push_back(cap(*block, 6.0, 3.0));
    all.push_back(cap(*block, -5.0, -5.0));
  }
  return all;
}

}  // namespace pinwright
