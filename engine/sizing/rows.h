#pragma once
// Targets, held measures and limits as rows over the measures of a MeasureList.

#include <limits>

#include "engine/sizing/amounts.h"

namespace pinwright {

inline constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Weight (squared) of 1 mm of drift of a held measure against 1 tolerance of a target, where the
/// targets can all be met: a drift of 30 mm then costs less than 0.3 of a tolerance.
inline constexpr double kHold = 1e-4;
/// The same where they cannot: a target is not chased at all costs.
inline constexpr double kHoldNearest = 5e-2;
/// Weight (squared) of 1 mm of amount: only where the measures leave a choice.
inline constexpr double kSmall = 1e-6;
/// Weight (squared) of a limit broken by 1 mm where it cannot be kept.
inline constexpr double kBroken = 1e4;

struct TargetRow {
  Eigen::Index row = 0;  ///< in the MeasureList
  double wanted = 0.0;   ///< mm, scaled as the list
  double tolerance = 1.0;
  double exact_to = 0.0;
};

/// form . measures between least and most.
struct LimitRow {
  Eigen::VectorXd form;
  double least = 0.0;  ///< may be -infinity
  double most = 0.0;
};

struct Rows {
  MeasureList list;
  Eigen::VectorXd start;
  std::vector<TargetRow> targets;
  std::vector<Eigen::Index> held;
  std::vector<LimitRow> limits;

  /// What is minimised at these measures and amounts, broken limits counted in.
  double merit(const Eigen::VectorXd& value, const Eigen::VectorXd& x, double hold) const;
  /// Every target within its tolerance (`exactly`: within exact_to) and every limit kept to
  /// 0.01 mm.
  bool met(const Eigen::VectorXd& value, bool exactly) const;
};

/// Measures that are to be left alone: those that are neither asked for, nor a part of one that is
/// (the front's share of a bust girth), nor the whole of which a part is asked for, nor let go.
std::vector<Eigen::Index> held_measures(const MeasureList& list, const std::vector<Target>& targets,
                                        const std::vector<std::string>& let_go);

Result<Rows> rows_of(const Block& block, const SizingInput& input);

}  // namespace pinwright
