#include "engine/diagnosis/join.h"

#include <algorithm>
#include <cstddef>

namespace pinwright {
namespace {

/// Places in a table by places in another order of its bits: bit b of the order is `from[b]`.
std::vector<std::uint32_t> places(const std::vector<unsigned>& from) {
  std::vector<std::uint32_t> all(std::size_t{1} << from.size(), 0);
  for (std::size_t bit = 0; bit < from.size(); ++bit) {
    const std::size_t half = std::size_t{1} << bit;
    for (std::size_t i = 0; i < half; ++i) all[half + i] = all[i] | std::uint32_t{1} << from[bit];
  }
  return all;
}

void gather(const std::vector<std::uint32_t>& order, const double* from, double* to) {
  for (std::size_t i = 0; i < order.size(); ++i) to[i] = from[order[i]];
}

void scatter(const std::vector<std::uint32_t>& order, const double* from, double* to) {
  for (std::size_t i = 0; i < order.size(); ++i) to[order[i]] = from[i];
}

/// Sizes of what is left once all shared signs are decided.
struct Block {
  std::size_t causes = 1;
  std::size_t alone = 1;
  std::size_t f() const { return causes * alone; }
};

/// h += f g for all states of the bits left.
void add_product(const Block& block, const double* f, const double* g, double* h) {
  if (block.alone == 1) {
    for (std::size_t c = 0; c < block.causes; ++c) h[c] += f[c] * g[c];
    return;
  }
  for (std::size_t c = 0; c < block.causes; ++c) {
    const double by = g[c];
    for (std::size_t i = c * block.alone; i < (c + 1) * block.alone; ++i) h[i] += f[i] * by;
  }
}

/// to_f += given g, to_g += given f summed over the bits of f alone.
void add_shares(const Block& block, const double* f, const double* g, const double* given,
                double* to_f, double* to_g) {
  if (block.alone == 1) {
    for (std::size_t c = 0; c < block.causes; ++c) {
      to_f[c] += given[c] * g[c];
      to_g[c] += given[c] * f[c];
    }
    return;
  }
  for (std::size_t c = 0; c < block.causes; ++c) {
    const double by = g[c];
    double sum = 0.0;
    for (std::size_t i = c * block.alone; i < (c + 1) * block.alone; ++i) {
      to_f[i] += given[i] * by;
      sum += given[i] * f[i];
    }
    to_g[c] += sum;
  }
}

/// All of it where nothing but one sign is left in either.
void meet_sign(const double* f, const double* g, double* h) {
  h[0] += f[0] * g[0];
  h[1] += f[1] * (g[0] + g[1]) + f[0] * g[1];
}
void part_sign(const double* f, const double* g, const double* given, double* to_f, double* to_g) {
  const double both = g[0] + g[1];
  const double on = given[1] * f[1];
  to_f[0] += given[0] * g[0] + given[1] * g[1];
  to_f[1] += given[1] * both;
  to_g[0] += given[0] * f[0] + on;
  to_g[1] += given[1] * f[0] + on;
}

void meet(unsigned signs, const Block& block, const double* f, const double* g, double* h,
          double* work) {
  if (signs == 0) return add_product(block, f, g, h);
  if (signs == 1 && block.f() == 1) return meet_sign(f, g, h);
  const std::size_t half_f = block.f() << (signs - 1);
  const std::size_t half_g = block.causes << (signs - 1);
  meet(signs - 1, block, f, g, h, work);
  meet(signs - 1, block, f, g + half_g, h + half_f, work);
  for (std::size_t i = 0; i < half_g; ++i) work[i] = g[i] + g[half_g + i];
  meet(signs - 1, block, f + half_f, work, h + half_f, work + half_g);
}

void part(unsigned signs, const Block& block, const double* f, const double* g, const double* given,
          double* to_f, double* to_g, double* work) {
  if (signs == 0) return add_shares(block, f, g, given, to_f, to_g);
  if (signs == 1 && block.f() == 1) return part_sign(f, g, given, to_f, to_g);
  const std::size_t half_f = block.f() << (signs - 1);
  const std::size_t half_g = block.causes << (signs - 1);
  part(signs - 1, block, f, g, given, to_f, to_g, work);
  part(signs - 1, block, f, g + half_g, given + half_f, to_f, to_g + half_g, work);
  double* both = work;
  double* to_both = work + half_g;
  for (std::size_t i = 0; i < half_g; ++i) both[i] = g[i] + g[half_g + i];
  std::fill(to_both, to_both + half_g, 0.0);
  part(signs - 1, block, f + half_f, both, given + half_f, to_f + half_f, to_both,
       work + 2 * half_g);
  for (std::size_t i = 0; i < half_g; ++i) {
    to_g[i] += to_both[i];
    to_g[half_g + i] += to_both[i];
  }
}

}  // namespace

Join join_of(unsigned bits, std::uint32_t cause_mask, const std::vector<unsigned>& placed) {
  Join join;
  std::vector<unsigned> of_f;
  std::vector<unsigned> of_g;
  const auto is_cause = [&](unsigned bit) { return (cause_mask >> bit & 1U) != 0; };
  for (unsigned bit = 0; bit < bits; ++bit) {
    if (std::find(placed.begin(), placed.end(), bit) == placed.end()) of_f.push_back(bit);
  }
  join.alone = static_cast<unsigned>(of_f.size());
  for (const bool cause : {true, false}) {
    for (unsigned b = 0; b < placed.size(); ++b) {
      if (is_cause(placed[b]) != cause) continue;
      of_f.push_back(placed[b]);
      of_g.push_back(b);
      ++(cause ? join.causes : join.signs);
    }
  }
  join.order_f = places(of_f);
  join.order_g = places(of_g);
  return join;
}

void join(const Join& join, const double* f, const double* g, double* h, double* work) {
  const std::size_t n = join.order_f.size();
  const std::size_t m = join.order_g.size();
  double* own_f = work;
  double* own_h = own_f + n;
  double* own_g = own_h + n;
  gather(join.order_f, f, own_f);
  gather(join.order_g, g, own_g);
  std::fill(own_h, own_h + n, 0.0);
  const Block block{std::size_t{1} << join.causes, std::size_t{1} << join.alone};
  meet(join.signs, block, own_f, own_g, own_h, own_g + m);
  scatter(join.order_f, own_h, h);
}

void join_back(const Join& join, const double* f, const double* g, const double* weight_h,
               double* weight_f, double* weight_g, double* work) {
  const std::size_t n = join.order_f.size();
  const std::size_t m = join.order_g.size();
  double* own_f = work;
  double* own_h = own_f + n;
  double* to_f = own_h + n;
  double* own_g = to_f + n;
  double* to_g = own_g + m;
  gather(join.order_f, f, own_f);
  gather(join.order_g, g, own_g);
  gather(join.order_f, weight_h, own_h);
  std::fill(to_f, to_f + n, 0.0);
  std::fill(to_g, to_g + m, 0.0);
  const Block block{std::size_t{1} << join.causes, std::size_t{1} << join.alone};
  part(join.signs, block, own_f, own_g, own_h, to_f, to_g, to_g + m);
  scatter(join.order_f, to_f, weight_f);
  scatter(join.order_g, to_g, weight_g);
}

}  // namespace pinwright
