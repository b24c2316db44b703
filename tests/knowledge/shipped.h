#pragma once
// The shipped knowledge, loaded once, and try-ons told by sign.

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

#include "engine/base/units.h"
#include "knowledge/advise.h"
#include "knowledge/load.h"

namespace pinwright::knowledge::testing {

inline const Knowledge& shipped() {
  static const Knowledge* const kKnowledge = [] {
    auto loaded = load({std::string(PINWRIGHT_SOURCE_DIR) + "/knowledge/data"});
    for (const auto& p : loaded.problems())
      ADD_FAILURE() << p.code << " " << p.place << " " << p.what;
    return new Knowledge(loaded.ok() ? std::move(loaded).value() : Knowledge{});
  }();
  return *kKnowledge;
}

/// A block of a kind without geometry: enough where no finished measure is asked for.
inline Block bare(const std::string& kind) {
  Block b;
  b.id = "bare";
  b.kind = kind;
  b.fabric.kind = kind == "knit-top" ? FabricKind::knit : FabricKind::woven;
  return b;
}

inline Finding seen(const std::string& sign, std::optional<FoundAmount> amount = std::nullopt,
                    Side side = Side::both) {
  Finding f;
  f.sign = sign;
  if (const Sign* s = find_sign(shipped(), sign)) f.zone = s->zone;
  f.side = side;
  f.amount = amount;
  return f;
}

inline Finding unseen(const std::string& sign) {
  Finding f = seen(sign);
  f.state = FindingState::absent;
  return f;
}

inline FoundAmount whole(double mm) { return {mm, Of::whole, Taken::unsaid}; }
inline FoundAmount half(double mm) { return {mm, Of::half, Taken::unsaid}; }
inline FoundAmount fold(double mm, Of of = Of::whole) { return {mm, of, Taken::fold_depth}; }

inline TryOn told(std::vector<Finding> findings) {
  TryOn t;
  t.findings = std::move(findings);
  return t;
}

inline Advice advice(const Block& block, const TryOn& tryon) {
  auto a = advise(shipped(), block, tryon, {});
  for (const auto& p : a.problems()) ADD_FAILURE() << p.code << " " << p.place << " " << p.what;
  return a.ok() ? std::move(a).value() : Advice{};
}

inline Advice advice(const std::string& kind, std::vector<Finding> findings) {
  return advice(bare(kind), told(std::move(findings)));
}

inline const Proposal* proposal(const Advice& a, const std::string& id) {
  for (const auto& p : a.proposals)
    if (p.id == id) return &p;
  return nullptr;
}

inline double probability(const Advice& a, const std::string& cause) {
  for (const auto& c : a.causes)
    if (c.id == cause) return c.probability;
  return 0.0;
}

inline std::string first_cause(const Advice& a) { return a.causes.empty() ? "" : a.causes[0].id; }

}  // namespace pinwright::knowledge::testing
