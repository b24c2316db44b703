#include "knowledge/features.h"

#include <gtest/gtest.h>

#include "knowledge/network_of.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using testing::bare;
using testing::seen;
using testing::shipped;
using testing::told;

Features on(const Block& block, TryOn tryon) { return features_of(shipped(), block, tryon); }

TryOn styled(std::vector<std::string> style) {
  TryOn tryon;
  tryon.style = std::move(style);
  return tryon;
}

TEST(Features, OfTheSkerryBlocks) {
  const Features knit = features_of(testing::knit_top());
  EXPECT_TRUE(knit.contains("knit-top"));
  EXPECT_TRUE(knit.contains("sleeve"));
  EXPECT_TRUE(knit.contains("bound-neckline"));
  for (const char* other : {"sleeveless", "bound-armhole", "lined", "bust-dart", "woven-bodice"})
    EXPECT_FALSE(knit.contains(other)) << other;
  const Features woven = features_of(testing::woven_bodice());
  EXPECT_TRUE(woven.contains("woven-bodice"));
  EXPECT_TRUE(woven.contains("bust-dart"));
  EXPECT_TRUE(woven.contains("shoulder-dart"));
  EXPECT_FALSE(woven.contains("bound-neckline"));
}

TEST(Features, ABlockWithoutItsSleeveIsSleeveless) {
  Block block = testing::knit_top();
  std::erase_if(block.pieces, [](const Piece& piece) { return piece.id == "sleeve"; });
  EXPECT_TRUE(features_of(block).contains("sleeveless"));
  EXPECT_FALSE(features_of(block).contains("sleeve"));
  block.linings = {{"front-lining", "front"}};
  EXPECT_TRUE(features_of(block).contains("lined"));
}

TEST(Features, AToldStyleWinsOverTheBlock) {
  const Features told_bare = on(testing::knit_top(), styled({"sleeveless"}));
  EXPECT_TRUE(told_bare.contains("sleeveless"));
  EXPECT_FALSE(told_bare.contains("sleeve"));
  EXPECT_TRUE(told_bare.contains("bound-neckline"));
  const Features long_sleeved = on(bare("woven-bodice"), styled({"long-sleeve"}));
  EXPECT_TRUE(long_sleeved.contains("long-sleeve"));
  EXPECT_TRUE(long_sleeved.contains("sleeve"));
  EXPECT_FALSE(on(testing::woven_bodice(), styled({"princess-seams"})).contains("bust-dart"));
  EXPECT_EQ(on(testing::knit_top(), styled({"no-such-thing"})), features_of(testing::knit_top()));
}

/// A knowledge of one sign in a zone of sleeveless garments, and one cause that depends on them.
Knowledge sleeveless_matters() {
  Knowledge k;
  k.kinds = {"knit-top"};
  k.features = {{"sleeve", "sleeves", {}, {"sleeveless"}, {}},
                {"sleeveless", "no sleeves", {}, {"sleeve"}, {}}};
  Zone zone;
  zone.id = "armhole-binding";
  zone.features = {"sleeveless"};
  k.zones = {zone};
  Sign sign;
  sign.id = "binding-stands-off";
  sign.zone = zone.id;
  k.signs = {sign};
  Cause cause;
  cause.id = "armhole-left-low";
  cause.prior = 0.05;
  cause.prior_by_kind = {{"knit-top", 0.1}};
  cause.prior_when = {{{"sleeve", "knit-top"}, 0.0, {}}, {{"sleeveless"}, 0.3, {}}};
  cause.makes = {{"binding-stands-off", 0.8, "", {}}};
  k.causes = {cause};
  return k;
}

TEST(Features, WhatIsSeenInAZoneSaysTheGarmentHasIt) {
  const Knowledge k = sleeveless_matters();
  TryOn tryon;
  Finding finding;
  finding.sign = "binding-stands-off";
  tryon.findings = {finding};
  EXPECT_TRUE(features_of(k, bare("knit-top"), tryon).contains("sleeveless"));
  EXPECT_FALSE(features_of(k, bare("knit-top"), tryon).contains("sleeve"));
  tryon.style = {"sleeve"};  // said outright, so the zone is not on it
  EXPECT_FALSE(features_of(k, bare("knit-top"), tryon).contains("sleeveless"));
  tryon.style.clear();
  tryon.findings[0].state = FindingState::absent;
  EXPECT_FALSE(features_of(k, bare("knit-top"), tryon).contains("sleeveless"));
}

TEST(Features, WeighCausesAndChooseZones) {
  const Knowledge k = sleeveless_matters();
  EXPECT_EQ(prior_of(k.causes[0], "knit-top", {"knit-top", "sleeveless"}), 0.3);
  EXPECT_EQ(prior_of(k.causes[0], "knit-top", {"knit-top", "sleeve"}), 0.0);
  EXPECT_EQ(prior_of(k.causes[0], "knit-top", {"knit-top"}), 0.1);
  EXPECT_EQ(prior_of(k.causes[0], "woven-bodice", {"woven-bodice", "sleeve"}), 0.05);
  const KindNetwork without = network_of(k, "knit-top", {"knit-top", "sleeveless"});
  ASSERT_EQ(without.causes.size(), 1u);
  EXPECT_EQ(without.network.causes[0].prior, 0.3);
  EXPECT_EQ(without.signs.size(), 1u);
  const KindNetwork sleeved = network_of(k, "knit-top", {"knit-top", "sleeve"});
  EXPECT_TRUE(sleeved.causes.empty());
  EXPECT_TRUE(sleeved.signs.empty());
}

TEST(Evidence, HedgedFindingsAreSoftAndTheSurestCounts) {
  const KindNetwork n = network_of(shipped(), "knit-top");
  const std::string sign = n.signs[0]->id;
  Finding hedged = seen(sign);
  hedged.sure = 0.5;
  Finding weaker = hedged;
  weaker.sure = 0.2;
  Finding denied = testing::unseen(sign);
  std::vector<std::string> elsewhere;
  EXPECT_EQ(evidence_of(n, {hedged, weaker}, elsewhere)[0], stated(Seen::present, 0.5));
  EXPECT_EQ(evidence_of(n, {denied, weaker}, elsewhere)[0], stated(Seen::present, 0.2));
  EXPECT_EQ(evidence_of(n, {weaker, seen(sign)}, elsewhere)[0], Likelihood(Seen::present));
  EXPECT_EQ(evidence_of(n, {denied}, elsewhere)[0], Likelihood(Seen::absent));
  EXPECT_TRUE(elsewhere.empty());
}

TEST(Evidence, AMeasureIsWeighedInButDoesNotMoveWhatIsCertain) {
  const KindNetwork n = network_of(shipped(), "knit-top");
  Evidence evidence(n.signs.size(), Seen::unknown);
  evidence[1] = Seen::present;
  weigh_in(n, n.signs[0]->id, {0.8, 0.2}, evidence);
  weigh_in(n, n.signs[0]->id, {0.5, 0.25}, evidence);
  weigh_in(n, n.signs[1]->id, {0.1, 0.9}, evidence);
  weigh_in(n, "no-such-sign", {0.1, 0.9}, evidence);
  EXPECT_EQ(evidence[0], Likelihood(0.4, 0.05));
  EXPECT_EQ(evidence[1], Likelihood(Seen::present));
}

}  // namespace
}  // namespace pinwright::knowledge
