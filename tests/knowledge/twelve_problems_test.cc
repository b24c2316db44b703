// For each of the twelve problems: what is told first leaves it open, the deciding check settles it
// one way when it is found and turns it away when it is not.
#include <gtest/gtest.h>

#include <set>

#include "knowledge/network_of.h"
#include "tests/knowledge/shipped.h"

namespace pinwright::knowledge {
namespace {

using testing::advice;
using testing::first_cause;
using testing::probability;
using testing::seen;
using testing::unseen;

struct Case {
  const char* kind;
  const char* sign;   ///< told first
  const char* check;  ///< the deciding check
  const char* cause;  ///< first when the check is found
};

const Case kCases[] = {
    {"woven-bodice", "front-neckline-gapes", "neck-fold-ends-above-bust", "hollow-chest"},
    {"woven-bodice", "front-neckline-gapes", "neck-fold-points-at-bust-point",
     "bust-dart-too-small"},
    {"woven-bodice", "front-neckline-gapes", "neck-edge-longer-than-pattern",
     "neckline-stretched-in-sewing"},
    {"knit-top", "front-neckline-gapes", "neck-binding-nearly-as-long-as-opening",
     "neck-binding-too-long"},
    {"knit-top", "front-neckline-gapes", "binding-does-not-spring-back",
     "binding-cloth-lacks-recovery"},
    {"knit-top", "front-neckline-gapes", "neckline-slides-off-shoulders", "neckline-too-wide"},
    {"knit-top", "neckline-too-tight", "neckline-above-neck-base", "neckline-too-small"},
    {"knit-top", "neckline-too-tight", "neck-binding-puckers", "neck-binding-too-short"},
    {"knit-top", "neckline-too-tight", "neck-hardly-passes-head", "binding-stretches-too-little"},
    {"woven-bodice", "neckline-too-tight", "neck-allowance-wide-or-unclipped",
     "neck-allowance-holds"},
    {"woven-bodice", "neckline-too-tight", "creases-go-when-facing-freed", "neck-facing-tight"},
    {"woven-bodice", "neckline-too-tight", "shoulder-seam-behind-ridge", "forward-shoulder"},
    {"woven-bodice", "bust-drag-lines", "back-loose-front-tight", "full-bust"},
    {"woven-bodice", "bust-drag-lines", "tight-all-round", "size-too-small"},
    {"woven-bodice", "bust-drag-lines", "seam-allowances-wider-than-planned",
     "seams-sewn-too-deep"},
    {"woven-bodice", "bust-drag-lines", "dart-misses-bust-point", "bust-dart-misplaced"},
    {"knit-top", "bust-drag-lines", "cloth-stretches-less-than-planned",
     "cloth-stretches-too-little"},
    {"knit-top", "bust-folds-loose", "loose-only-over-bust", "small-bust"},
    {"knit-top", "bust-folds-loose", "loose-all-round", "size-too-large"},
    {"knit-top", "bust-folds-loose", "cloth-does-not-spring-back", "cloth-lacks-recovery"},
    {"knit-top", "bust-folds-loose", "style-drawn-loose", "style-ease-meant"},
    {"woven-bodice", "front-armhole-gapes", "armhole-fold-points-at-bust-point",
     "bust-dart-too-small"},
    {"woven-bodice", "front-armhole-gapes", "armhole-edge-longer-than-pattern",
     "armhole-stretched-in-sewing"},
    {"knit-top", "front-armhole-gapes", "chest-narrower-than-pattern", "narrow-chest"},
    {"knit-top", "armhole-too-low", "body-lifts-with-arm", "armhole-cut-too-deep"},
    {"woven-bodice", "armhole-too-low", "folds-go-with-a-pad", "sloping-shoulders"},
    {"knit-top", "armhole-too-low", "shoulder-seam-longer-than-pattern", "shoulder-seam-stretched"},
    {"woven-bodice", "armhole-too-tight", "armhole-freed-by-a-snip", "armhole-cut-too-shallow"},
    {"woven-bodice", "armhole-too-tight", "underarm-allowance-bulky", "underarm-not-trimmed"},
    {"woven-bodice", "shoulder-seam-past-shoulder-point", "shoulder-narrower-than-pattern",
     "narrow-shoulders"},
    {"knit-top", "shoulder-seam-past-shoulder-point", "shoulder-seam-longer-than-pattern",
     "shoulder-seam-stretched"},
    {"woven-bodice", "shoulder-seam-past-shoulder-point", "loose-all-round", "size-too-large"},
    {"woven-bodice", "slack-folds-neck-to-armhole", "pattern-drawn-for-a-pad",
     "shoulder-pad-missing"},
    {"knit-top", "slack-folds-neck-to-armhole", "folds-go-with-a-pad", "sloping-shoulders"},
    {"woven-bodice", "tight-folds-from-shoulder-point", "folds-go-when-shoulder-released",
     "square-shoulders"},
    {"woven-bodice", "tight-folds-from-shoulder-point", "folds-go-without-the-pad",
     "shoulder-pad-too-thick"},
    {"knit-top", "tight-folds-from-shoulder-point", "shoulder-seam-shorter-than-pattern",
     "shoulder-seam-drawn-in"},
    {"woven-bodice", "upper-arm-too-tight", "arm-fuller-than-sleeve-allows", "full-upper-arm"},
    {"woven-bodice", "upper-arm-too-tight", "cap-drag-lines", "sleeve-cap-too-short"},
    {"knit-top", "upper-arm-too-tight", "seam-allowances-wider-than-planned",
     "seams-sewn-too-deep"},
    {"woven-bodice", "top-too-short", "waist-sits-high", "long-body"},
    {"knit-top", "top-too-short", "rides-up-over-hips", "full-hips"},
    {"knit-top", "top-too-short", "shorter-after-washing", "cloth-shrank"},
    {"woven-bodice", "top-too-short", "hem-deeper-than-planned", "hem-turned-too-deep"},
    {"woven-bodice", "top-too-long", "waist-sits-low", "short-body"},
    {"knit-top", "top-too-long", "longer-after-wear", "cloth-drops-with-its-weight"},
    {"woven-bodice", "top-too-long", "hem-shallower-than-planned", "hem-turned-too-little"},
};

TEST(TwelveProblems, TheDecidingCheckPutsItsCauseFirst) {
  for (const auto& c : kCases) {
    const Advice a = advice(c.kind, {seen(c.sign), seen(c.check)});
    EXPECT_EQ(first_cause(a), c.cause) << c.kind << ": " << c.sign << " + " << c.check;
    EXPECT_GE(probability(a, c.cause), 0.25) << c.kind << ": " << c.sign << " + " << c.check;
  }
}

TEST(TwelveProblems, TheCheckNotFoundTurnsItAway) {
  for (const auto& c : kCases) {
    const double before = probability(advice(c.kind, {seen(c.sign)}), c.cause);
    const double after = probability(advice(c.kind, {seen(c.sign), unseen(c.check)}), c.cause);
    EXPECT_LT(after, before) << c.kind << ": " << c.sign << " without " << c.check;
  }
}

TEST(TwelveProblems, TheLeadingSignAloneSettlesNothingAndIsAskedFurther) {
  for (const auto& c : kCases) {
    const Advice a = advice(c.kind, {seen(c.sign)});
    EXPECT_FALSE(a.settled) << c.sign;
    EXPECT_EQ(a.verdict.rfind("Cannot tell", 0), 0u) << a.verdict;
    ASSERT_TRUE(a.question.has_value()) << c.sign;
    EXPECT_NE(a.question->sign, c.sign);
    EXPECT_GE(a.causes.size(), 2u) << c.sign;
    EXPECT_FALSE(a.proposals.empty()) << c.sign;
  }
}

// Asking on and on ends: whatever the truth, the questions come to an end and never repeat.
TEST(TwelveProblems, QuestionsComeToAnEnd) {
  for (const auto& c : kCases) {
    std::vector<Finding> findings{seen(c.sign)};
    std::set<std::string> asked;
    const Cause* truth = find_cause(testing::shipped(), c.cause);
    bool settled = false;
    for (int round = 0; round < 60; ++round) {
      const Advice a = advice(c.kind, findings);
      settled = a.settled;
      if (!a.question) break;
      EXPECT_TRUE(asked.insert(a.question->sign).second) << a.question->sign;
      double strength = 0.0;
      for (const auto& [sign, made] : made_by(testing::shipped(), *truth))
        if (sign == a.question->sign) strength = made;
      findings.push_back(strength >= 0.5 ? seen(a.question->sign) : unseen(a.question->sign));
      ASSERT_LT(round, 59) << "still asking";
    }
    const Advice last = advice(c.kind, findings);
    bool among_three = false;
    for (std::size_t i = 0; i < std::min<std::size_t>(3, last.causes.size()); ++i)
      among_three = among_three || last.causes[i].id == c.cause;
    EXPECT_TRUE(among_three) << c.kind << ": " << c.sign << ", true cause " << c.cause
                             << ", settled " << settled;
  }
}

}  // namespace
}  // namespace pinwright::knowledge
