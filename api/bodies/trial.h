#pragma once
// Many bodies: draft the nearest size, predict the misfit of each, cure it, prove the cured block.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "api/bodies/sizes.h"

namespace pinwright::api {

/// A measure fits when it is this near to body + ease.
inline constexpr double kFitsMm = 3.0;

/// One measure that names a body measurement: how far the garment is from body + ease.
struct Misfit {
  std::string measure;
  double before_mm = 0.0;  ///< garment less body + ease
  double after_mm = 0.0;   ///< the same before curing when nothing was cured
  std::string why;  ///< empty when it fits; else the bound or conflict that stands against it
};

struct BodyOutcome {
  std::string body;
  std::string size;  ///< label of the nearest size
  std::vector<Misfit> misfits;
  std::vector<std::string> operations;  ///< done, in order
  bool cured = false;                   ///< something was altered
  bool proved = false;                  ///< the block worn in the end passes its proof
  Problems refused;                     ///< why no cure could be sized
  bool fits_before() const;
  bool fits_after() const;  ///< within kFitsMm everywhere, and proved
};

struct MeasureShare {
  std::string measure;
  std::size_t bodies = 0;
  std::size_t before = 0;  ///< bodies within kFitsMm
  std::size_t after = 0;
};

struct TrialReport {
  std::string kind;
  Fabric fabric;
  DraftedSizes sizes;
  std::vector<BodyOutcome> bodies;  ///< in the order of the table
  std::vector<MeasureShare> measures;
  std::size_t before = 0;  ///< bodies that fit everywhere
  std::size_t after = 0;
  std::size_t unproved = 0;
  std::size_t refused = 0;
  /// What stays out and why, "measure: why" -> bodies.
  std::map<std::string, std::size_t> left_over;
  double seconds = 0.0;
};

/// The nearest size is the one whose measures lie nearest to body + its own ease (least sum of
/// squares; the first of equals). Ease is the size's; at a neck that is pulled over the head it is
/// what the wearer's head needs where that is more, as the draft gives it. The misfit is every
/// measure that names a body measurement which the body has; what is off by more than half a
/// millimetre is a target of joint sizing (engine/sizing), up to kMostAlterations times in turn
/// where one alteration's bounds do not reach. Runs on `threads` threads (1 to 8); the answer does
/// not depend on how many.
TrialReport run_trial(const std::vector<Wearer>& bodies, DraftedSizes sizes, std::string_view kind,
                      const Fabric& fabric, unsigned threads = 2);
/// The same with the sizes of these very bodies.
TrialReport run_trial(const std::vector<Wearer>& bodies, std::string_view kind,
                      const Fabric& fabric, unsigned threads = 2);
inline constexpr int kMostAlterations = 5;

}  // namespace pinwright::api
