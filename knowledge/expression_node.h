#pragma once
// The tree behind an Expression; only expression*.cc look into it.

#include <string>
#include <vector>

#include "knowledge/expression.h"

namespace pinwright::knowledge {

struct ExpressionNode {
  enum class Kind {
    number,
    name,
    add,
    subtract,
    multiply,
    divide,
    negate,
    half,
    whole,
    min,
    max,
    clamp,
    first,
    length
  };
  Kind kind = Kind::number;
  Dimension dimension = Dimension::ratio;
  double number = 0.0;  ///< mm or plain
  std::string group;    ///< of a name: found, garment, body, ease, fabric
  std::string name;     ///< the rest of it; empty for bare `found`
  bool uses_found = false;
  std::vector<ExpressionNode> parts;
};

}  // namespace pinwright::knowledge
