// What must be true of the data that is shipped.
#include <gtest/gtest.h>

#include <set>

#include "knowledge/network_of.h"
#include "knowledge/told_signs.h"
#include "knowledge/understand.h"
#include "knowledge/words/listener.h"
#include "tests/knowledge/shipped.h"

namespace pinwright::knowledge {
namespace {

using testing::shipped;

TEST(ShippedKnowledge, LoadsClean) {
  const auto loaded = load({std::string(PINWRIGHT_SOURCE_DIR) + "/knowledge/data"});
  std::string all;
  for (const auto& p : loaded.problems()) all += p.place + " " + p.code + " " + p.what + "\n";
  EXPECT_TRUE(loaded.ok()) << all;
}

const std::set<std::string>& twelve() {
  static const std::set<std::string> kIds = {
      "front-neckline-gapes", "neckline-too-tight", "bust-too-tight",      "bust-too-loose",
      "front-armhole-gapes",  "armhole-too-low",    "armhole-too-tight",   "shoulder-too-wide",
      "sloping-shoulder",     "square-shoulder",    "upper-arm-too-tight", "top-too-short",
      "top-too-long"};
  return kIds;
}

TEST(ShippedKnowledge, HasTheTwelveProblems) {
  std::set<std::string> have;
  for (const auto& p : shipped().problems) have.insert(p.id);
  for (const auto& id : twelve()) EXPECT_TRUE(have.contains(id)) << id;
}

TEST(ShippedKnowledge, EveryProblemHasRivalsAndTheTwelveOneThatIsNoMatterOfThePattern) {
  for (const auto& p : shipped().problems) {
    for (const auto& kind : p.kinds.empty() ? shipped().kinds : p.kinds) {
      int rivals = 0;
      int beside_the_pattern = 0;
      for (const auto& id : p.causes) {
        const Cause* c = find_cause(shipped(), id);
        ASSERT_NE(c, nullptr);
        if (prior_of(*c, kind) <= 0.0) continue;
        ++rivals;
        if (c->kind == CauseKind::sewing || c->kind == CauseKind::fabric) ++beside_the_pattern;
      }
      EXPECT_GE(rivals, 2) << p.id << " on " << kind;
      if (twelve().contains(p.id)) {
        EXPECT_GE(beside_the_pattern, 1) << p.id << " on " << kind;
      }
    }
  }
}

// Each rival can be told from the others: it makes some sign that can be asked for, strongly, and
// that no other rival of the problem makes as strongly.
TEST(ShippedKnowledge, EveryRivalHasACheckOfItsOwn) {
  for (const auto& p : shipped().problems) {
    for (const auto& id : p.causes) {
      bool own = false;
      for (const auto& m : find_cause(shipped(), id)->makes) {
        const Sign* s = find_sign(shipped(), m.sign);
        if (m.sign == p.sign || m.strength < 0.6 || s->ask.empty()) continue;
        bool shared = false;
        for (const auto& other : p.causes) {
          if (other == id) continue;
          for (const auto& om : find_cause(shipped(), other)->makes)
            shared = shared || (om.sign == m.sign && om.strength >= m.strength);
        }
        own = own || !shared;
      }
      EXPECT_TRUE(own) << p.id << ": nothing tells " << id << " from its rivals";
    }
  }
}

TEST(ShippedKnowledge, EverySignIsAskedAboutAndWorded) {
  for (const auto& s : shipped().signs) {
    if (!is_told_sign(s.id)) {
      EXPECT_FALSE(s.ask.empty()) << s.id;
    }
    EXPECT_FALSE(s.phrases.empty()) << s.id;
  }
  for (const auto& c : shipped().causes)
    for (const auto& m : c.makes) EXPECT_FALSE(m.ground.empty()) << c.id;
}

// A sign is known by the bare sense of its own name's words at least in the leading cases.
TEST(ShippedKnowledge, PeopleSayTheLeadingSignsInTheirOwnWords) {
  const std::vector<std::pair<std::string, std::string>> said = {
      {"The front neckline gapes by 2 cm.", "front-neckline-gapes"},
      {"neck edge stands away at centre front", "front-neckline-gapes"},
      {"The neck opening is baggy in front", "front-neckline-gapes"},
      {"The neckline is too tight.", "neckline-too-tight"},
      {"it chokes me at the neck", "neckline-too-tight"},
      {"drag lines point at the bust", "bust-drag-lines"},
      {"wrinkles radiating from the bust apex", "bust-drag-lines"},
      {"too snug across the bust", "bust-drag-lines"},
      {"the bust is too loose", "bust-folds-loose"},
      {"baggy below the bust", "bust-folds-loose"},
      {"the armhole gapes at the front", "front-armhole-gapes"},
      {"armscye stands away in front", "front-armhole-gapes"},
      {"the armholes are too low", "armhole-too-low"},
      {"the armhole is too tight", "armhole-too-tight"},
      {"it digs into my armpit", "armhole-too-tight"},
      {"the shoulder seam hangs past the shoulder point", "shoulder-seam-past-shoulder-point"},
      {"The shoulders are too wide", "shoulder-seam-past-shoulder-point"},
      {"the shoulder seam falls off the shoulder", "shoulder-seam-past-shoulder-point"},
      {"sloping shoulders", "said-sloping-shoulders"},
      {"loose diagonal folds from the neck to the armhole", "slack-folds-neck-to-armhole"},
      {"she has square shoulders", "said-square-shoulders"},
      {"the sleeve is tight round the bicep", "upper-arm-too-tight"},
      {"the upper arm is too tight", "upper-arm-too-tight"},
      {"the top is too short", "top-too-short"},
      {"the blouse is 1 1/2 inches too long", "top-too-long"},
  };
  const Listener listener(shipped());
  for (const auto& [text, sign] : said) {
    const auto u = listener.hear(text, "woven-bodice");
    ASSERT_TRUE(u.ok()) << text;
    bool found = false;
    std::string got;
    for (const auto& f : u->findings) {
      found = found || (f.sign == sign && f.state == FindingState::present);
      got += f.sign + " ";
    }
    EXPECT_TRUE(found) << text << " -> " << got;
  }
}

TEST(ShippedKnowledge, FineSaysThatItIsNot) {
  const auto u = understand(shipped(), "The bust is fine.", "knit-top");
  ASSERT_TRUE(u.ok());
  ASSERT_FALSE(u->findings.empty());
  std::set<std::string> absent;
  for (const auto& f : u->findings) {
    EXPECT_EQ(f.state, FindingState::absent) << f.sign;
    absent.insert(f.sign);
  }
  EXPECT_TRUE(absent.contains("bust-drag-lines"));
  EXPECT_TRUE(absent.contains("bust-folds-loose"));
}

}  // namespace
}  // namespace pinwright::knowledge
