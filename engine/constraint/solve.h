#pragma once
// Restores what must hold, moving as little and as smoothly as can be.

#include <utility>
#include <vector>

#include "engine/base/result.h"
#include "engine/constraint/system.h"

namespace pinwright {

struct SolveReport {
  int rounds = 0;
  double worst = 0.0;          ///< largest residual left: mm, or angle times kAngleScaleMm
  double most_moved_mm = 0.0;  ///< largest change of one coordinate
};

/// Convergence: every residual at most this (mm; angles: this / kAngleScaleMm rad).
inline constexpr double kSolvedMm = 1e-7;

/// The movement has settled when no coordinate would go further than this, mm.
inline constexpr double kStillMm = 1e-7;

/// New curves for the edges that move.
struct Redrawn {
  SolveReport report;
  std::vector<std::pair<EdgeAt, Curve>> edges;  ///< in order of piece and edge
};

/// Sequential quadratic programming with the objective's own constant Hessian: each round solves a
/// quadratic programme (qp.h: active set for the inequalities, rank-revealing, so that constraints
/// which say the same twice do no harm) and takes the longest of the steps 1, 1/2, 1/4, ... that
/// lessens the worst residual. Nocedal & Wright, Numerical Optimization (2006), 16.5 and 18.
/// Cost a round: about rows x unknowns x band width; a block takes some tens of microseconds.
/// The same input gives the same bits. On failure the problem "no-solution" names the constraint
/// that is furthest from holding, by how much, and what to relax; conflict.h finds the smallest set
/// that contradicts itself.
Result<Redrawn> redraw(const Block& block, const System& system);
void put(const Redrawn& redrawn, Block& block);
/// Both in one: on success `block` carries the new curves; on failure it is untouched.
Result<SolveReport> solve(Block& block, const System& system);

}  // namespace pinwright
