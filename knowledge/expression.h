#pragma once
// The little language in which a remedy says how much: `half(found)`,
// `clamp(found / 2, 3 mm, 20 mm)`, `first(found, body.upper-arm-girth + 2 in -
// garment.upper-arm-girth)`.
//
//   literal   0.9   5 %   6 mm   2 cm   3/8 in   1 1/2 in   and, of what goes round the body,
//             6 mm half   1 in whole
//   names     found                 the amount told at the try-on, as cloth (a pinned fold of depth
//   d
//                                   takes up 2 d)
//             found.<sign>          the same, told with that one sign
//             garment.<measure>     finished measure of the block (engine/pattern/measures.h)
//             body.<measurement>    of the wearer at this try-on, if she was measured
//             ease.<measurement>    the block's intended ease on that measurement
//             fabric.stretch_across, fabric.stretch_along, fabric.recovery
//   functions half(x) whole(x)      of what goes round the body
//             length(half(x))       an amount on the half pattern, taken as the length of the one
//             edge min(a, b, ..) max(a, b, ..) clamp(x, least, most) first(a, b, ..)       the
//             first whose names are all known
//   + - * / ( )
//
// Every part has a dimension, proved before any number is known. What goes round the body is
// either `whole` or `half` and the two do not mix: they convert by half() and whole() only, so that
// dividing by 2 never turns one into the other. `told` is a girth as it was told, whole or half; it
// must pass through half() or whole(). A `length` (a drop, an edge, the girth of one sleeve) is the
// same on the half pattern and the whole garment and is never halved.
// Sums, min, max, clamp and first want one dimension on all sides; a product wants a plain number
// on one side; a quotient wants a plain number below, or one dimension above and below.

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/pattern/tryon.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

enum class Dimension { ratio, length, half, whole, told, angle };
std::string_view to_text(Dimension dimension);

/// What `found` and `found.<sign>` are, for one remedy: nothing for a sign that takes no amount.
struct FoundDimensions {
  std::optional<Dimension> any;  ///< of bare `found`; nothing: not to be used
  std::map<std::string, Dimension> of_sign;
};
/// told for Counts::girth, length for Counts::distance.
std::optional<Dimension> dimension_of(Counts counts);

struct ExpressionNode;

/// A parsed and typed expression; cheap to copy.
class Expression {
 public:
  Dimension dimension() const;
  /// True when `found` or a found.<sign> stands anywhere in it.
  bool uses_found() const;
  /// The signs that stand in it as found.<sign>, each once; an empty name for bare `found`.
  std::vector<std::string> found_names() const;
  const ExpressionNode& root() const { return *root_; }
  explicit Expression(std::shared_ptr<const ExpressionNode> root) : root_(std::move(root)) {}

 private:
  std::shared_ptr<const ExpressionNode> root_;
};

/// Parses and types. Problems (place = `place`, the text itself is in `what`):
/// "expression-empty", "expression-too-long" (over 300 bytes), "expression-too-deep",
/// "expression-syntax", "unit-unknown", "name-unknown", "whole-and-half" (the two are mixed, or one
/// that was told is used without saying which), "dimension" (any other mixture).
Result<Expression> parse_expression(std::string_view text, const FoundDimensions& found,
                                    const std::string& place);

/// Dimension of a garment measure, of a body measurement; nothing when the name is unknown.
std::optional<Dimension> garment_dimension(std::string_view measure);
std::optional<Dimension> body_dimension(std::string_view measurement);

/// The numbers that names stand for; a name without one is missing, which is no error.
struct Values {
  std::optional<FoundAmount> found;
  std::map<std::string, FoundAmount> found_of;
  std::map<std::string, double> garment;
  std::map<std::string, double> body;
  std::map<std::string, double> ease;
  std::optional<Fabric> fabric;
};

/// Result of an evaluation: `value` in mm (or a plain number), or what is missing for it.
struct Evaluated {
  std::optional<double> value;
  std::vector<std::string> missing;  ///< names without a number: "found", "body.upper-arm-girth"
  bool used_found = false;           ///< the value rests on an amount that was told
  bool used_body = false;            ///< the value rests on the wearer's measurements
  bool not_finite = false;           ///< a division by nothing
};
Evaluated evaluate(const Expression& expression, const Values& values);

}  // namespace pinwright::knowledge
