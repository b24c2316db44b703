#pragma once
// A pattern piece: a closed ring of edges on the stitching line, with what is marked on it.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/geometry/curve.h"
#include "engine/geometry/offset.h"
#include "engine/pattern/side.h"

namespace pinwright {

/// What an edge is, in the trade's words. Text form: kebab-case of the name ("centre-front").
enum class EdgeRole {
  neckline,
  shoulder,
  armhole,
  side,
  waist,
  hem,
  centre_front,
  centre_back,
  dart_leg,
  cap,
  underarm,  ///< the sleeve's underarm seam
  sleeve_hem,
  opening,  ///< the long edge of a binding that is sewn to an opening
  folded,   ///< the long edge of a binding that is turned to the inside
  join,     ///< the short ends of a binding
};
std::string_view to_text(EdgeRole role);
std::optional<EdgeRole> edge_role(std::string_view text);

struct Allowance {
  double width_mm = 0.0;
  AllowanceKind kind = AllowanceKind::plain;
  bool operator==(const Allowance&) const = default;
};

struct Edge {
  std::string id;  ///< unique in the piece
  EdgeRole role = EdgeRole::side;
  Curve curve;
  bool straight = false;  ///< must stay a straight line; its inner control points are at thirds
  Allowance allowance;
  bool operator==(const Edge&) const = default;
};

/// A notch lies on an edge at an arc length from the edge's start.
struct Notch {
  std::string id;  ///< unique in the piece
  std::string edge;
  double at_mm = 0.0;
  bool operator==(const Notch&) const = default;
};

/// Two consecutive edges of the ring, mouth to point and point to mouth; their common corner is
/// the dart's point. Both legs are straight and equally long.
struct Dart {
  std::string id;
  std::string leg_in;   ///< edge that runs from the mouth to the dart's point
  std::string leg_out;  ///< edge that runs back to the mouth
  std::string toward;   ///< landmark that the dart points at (bust-point, shoulder-blade-point)
  bool operator==(const Dart&) const = default;
};

struct Landmark {
  std::string id;  ///< kebab-case: bust-point, shoulder-blade-point, ...
  Vec2 at;
  bool operator==(const Landmark&) const = default;
};

/// A straight mark: the grainline, or a line at which the piece is lengthened or shortened.
struct Line {
  std::string id;
  Vec2 from;
  Vec2 to;
  bool operator==(const Line&) const = default;
};

struct CutPlan {
  int count = 1;
  bool mirrored_pair = false;  ///< cut a left and a right one
  bool operator==(const CutPlan&) const = default;
};

/// Invariants (checked by proof/outline.h): edges[i] ends at the very point (bit for bit) where
/// edges[i + 1] starts, the last closes the ring; the ring runs counter-clockwise and does not
/// cross itself. A half piece has its fold along the edge named by `fold`, which lies on x = 0 with
/// the piece at x >= 0. Every piece is drawn as the right side of its cloth is looked at, so that a
/// front half lies to the wearer's left of the fold and a back half to the right.
/// Where left and right differ a half piece is opened and a pair is parted: sides.h.
struct Piece {
  std::string id;    ///< kebab-case: front, back, sleeve, neck-binding
  std::string name;  ///< as written on the paper
  std::string cloth = "shell";
  std::vector<Edge> edges;
  std::vector<Notch> notches;
  std::vector<Dart> darts;
  std::vector<Landmark> landmarks;
  std::vector<Line> lengthen_lines;
  Line grainline{"grainline", {}, {}};
  std::optional<std::string> fold;
  CutPlan cut;
  /// The side of the wearer that a parted piece is for; both: the piece serves both sides.
  Side side = Side::both;
  /// On a piece that was opened: what was its half's fold, on x = 0; drawn, not cut.
  std::optional<Edge> centre_line;
  bool operator==(const Piece&) const = default;
};

inline constexpr std::size_t kNowhere = static_cast<std::size_t>(-1);

/// Index of an edge, notch or landmark by id; kNowhere when there is none.
std::size_t edge_index(const Piece& piece, std::string_view id);
std::size_t notch_index(const Piece& piece, std::string_view id);
std::size_t landmark_index(const Piece& piece, std::string_view id);
/// The first edge of a role, or nullptr.
const Edge* edge_of_role(const Piece& piece, EdgeRole role);
const Edge* find_edge(const Piece& piece, std::string_view id);
Edge* find_edge(Piece& piece, std::string_view id);
const Notch* find_notch(const Piece& piece, std::string_view id);
const Landmark* find_landmark(const Piece& piece, std::string_view id);
const Dart* dart_toward(const Piece& piece, std::string_view landmark);
/// Width between the legs at the mouth, mm, and the angle between the legs, radians.
double dart_intake(const Piece& piece, const Dart& dart);
double dart_angle(const Piece& piece, const Dart& dart);
/// Interior angle of the ring at the corner where edges[i] ends, radians in (0, 2 pi).
double corner_angle(const Piece& piece, std::size_t i);

}  // namespace pinwright
