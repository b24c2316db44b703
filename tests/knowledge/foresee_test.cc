// What is to be expected before a toile is sewn.

#include "knowledge/foresee.h"

#include <gtest/gtest.h>

#include <set>

#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using namespace testing;

Foresight foreseen(const Block& block, const Measurements& body,
                   std::vector<std::string> posture = {}) {
  TryOn t;
  t.wearer = Wearer{"purser-1", body, std::move(posture)};
  auto f = foresee(shipped(), block, t);
  for (const auto& p : f.problems()) ADD_FAILURE() << p.code << " " << p.place << " " << p.what;
  return f.ok() ? std::move(f).value() : Foresight{};
}

const Foreseen* of(const Foresight& f, const std::string& sign) {
  for (const auto& one : f.findings)
    if (one.sign == sign) return &one;
  return nullptr;
}

bool has_cause(const Foresight& f, const std::string& id) {
  for (const auto& c : f.causes)
    if (c.id == id) return true;
  return false;
}

TEST(Foresee, NothingOnTheBodyItWasDraftedFor) {
  for (const char* kind : {"knit-top", "woven-bodice"}) {
    const Foresight f = foreseen(drafted(kind), drafted(kind).drafted_for.body);
    EXPECT_TRUE(f.findings.empty()) << kind << " " << f.findings[0].sign;
    EXPECT_TRUE(f.causes.empty()) << kind;
    EXPECT_TRUE(f.proposals.empty()) << kind;
    EXPECT_FALSE(f.measures.empty());
    for (const auto& m : f.measures)
      EXPECT_NEAR(m.lacks_mm(), 0.0, 0.6) << kind << " " << m.measure;
    EXPECT_NE(f.verdict.find("Nothing is to be expected"), std::string::npos);
  }
}

TEST(Foresee, TheWearerItWasDraftedForIsTakenWhenNoneIsGiven) {
  const auto f = foresee(shipped(), knit_top(), TryOn{});
  ASSERT_TRUE(f.ok());
  EXPECT_TRUE(f->findings.empty());
}

TEST(Foresee, LacksAreBodyAndEaseLessTheGarment) {
  for (const char* kind : {"knit-top", "woven-bodice"}) {
    const Block& block = drafted(kind);
    Measurements body = block.drafted_for.body;
    std::map<std::string, double> more;
    double step = 3.0;
    for (const char* id : {"bust-girth", "waist-girth", "upper-arm-girth", "across-back-width"})
      body[id] += more[id] = (step += 4.0);
    for (const auto& m : foreseen(block, body).measures) {
      const auto changed = more.find(m.measure);
      EXPECT_NEAR(m.lacks_mm(), changed == more.end() ? 0.0 : changed->second, 0.6)
          << kind << " " << m.measure;
    }
  }
}

TEST(Foresee, AFullerArmShowsWhatAToileWouldAndItsCure) {
  Measurements body = woven_bodice().drafted_for.body;
  body["upper-arm-girth"] += 20.0;
  const Foresight f = foreseen(woven_bodice(), body);
  ASSERT_FALSE(f.findings.empty());
  EXPECT_EQ(f.findings[0].sign, "arm-fuller-than-sleeve-allows");
  EXPECT_TRUE(f.findings[0].measured);
  ASSERT_TRUE(f.findings[0].amount.has_value());
  EXPECT_NEAR(f.findings[0].amount->mm, 20.0, 0.6);
  const Foreseen* tight = of(f, "upper-arm-too-tight");
  ASSERT_NE(tight, nullptr) << "expected of the cause, though no measure speaks of it";
  EXPECT_FALSE(tight->measured);
  EXPECT_GT(tight->probability, 0.25);
  EXPECT_NE(tight->why.find("pper arm fuller"), std::string::npos) << tight->why;
  ASSERT_FALSE(f.causes.empty());
  EXPECT_EQ(f.causes[0].id, "full-upper-arm");
  ASSERT_FALSE(f.proposals.empty());
  EXPECT_EQ(f.proposals[0].id, "widen-sleeve-at-upper-arm");
  EXPECT_FALSE(f.proposals[0].steps[0].assumed);
  EXPECT_NEAR(f.proposals[0].steps[0].step.amount, 20.0, 0.6);
  ASSERT_FALSE(f.findings[0].cures.empty());
  EXPECT_EQ(f.findings[0].cures[0], "widen-sleeve-at-upper-arm");
}

TEST(Foresee, MoreLackingIsNeverLessProbable) {
  double before = 0.0;
  for (double more = 0.0; more <= 60.0; more += 6.0) {
    Measurements body = woven_bodice().drafted_for.body;
    body["upper-arm-girth"] += more;
    const Foresight f = foreseen(woven_bodice(), body);
    const Foreseen* arm = of(f, "arm-fuller-than-sleeve-allows");
    const double now = arm == nullptr ? 0.0 : arm->probability;
    EXPECT_GE(now, before - 1e-12) << more;
    before = now;
  }
  EXPECT_GT(before, 0.5);
}

TEST(Foresee, PostureNotesGiveReasonToLook) {
  const Foresight f = foreseen(woven_bodice(), woven_bodice().drafted_for.body,
                               {"Shoulders forward at the desk", "likes blue"});
  ASSERT_EQ(f.posture.size(), 2u);
  ASSERT_NE(f.posture[0].entry, nullptr);
  EXPECT_EQ(f.posture[0].entry->cause, "forward-shoulder");
  EXPECT_EQ(f.posture[1].entry, nullptr);
  EXPECT_TRUE(has_cause(f, "forward-shoulder"));
  EXPECT_FALSE(f.findings.empty());
  for (const auto& one : f.findings) EXPECT_FALSE(one.measured) << one.sign;
  EXPECT_TRUE(foreseen(woven_bodice(), woven_bodice().drafted_for.body, {"no forward shoulders"})
                  .causes.empty());
}

TEST(Foresee, ALessStretchyClothIsForeseen) {
  Block block = knit_top();
  TryOn t;
  t.wearer = block.drafted_for;
  t.fabric = block.fabric;
  t.fabric->stretch_across = 0.02;  // a stable knit where 30 % was meant
  const auto f = foresee(shipped(), block, t);
  ASSERT_TRUE(f.ok());
  EXPECT_NE(of(*f, "neck-hardly-passes-head"), nullptr);
}

TEST(Foresee, BadInput) {
  Block block = bare("woven-bodice");
  const auto nobody = foresee(shipped(), block, TryOn{});
  ASSERT_FALSE(nobody.ok());
  EXPECT_EQ(nobody.problems()[0].code, "wearer-missing");
  TryOn t;
  t.wearer = Wearer{"x", {{"bust-girth", 9.0}, {"nose", 50.0}}, {}};
  const auto odd = foresee(shipped(), block, t);
  ASSERT_FALSE(odd.ok());
  EXPECT_EQ(odd.problems().size(), 2u);
  t.wearer->body = {{"bust-girth", 920.0}};
  const auto nothing = foresee(shipped(), block, t);
  ASSERT_TRUE(nothing.ok());
  EXPECT_NE(nothing->verdict.find("Nothing can be foreseen"), std::string::npos);
  block.kind = "cape";
  EXPECT_EQ(foresee(shipped(), block, t).problems()[0].code, "block-kind-unknown");
}

}  // namespace
}  // namespace pinwright::knowledge
