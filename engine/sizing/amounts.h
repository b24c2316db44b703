#pragma once
// The amounts of a joint sizing as unknowns, and the block and its measures as functions of them.

#include <Eigen/Core>

#include "engine/sizing/sizing.h"

namespace pinwright {

/// Angles count as mm at this distance from their corner, so that one tolerance serves all.
inline constexpr double kAngleAtMm = 100.0;
/// Amounts nearer to nothing than this are left out: a pencil line is 0.5 mm wide.
inline constexpr double kNothingMm = 0.05;

/// One unknown: amount = rest + unit * x, so that x is of the size of mm.
struct Unknown {
  Step step;
  std::vector<std::string> asked_by;
  double rest = 0.0;  ///< amount at which nothing changes: 0, or the strip's ratio as it is
  double unit = 1.0;
  double least = 0.0;  ///< of x
  double most = 0.0;
  std::string least_reason;  ///< where the pattern refused more
  std::string most_reason;
  double amount(double x) const { return rest + unit * x; }
};

/// The unknowns of the cures; those with the same operation, options and side are one, asked for
/// by both, with the narrower bounds.
Result<std::vector<Unknown>> unknowns_of(const Block& block, const std::vector<Cure>& cures);

/// Measures of a block as a vector, mm (angles times kAngleAtMm), in the order of `names`.
struct MeasureList {
  std::vector<GarmentMeasure> names;  ///< of the block as it was
  Eigen::VectorXd of(const Block& block) const;
  static double scale(const GarmentMeasure& m) {
    return m.kind == MeasureKind::angle ? kAngleAtMm : 1.0;
  }
  /// Index, or -1.
  int find(std::string_view id) const;
};

/// The whole set done in order.
struct Trial {
  Block block;
  std::vector<StepNote> notes;
  Eigen::VectorXd value;    ///< measures after all
  Eigen::MatrixXd by_step;  ///< measures x unknowns: what each step changed, in order
};

struct Refusal {
  std::size_t unknown = 0;
  Problem problem;
};

struct TrialResult {
  std::optional<Trial> trial;
  std::optional<Refusal> refusal;  ///< set when there is no trial
};

/// Steps nearer to nothing than kNothingMm are left out. `alterations` counts up.
TrialResult try_amounts(const Block& block, const MeasureList& list,
                        const std::vector<Unknown>& unknowns, const Eigen::VectorXd& x,
                        int& alterations);

/// One small change of every amount alone: measures x unknowns, per x. A column is zero, and the
/// unknown fixed at nothing with the reason, where the block refuses the step either way.
Eigen::MatrixXd first_jacobian(const Block& block, const MeasureList& list,
                               std::vector<Unknown>& unknowns, int& alterations);

}  // namespace pinwright
