#include "random_sequence.h"

#include <cmath>
#include <cstdio>
#include <limits>
#include <ostream>
#include <random>
#include <string>

#include "engine/alteration/catalogue.h"

namespace pinwright {
namespace {

using Rng = std::mt19937_64;

// The same on every machine, which the standard's distributions are not.
std::size_t below(Rng& rng, std::size_t count) { return static_cast<std::size_t>(rng() % count); }
double unit_share(Rng& rng) { return static_cast<double>(rng() >> 11) * 0x1.0p-53; }
bool one_in(Rng& rng, std::size_t count) { return below(rng, count) == 0; }

double odd_amount(Rng& rng) {
  constexpr double kOdd[] = {0.0,
                             std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity(),
                             -std::numeric_limits<double>::infinity(),
                             1e300,
                             -1e9,
                             1e-12,
                             std::numeric_limits<double>::denorm_min()};
  return kOdd[below(rng, std::size(kOdd))];
}

double random_size(Rng& rng, const OperationInfo& info) {
  switch (below(rng, 20)) {
    case 0:
    case 1:
      return info.most * (1.0 + 3.5 * unit_share(rng));  // beyond; past four times it is refused
    case 2:
      return info.least * unit_share(rng);
    case 3:
      return one_in(rng, 2) ? info.least : info.most;
    default:
      return info.least + (info.most - info.least) * unit_share(rng);
  }
}

Step random_step(Rng& rng) {
  const auto operations = operation_catalogue();
  const OperationInfo& info = operations[below(rng, operations.size())];
  Step s;
  s.operation = info.id;
  for (const OptionInfo& o : info.options) {
    if (!o.required && one_in(rng, 6)) continue;
    s.options[std::string(o.key)] = std::string(o.values[below(rng, o.values.size())]);
  }
  s.amount = one_in(rng, 40) ? odd_amount(rng) : random_size(rng, info);
  if (info.amount != AmountKind::ratio || one_in(rng, 20)) {
    if (one_in(rng, 2)) s.amount = -s.amount;
  }
  s.of = one_in(rng, 2) ? Of::whole : Of::half;
  if (info.amount == AmountKind::half && s.of == Of::whole) s.amount *= 2.0;
  if (one_in(rng, 12)) s.side = one_in(rng, 2) ? Side::left : Side::right;
  if (one_in(rng, 120)) s.options["edge"] = "collar";
  if (one_in(rng, 200)) s.operation += "s";
  return s;
}

std::vector<Sequence> smaller(const Sequence& of) {
  std::vector<Sequence> all;
  const auto with = [&](auto&& change) {
    Sequence s = of;
    change(s);
    if (!(s == of)) all.push_back(std::move(s));
  };
  const std::size_t n = of.steps.size();
  for (std::size_t i = 0; i < n && n > 1; ++i)
    with([&](Sequence& s) { s.steps.erase(s.steps.begin() + static_cast<std::ptrdiff_t>(i)); });
  with([](Sequence& s) { s.lined = false; });
  for (std::size_t i = 0; i < n; ++i) {
    with([&](Sequence& s) { s.steps[i].side = Side::both; });
    for (const auto& [key, value] : of.steps[i].options)
      with([&, id = key](Sequence& s) { s.steps[i].options.erase(id); });
    const double amount = of.steps[i].amount;
    if (!std::isfinite(amount)) continue;
    for (const double step : {10.0, 1.0, 0.1}) {
      const double round = std::trunc(amount / step) * step;
      if (std::abs(round) < std::abs(amount)) with([&](Sequence& s) { s.steps[i].amount = round; });
    }
    if (std::abs(amount) >= 2.0)
      with([&](Sequence& s) { s.steps[i].amount = amount - std::copysign(1.0, amount); });
  }
  return all;
}

}  // namespace

std::ostream& operator<<(std::ostream& os, const Sequence& sequence) {
  if (sequence.lined) os << "with a lined front: ";
  for (std::size_t i = 0; i < sequence.steps.size(); ++i) {
    const Step& s = sequence.steps[i];
    char amount[64];
    std::snprintf(amount, sizeof amount, "%.17g", s.amount);
    os << (i == 0 ? "" : "; ") << s.operation << " " << amount << " of=" << to_text(s.of);
    for (const auto& [key, value] : s.options) os << " " << key << "=" << value;
    if (s.side != Side::both) os << " side=" << to_text(s.side);
  }
  return os;
}

bool plausible(const Step& step) {
  const OperationInfo* info = find_operation(step.operation);
  if (info == nullptr || !check_step(step, "").empty()) return false;
  const bool halved = info->amount == AmountKind::half && step.of == Of::whole;
  const double size = std::abs(halved ? 0.5 * step.amount : step.amount);
  return size >= info->least && size <= info->most;
}

rc::Gen<Sequence> random_sequence() {
  return [](const rc::Random& random, int) {
    Rng rng(rc::Random(random).next());
    Sequence s;
    s.lined = one_in(rng, 4);
    const std::size_t steps = 1 + below(rng, 6);
    for (std::size_t i = 0; i < steps; ++i) s.steps.push_back(random_step(rng));
    return rc::shrinkable::shrinkRecur(
        std::move(s), [](const Sequence& of) { return rc::seq::fromContainer(smaller(of)); });
  };
}

}  // namespace pinwright
