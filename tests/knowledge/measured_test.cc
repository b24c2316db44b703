// Garment-minus-body measures as soft evidence, on the shipped list and on blocks drafted for one
// body and worn by another.

#include "knowledge/measured.h"

#include <gtest/gtest.h>

#include "knowledge/proposals.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;

TryOn worn_by(const Measurements& body) {
  TryOn t;
  t.wearer = Wearer{"purser-1", body, {}};
  return t;
}

std::vector<MeasuredFound> on(const Block& block, const TryOn& tryon) {
  return measured_on(shipped(), block.kind, values_of(block, tryon));
}

const MeasuredFound* of(const std::vector<MeasuredFound>& all, const std::string& sign) {
  for (const auto& m : all)
    if (m.entry->sign == sign) return &m;
  return nullptr;
}

TEST(Sureness, RisesFromNothingToTheSurest) {
  EXPECT_EQ(sureness(5.0, 5.0, 25.0, 0.9), 0.0);
  EXPECT_EQ(sureness(-40.0, 5.0, 25.0, 0.9), 0.0);
  EXPECT_DOUBLE_EQ(sureness(15.0, 5.0, 25.0, 0.9), 0.45);
  EXPECT_DOUBLE_EQ(sureness(25.0, 5.0, 25.0, 0.9), 0.9);
  EXPECT_DOUBLE_EQ(sureness(250.0, 5.0, 25.0, 0.9), 0.9);
  EXPECT_EQ(sureness(std::nan(""), 5.0, 25.0, 0.9), 0.0);
  double before = 0.0;
  for (double x = 0.0; x < 40.0; x += 0.5) {
    const double now = sureness(x, 5.0, 25.0, 0.9);
    EXPECT_GE(now, before);
    before = now;
  }
}

TEST(Measured, ABlockOnTheBodyItWasDraftedForSaysNothing) {
  for (const char* kind : {"knit-top", "woven-bodice"}) {
    const Block& block = drafted(kind);
    for (const auto& m : on(block, worn_by(block.drafted_for.body)))
      ADD_FAILURE() << kind << ": " << m.text;
  }
}

TEST(Measured, NoMeasurementSaysNothing) {
  EXPECT_TRUE(on(woven_bodice(), TryOn{}).empty());
  EXPECT_TRUE(on(woven_bodice(), worn_by({{"stature", 1700.0}})).empty());
}

TEST(Measured, ALargerArmSaysByHowMuch) {
  Measurements body = woven_bodice().drafted_for.body;
  body["upper-arm-girth"] += 20.0;
  const auto all = on(woven_bodice(), worn_by(body));
  const MeasuredFound* arm = of(all, "arm-fuller-than-sleeve-allows");
  ASSERT_NE(arm, nullptr);
  EXPECT_NEAR(arm->amount.mm, 20.0, 0.6);
  EXPECT_FALSE(arm->of_girth);
  EXPECT_DOUBLE_EQ(arm->sure, 0.95);
  EXPECT_NE(arm->text.find("less at the upper arm than arm and ease"), std::string::npos);
  EXPECT_EQ(all.size(), 1u);
}

TEST(Measured, WholeAmountsStayWhole) {
  Measurements body = woven_bodice().drafted_for.body;
  body["bust-girth"] += 48.0;
  const auto all = on(woven_bodice(), worn_by(body));
  const MeasuredFound* bust = of(all, "bust-drag-lines");
  ASSERT_NE(bust, nullptr);
  EXPECT_TRUE(bust->of_girth);
  EXPECT_EQ(bust->amount.of, Of::whole);
  EXPECT_NEAR(bust->amount.mm, 48.0, 0.6);
  const auto findings = as_findings(shipped(), all);
  ASSERT_EQ(findings.size(), all.size());
  ASSERT_TRUE(findings[0].amount.has_value());
  EXPECT_EQ(findings[0].amount->of, Of::whole);
  EXPECT_NEAR(findings[0].amount->cloth_mm(), 48.0, 0.6);
}

// NMSU C-228: a bust of 36 in wants 39 to 40 in of garment; Threads, "Set-in sleeve solutions": at
// least 2 in of ease at the upper arm. On values alone, so that no draft of ours has a say.
TEST(Measured, PublishedEase) {
  const auto woven = [](double bust_in, double garment_in) {
    Values v;
    v.body["bust-girth"] = bust_in * kMmPerInch;
    v.garment["bust-girth"] = garment_in * kMmPerInch;
    const auto all = measured_on(shipped(), "woven-bodice", v);
    const MeasuredFound* found = of(all, "bust-drag-lines");
    return found == nullptr ? 0.0 : found->amount.mm;
  };
  EXPECT_EQ(woven(36.0, 39.0), 0.0);
  EXPECT_EQ(woven(36.0, 40.0), 0.0);
  EXPECT_NEAR(woven(36.0, 37.0), 2.0 * kMmPerInch, 1e-9);
  const auto arm = [](double arm_in, double sleeve_in) {
    Values v;
    v.body["upper-arm-girth"] = arm_in * kMmPerInch;
    v.garment["upper-arm-girth"] = sleeve_in * kMmPerInch;
    const auto all = measured_on(shipped(), "woven-bodice", v);
    const MeasuredFound* found = of(all, "arm-fuller-than-sleeve-allows");
    return found == nullptr ? 0.0 : found->amount.mm;
  };
  EXPECT_EQ(arm(12.0, 14.0), 0.0);
  EXPECT_EQ(arm(12.0, 14.5), 0.0);
  EXPECT_NEAR(arm(12.0, 13.0), kMmPerInch, 1e-9);
}

TEST(Measured, ToldInWordsGoesBefore) {
  const Knowledge& k = shipped();
  EXPECT_TRUE(is_told(k, "bust-drag-lines", {unseen("bust-drag-lines")}));
  EXPECT_FALSE(is_told(k, "bust-drag-lines", {seen("front-neckline-gapes")}));
  Finding open = seen("bust-drag-lines");
  open.state = FindingState::not_looked_at;
  EXPECT_FALSE(is_told(k, "bust-drag-lines", {open}));

  Measurements body = woven_bodice().drafted_for.body;
  body["upper-arm-girth"] += 20.0;
  TryOn tryon = worn_by(body);
  tryon.findings = {seen("upper-arm-too-tight")};
  const double with = probability(advice(woven_bodice(), tryon), "full-upper-arm");
  tryon.wearer.reset();
  const double without = probability(advice(woven_bodice(), tryon), "full-upper-arm");
  EXPECT_GT(with, without);
  tryon.wearer = Wearer{"purser-1", body, {}};
  tryon.findings.push_back(unseen("arm-fuller-than-sleeve-allows"));
  const double denied = probability(advice(woven_bodice(), tryon), "full-upper-arm");
  tryon.wearer.reset();
  EXPECT_DOUBLE_EQ(denied, probability(advice(woven_bodice(), tryon), "full-upper-arm"));
}

TEST(Measured, StandsAmongTheReasons) {
  Measurements body = woven_bodice().drafted_for.body;
  body["upper-arm-girth"] += 20.0;
  TryOn tryon = worn_by(body);
  tryon.findings = {seen("upper-arm-too-tight")};
  const Advice a = advice(woven_bodice(), tryon);
  ASSERT_EQ(first_cause(a), "full-upper-arm");
  std::string reasons;
  for (const auto& r : a.causes[0].reasons_for) reasons += r.text + "\n";
  EXPECT_NE(reasons.find("less at the upper arm than arm and ease"), std::string::npos) << reasons;
}

}  // namespace
}  // namespace pinwright::knowledge
