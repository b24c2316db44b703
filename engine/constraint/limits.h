#pragma once
// What a garment must leave free, however it is altered: heads, hips, hands and arms must pass, and
// lines must stay such that they can be sewn.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/constraint/system.h"

namespace pinwright {

/// One limit: a quantity of the block that must be at least (or at most) a bound, mm. The quantity
/// is a sum of edge lengths, or a span between two corners, or a radius; the others are empty.
struct Limit {
  std::string_view id;           ///< kebab-case
  std::size_t piece = kNowhere;  ///< of a limit that each such piece has for itself
  std::string name;      ///< in the fitter's words: "the neck opening passes a head of 570 mm"
  std::string quantity;  ///< what is counted: "the neck opening on its stitching line"
  std::vector<LengthTerm> lengths;
  std::optional<SpanConstraint> span;
  std::optional<RadiusConstraint> radius;
  Sense sense = Sense::at_least;
  double bound = 0.0;
  double found = 0.0;
  std::string relax;  ///< "keep 548 mm or more, or take a cloth that stretches more"
  bool holds() const;
};

/// Slack with which a limit still counts as held, mm.
inline constexpr double kLimitSlackMm = 0.01;

/// The limits of a block for a body and a cloth, in a fixed order; those whose measurement is not
/// known, or whose pieces the block lacks, are left out. Whole garment: a piece on the fold or cut
/// as a pair counts twice. s = stretch across of a knit (0 for a woven), r = ratio of the binding
/// (1, and no limit for the strip itself, when that is cut from another cloth than the shell).
///  opening-passes-head   a knit pulled over the head: opening x r x (1 + s) >= head girth
///  hem-passes-hips       a knit: hem x (1 + s) >= hip girth
///  binding-reaches       every binding stretches to its opening: r x (1 + s) >= 1
///  sleeve-hem-passes-hand  sleeve hem x (1 + s) >= hand girth (long sleeves only)
///  upper-arm-has-room    width of the sleeve under its cap: x (1 + s) >= upper arm girth (knit);
///                        >= upper arm girth + 25 mm (woven: 1 in, half of the 2 in that are usual;
///                        common practice)
///  cap-not-too-flat      cap height >= 0.15, cap-not-too-steep: <= 0.65 of the sleeve's width
///                        (our own figures: a shirt's flattest and a tailored sleeve's steepest)
///  underarm-bends-gently the armhole's radius where it meets the side seam >= 10 mm (our own: less
///                        can be neither bound nor eased round)
/// REQUIRES: a structurally sound block (proof/proof.h, check_block).
/// Without words the texts are left empty, at a tenth of the cost.
enum class Words { yes, no };
std::vector<Limit> limits_of(const Block& block, const Measurements& body, const Fabric& fabric,
                             Words words = Words::yes);

/// Adds to a system the limits that touch one of its moving edges, as inequalities; body and fabric
/// are the block's own. A limit that was broken already in `before` only must not get worse.
void add_limits(const std::vector<Limit>& before, const Block& block, System& system, Words words);

/// Those of `now` that are broken although they held `before`, or broken by more than they were.
std::vector<Limit> newly_broken(const std::vector<Limit>& before, std::vector<Limit> now);
/// Limits that `after` breaks although they held `before`, or breaks by more than they did.
std::vector<Limit> newly_broken(const std::vector<Limit>& before, const Block& after,
                                const Measurements& body, const Fabric& fabric);

}  // namespace pinwright
