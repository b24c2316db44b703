#pragma once
// The search for the amounts: Gauss-Newton steps on the altered block.

#include "engine/sizing/rows.h"

namespace pinwright {

struct Found {
  Eigen::VectorXd x;
  Trial trial;               ///< the block at x
  Eigen::MatrixXd jacobian;  ///< at x, measures x unknowns
  bool met = false;          ///< every target within its tolerance, every limit kept
};

/// A refusal of the pattern narrows the unknown's bound, with the reason. See sizing.h.
Found search_amounts(const Block& block, const Rows& rows, std::vector<Unknown>& unknowns,
                     int& alterations);

}  // namespace pinwright
