#pragma once
// Two tables over causes and signs met in one: pointwise in causes, "either has switched it on" in
// signs.
//
//   one shared sign:   off = f.off g.off        on = f.on (g.off + g.on) + f.off g.on
//
// so three products of half the size for each shared sign, 3^k for k of them, all terms positive.

#include <cstdint>
#include <vector>

namespace pinwright {

/// How the smaller table g meets the larger f, whose bits include those of g. Both are read in the
/// order: shared signs (high bits), shared causes, bits of f alone (low).
struct Join {
  unsigned signs = 0;
  unsigned causes = 0;
  unsigned alone = 0;
  std::vector<std::uint32_t> order_f;  ///< place in f, by place in that order
  std::vector<std::uint32_t> order_g;
};

/// `placed[b]` is the bit of f that bit b of g stands for, `cause_mask` says which bits of f are
/// causes, `bits` how many f has.
Join join_of(unsigned bits, std::uint32_t cause_mask, const std::vector<unsigned>& placed);

/// h = f met with g; f and h of 2^bits numbers, g of 2^placed. `work` needs 2 * 2^bits + 3 *
/// 2^placed.
void join(const Join& join, const double* f, const double* g, double* h, double* work);

/// The other way: from the weight of every entry of h to that of every entry of f and of g, so that
/// sum(h weight_h) = sum(f weight_f) = sum(g weight_g). weight_f may be weight_h.
/// `work` needs 3 * 2^bits + 6 * 2^placed.
void join_back(const Join& join, const double* f, const double* g, const double* weight_h,
               double* weight_f, double* weight_g, double* work);

}  // namespace pinwright
