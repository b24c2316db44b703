#pragma once
// In which order causes and signs are taken out, so that few of them stand open at one time.
//
// The graph has a vertex for every tied cause and every shared sign, an edge for every link. Taking
// a vertex out ties all its neighbours to one another; what has to be tabulated at that moment is
// every state of the vertex and its neighbours. Causes and signs are vertices alike, so that a
// cause of many signs is held as one state instead of opening all its signs, and the other way.
// Rose, "A graph-theoretic study of the numerical solution of sparse positive definite systems"
// (1972); Bertelè and Brioschi, Nonserial Dynamic Programming (1972).

#include <cstddef>
#include <vector>

#include "engine/diagnosis/fold.h"

namespace pinwright {

// Work of a table, in multiplications of a join, by entry; of a join, by entry; more by each shared
// sign. Measured.
inline constexpr double kTablePasses = 60.0;
inline constexpr double kJoinPasses = 4.0;
inline constexpr double kSignPasses = 1.5;

struct Vertex {
  bool is_cause = false;
  std::size_t index = 0;  ///< of the cause, or into Shape::shared
  friend bool operator==(const Vertex&, const Vertex&) = default;
};

/// One vertex taken out, and its neighbours at that time.
struct TakenOut {
  std::size_t vertex = 0;
  std::vector<std::size_t> neighbours;  ///< ascending
};

/// One connected part of the shape.
struct Part {
  std::vector<Vertex> vertices;                 ///< causes first, each ascending
  std::vector<std::vector<std::size_t>> edges;  ///< neighbours in `vertices`, ascending
};
std::vector<Part> connected_parts(const Shape& shape);

/// A vertex with at most one neighbour goes at once; then the one that ties fewest new pairs (or
/// that has fewest neighbours, whichever way comes out cheaper). Where that is dear, taking all
/// causes first, or all signs, is looked at too, ties are broken in other ways, in a fixed
/// sequence, and the cheapest order is kept. Not always the best order, which is NP-hard to find.
std::vector<TakenOut> elimination_order(const Part& part);

}  // namespace pinwright
