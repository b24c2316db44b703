#pragma once
// Why there is no solution.

#include <string>
#include <vector>

#include "engine/constraint/system.h"

namespace pinwright {

/// The smallest set found of statements of a system that cannot hold together, in the system's
/// order, and what to give up.
struct Conflict {
  struct Member {
    std::string name;   ///< with its number: "the neckline of the front is 231 mm long"
    std::string relax;  ///< may be empty
  };
  std::vector<Member> members;
  /// The relax text of the member that is easiest given up: a limit's; else of the first.
  std::string relax;
};

/// Deletion filter (Chinneck, Feasibility and Infeasibility in Optimization, 2008, ch. 6): each
/// statement is left out in turn, and left out for good when the rest still has no solution; what
/// stays is a set of which no member can be spared. Smooth joints are never left out. Costs one
/// solve a statement: called only when a change has failed. A system that does have a solution
/// gives no members.
Conflict smallest_conflict(const Block& block, const System& system);

/// "these cannot all hold: A; B; C"
std::string told(const Conflict& conflict);

}  // namespace pinwright
