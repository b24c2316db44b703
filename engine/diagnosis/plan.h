#pragma once
// How one connected part is summed out: a tree of buckets, one a vertex, with the places of every
// number. Made once, run on many sets of weights (eliminate.h).
//
//   bucket of v:  a table over v (highest bit) and its neighbours when v is taken out
//                 <- messages of earlier buckets that meet here
//                 <- the links of v to those neighbours
//                 -> message over the neighbours alone, to the bucket of the next one taken out
//
// The bit of a cause says whether it holds; the bit of a sign says whether something inside this
// bucket or below it has switched the sign on. Two tables therefore meet pointwise in causes and by
// "either has switched it on" in signs: sums of positive terms, nothing is ever taken away.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "engine/base/result.h"
#include "engine/diagnosis/join.h"
#include "engine/diagnosis/order.h"

namespace pinwright {

struct Bucket {
  /// Switches the sign at bit `sign` on where the cause at bit `cause` holds.
  struct Act {
    std::uint32_t cause = 0;  ///< masks, not positions
    std::uint32_t sign = 0;
    double strength = 0.0;
  };
  Vertex vertex;
  unsigned bits = 0;             ///< of the table, the vertex among them
  std::uint32_t cause_mask = 0;  ///< bits that are causes
  std::vector<Act> acts;
  std::vector<std::size_t> wide;    ///< earlier buckets whose message is over more than the vertex,
                                    ///< that of most signs first
  std::vector<Join> joins;          ///< how the 2nd, 3rd, ... of them meet the table
  std::vector<std::size_t> narrow;  ///< earlier buckets whose message is over the vertex alone
  // The message, and where it goes.
  std::vector<unsigned> placed;      ///< bits that it has in the table it goes to, if wide
  std::vector<std::uint32_t> place;  ///< of each of its entries there
  std::uint32_t placed_mask = 0;     ///< bits of that table which the message knows of
  // Places of numbers in the store.
  std::size_t table = 0;
  std::size_t partials = 0;  ///< tables before the 2nd, 3rd, ... wide message joins
  std::size_t message = 0;
  std::size_t outside = 0;  ///< of the message: weight of all the rest of the part
};

struct Plan {
  std::vector<Bucket> buckets;  ///< in the order of elimination; the last ends the part
  std::size_t numbers = 0;      ///< in the store
  std::size_t widest = 0;       ///< entries of the largest table
  double work = 0.0;            ///< up and down, in multiplications of a join
};

/// Most that is ever tried: numbers held (64 MB) and work (about half a second).
inline constexpr double kMostNumbers = 8388608.0;
inline constexpr double kMostWork = 1073741824.0;

/// Error: "evidence-too-wide".
Result<Plan> plan_of(const Shape& shape, const Part& part);

}  // namespace pinwright
