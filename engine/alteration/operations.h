#pragma once
// The operations of the catalogue that move lines. Each does the primary change of one step to the
// edit, writes the note, and leaves lengths, joins, sleeve, strip and lining to restore().
// Problems: "operation-not-here" (a piece, edge, dart or seam is missing on this block) and
// "amount-too-large"; the edit is then not to be used.

#include <string>

#include "engine/alteration/edit.h"
#include "engine/base/units.h"

namespace pinwright {

/// close_wedge.cc. edge: neckline | armhole; hinge: bust-point | shoulder-blade-point | armhole |
/// hem.
Result<Done> close_wedge(Edit& edit, HalfMm amount, const std::string& piece,
                         const std::string& edge, const std::string& hinge);
/// neckline.cc
Result<Done> lower_neckline(Edit& edit, DistanceMm amount, const std::string& piece);
Result<Done> widen_neckline(Edit& edit, DistanceMm amount);
/// shoulder.cc
Result<Done> swing_shoulder(Edit& edit, DistanceMm amount, bool armhole_follows);
Result<Done> move_shoulder_tip(Edit& edit, DistanceMm amount);
/// shoulder_seam.cc
Result<Done> shift_shoulder_seam(Edit& edit, DistanceMm amount, bool whole);
/// chest.cc
Result<Done> shorten_chest(Edit& edit, DistanceMm amount);
/// upper_back.cc
Result<Done> lengthen_upper_back(Edit& edit, DistanceMm amount, bool eased);
/// armhole_forward.cc
Result<Done> move_armhole_forward(Edit& edit, DistanceMm amount);
/// across.cc. piece: front | back.
Result<Done> widen_across(Edit& edit, HalfMm amount, const std::string& piece, bool whole);
/// sway_back.cc
Result<Done> tuck_back_waist(Edit& edit, DistanceMm amount);
/// neck_size.cc
Result<Done> resize_neckline(Edit& edit, DistanceMm amount);
/// neck_forward.cc
Result<Done> move_neck_forward(Edit& edit, DistanceMm amount);
/// blade_dart.cc
Result<Done> deepen_blade_dart(Edit& edit, HalfMm amount, bool at_waist);
/// underarm.cc
Result<Done> lower_underarm(Edit& edit, DistanceMm amount);
/// side.cc. level: all | bust | waist | hem.
Result<Done> let_out_side(Edit& edit, HalfMm amount, const std::string& level);
/// bust.cc. with_bust_dart() gives a front without a dart in its side one without intake, where
/// nothing can be eased in or where it is asked for; no line moves.
Result<Block> with_bust_dart(const Block& before, bool new_dart);
Result<Done> full_bust(Edit& edit, HalfMm amount);
Result<Done> lengthen_over_bust(Edit& edit, DistanceMm amount);
/// lengthen.cc. piece: body | sleeve.
Result<Done> lengthen(Edit& edit, DistanceMm amount, const std::string& piece);
/// sleeve.cc
Result<Done> widen_upper_arm(Edit& edit, WholeMm amount);
/// cap.cc. width_gives: the upper arm gives, else the cap's ease.
Result<Done> raise_cap(Edit& edit, DistanceMm amount, bool width_gives);
Result<Done> ease_cap(Edit& edit, WholeMm amount);
/// turn_sleeve.cc
Result<Done> turn_sleeve(Edit& edit, DistanceMm amount, bool underarm_follows);
/// sleeve_hem.cc
Result<Done> widen_sleeve_hem(Edit& edit, WholeMm amount);
/// elbow.cc. Needs the notches of with_elbow_notches(), which changes no line.
Result<Block> with_elbow_notches(const Block& before);
Result<Done> ease_elbow(Edit& edit, DistanceMm amount);
/// flare.cc
Result<Done> flare_hem(Edit& edit, HalfMm amount);
/// scoop.cc. edge: armhole | neckline.
Result<Done> scoop_edge(Edit& edit, DistanceMm amount, const std::string& piece,
                        const std::string& edge);
/// waist_dart.cc
Result<Done> let_out_dart(Edit& edit, HalfMm amount, const std::string& piece);
/// bust_point.cc
Result<Done> move_bust_point(Edit& edit, DistanceMm amount, bool sideways);
/// rotate_dart.cc. from, to, seam: side | shoulder | waist; share 0 to 1. The with_... part turns
/// the cloth, exactly; the second places the points and lets restore() true the mouths.
Result<Block> with_dart_rotated(const Block& before, double share, const std::string& piece,
                                const std::string& from, const std::string& to);
Result<Done> rotate_dart(Edit& edit, double share, const std::string& piece,
                         const std::string& from, const std::string& to);
Result<Block> with_dart_divided(const Block& before, double apart, const std::string& piece,
                                const std::string& seam);
Result<Done> divide_dart(Edit& edit, double apart, const std::string& piece,
                         const std::string& seam);
/// dart_ease.cc. seam: side | shoulder.
Result<Block> with_dart_eased(const Block& before, double amount, const std::string& piece,
                              const std::string& seam);
Result<Done> ease_dart(Edit& edit, double amount, const std::string& piece,
                       const std::string& seam);
/// dart_length.cc
Result<Done> lengthen_dart(Edit& edit, DistanceMm amount, const std::string& piece,
                           const std::string& seam);
/// strip.cc
/// cloth: as-is | shell | rib.
Result<Done> set_binding_ratio(Edit& edit, double ratio, const std::string& binding,
                               const std::string& cloth);

/// Shared: the two bodice halves of a block; problem when one is missing.
struct Bodice {
  std::size_t front = 0;
  std::size_t back = 0;
  BodiceAnatomy front_at;
  BodiceAnatomy back_at;
};
Result<Bodice> bodice(const Edit& edit);
/// Lowers the underarm corner of a bodice half along its side seam by `down` mm: the motion for
/// that corner; the side seam's wanted length is set.
Affine lower_along_side(Edit& edit, std::size_t piece, const BodiceAnatomy& at, double down);
/// The same at both ends of a sleeve's cap.
void lower_sleeve_underarm(Edit& edit, std::size_t sleeve, double down);
/// Moves both underarm corners of the sleeve outward by `front_out` and `back_out`.
void widen_sleeve_underarm(Edit& edit, std::size_t sleeve, double front_out, double back_out);
/// Most extra length that a knit side seam eases in: 1 in, common practice (1/2 to 1 in).
inline constexpr double kMostSideEaseMm = 25.4;
/// The section of a seam in which extra length of run a is eased in over the bust; nullptr when the
/// seam has none.
SeamSection* eased_section(Block& block, std::string_view seam);

}  // namespace pinwright
