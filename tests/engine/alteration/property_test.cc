// Whatever sequence of alterations is asked for: every step ends in a block that is true as sewn,
// or in a named refusal that leaves the block as it was; within a second, and never between the
// two.
//
// rapidcheck draws the sequences from a fixed seed; RC_PARAMS overrides it, e.g.
//   RC_PARAMS="seed=7 max_success=100000" test_alteration_properties
// A failing sequence is shrunk to a smallest one.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/detail/TestListenerAdapter.h>
#include <time.h>

#include <cstdlib>
#include <set>
#include <sstream>

#include "engine/pattern/sides.h"
#include "left_alone.h"
#include "own_checks.h"
#include "random_sequence.h"
#include "refusal_table.h"
#include "skerry_blocks.h"

namespace pinwright {
namespace {

constexpr double kMostSeconds = 1.0;

// Codes that alter() documents.
const std::set<std::string> kCodes = {"operation-unknown",
                                      "option-unknown",
                                      "option-value",
                                      "option-missing",
                                      "amount-range",
                                      "operation-not-here",
                                      "amount-too-large",
                                      "amount-not-a-number",
                                      "no-solution",
                                      "conflict",
                                      "limit",
                                      "one-sided"};

// Of this thread: a busy machine does not count.
double cpu_seconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

Block lined(const Block& block) {
  Block with = block;
  Piece lining = *find_piece(block, "front");
  lining.id = "front-lining";
  lining.cloth = "lining";
  with.pieces.push_back(std::move(lining));
  with.linings.push_back({"front-lining", "front"});
  return with;
}

std::string told(const Step& step) {
  std::ostringstream os;
  os << Sequence{false, {step}};
  return os.str();
}

// "full-bust takes-up=new-dart +"
std::string kind_of(const Step& step) {
  std::string text = step.operation;
  const OperationInfo& info = *find_operation(step.operation);
  for (const OptionInfo& o : info.options) {
    const auto given = step.options.find(std::string(o.key));
    text += " " + (given == step.options.end() ? std::string(o.values.front()) : given->second);
  }
  return text + (step.amount > 0.0 ? " +" : " -");
}

void refusal_faults(const Problems& problems, Faults& faults) {
  if (problems.empty()) faults.push_back("refused without a problem");
  for (const Problem& p : problems) {
    if (!kCodes.contains(p.code)) faults.push_back("refused by the unknown code '" + p.code + "'");
    if (p.place.rfind("/steps/0", 0) != 0) faults.push_back(p.code + " points at " + p.place);
    if (p.what.empty() || p.mend.empty()) faults.push_back(p.code + " does not say what or mend");
    if (p.what.ends_with(": ")) faults.push_back(p.code + " names nothing: " + p.what);
  }
}

// Lines of pieces that no note names have not changed at all. A piece of one side alone is named
// with its side.
void note_faults(const Block& before, const Block& after, const std::vector<StepNote>& notes,
                 Faults& faults) {
  std::set<std::string> named;
  for (const StepNote& n : notes) {
    named.insert(n.pieces.begin(), n.pieces.end());
    named.insert(n.follow.begin(), n.follow.end());
  }
  for (const Piece& is : after.pieces) {
    const Piece* was = find_piece(before, is.id);
    if (was == nullptr || named.contains(is.id) || named.contains(is.id + "-left") ||
        named.contains(is.id + "-right"))
      continue;
    for (const Edge& e : was->edges) {
      const Edge* now = find_edge(is, e.id);
      // A strip that goes round both sides is half by half cut anew (sides.h).
      const bool strip = now != nullptr && edge_of_role(is, EdgeRole::opening) != nullptr &&
                         std::abs(chord_length(now->curve) - chord_length(e.curve)) < 1e-6;
      if (!strip && (now == nullptr || !(now->curve == e.curve)))
        faults.push_back(is.id + "." + e.id + " changed and the note does not say so");
    }
  }
}

// What each side of the block sees. Where one side was altered alone, the lines that run to the
// centre may go over with one change of curvature a time (one_sided.h).
void sides_faults(const Block& start, const Block& before, const Altered& altered, const Step& step,
                  int one_sided, Faults& faults) {
  for (const Side s : {Side::left, Side::right}) {
    const Result<Block> was = half_block(before, s);
    const Result<Block> is = half_block(altered.block, s);
    if (!was || !is) {
      faults.push_back("one side cannot be looked at by itself");
      return;
    }
    own_wiggle_faults(start, *is, one_sided, faults);
    own_notch_faults(start, *is, faults);
    note_faults(*was, *is, altered.notes, faults);
    if (step.side == Side::both || step.side == s) {
      left_alone_faults(*was, *is, step, faults);
    } else {
      other_side_faults(*was, *is, faults);
    }
    if (!is_opened(altered.block) && !is_opened(before)) break;
  }
}

void step_faults(const Block& start, const Block& before, const Step& step, const Altered& altered,
                 int one_sided, Faults& faults) {
  const Block& after = altered.block;
  own_outline_faults(after, faults);
  if (!faults.empty()) return;
  own_seam_faults(after, faults);
  own_join_faults(after, faults);
  own_lining_faults(after, faults);
  sides_faults(start, before, altered, step, one_sided, faults);
  for (const Problem& p : check_block(after)) faults.push_back(p.place + ": " + p.what);
  const Proof proof = prove(after, &before);
  if (!proof.pass) faults.push_back("unproved");
  for (const Problem& p : proof.failures) faults.push_back(p.place + ": " + p.what);
}

// Step by step; a refused step is left out and the next one tried.
void run(const Block& drafted, const Sequence& sequence, RefusalTable& table, Faults& faults) {
  const Block start = sequence.lined ? lined(drafted) : drafted;
  Block block = start;
  std::size_t done = 0;
  int one_sided = 0;
  for (std::size_t i = 0; i < sequence.steps.size() && faults.empty(); ++i) {
    const Step& step = sequence.steps[i];
    const Block before = block;
    const double began = cpu_seconds();
    Result<Altered> result = alter(block, {step});
    const double seconds = cpu_seconds() - began;
    table.took(seconds, told(step));
    if (seconds > kMostSeconds) faults.push_back("took " + std::to_string(seconds) + " s");
    if (!(block == before)) faults.push_back("the block given was altered");
    const bool first = i == 0 && step.side == Side::both && plausible(step);
    const bool known = find_operation(step.operation) != nullptr;
    table.step(known ? step.operation : "(unknown)", result ? Problem{} : result.problems().front(),
               first ? kind_of(step) : "");
    if (!result) {
      refusal_faults(result.problems(), faults);
    } else {
      one_sided += step.side == Side::both ? 0 : 1;
      step_faults(start, before, step, *result, one_sided, faults);
      block = std::move(result->block);
      ++done;
    }
    if (!faults.empty()) faults.insert(faults.begin(), "step " + std::to_string(i) + ":");
  }
  // All at once it is the same, to the bit; or, when one is refused, none.
  const Result<Altered> at_once = alter(start, sequence.steps);
  if (faults.empty() && at_once.ok() != (done == sequence.steps.size()))
    faults.push_back("done at once and step by step differ");
  if (faults.empty() && at_once && !(at_once->block == block))
    faults.push_back("done at once the block is another than step by step");
  table.sequence(done == sequence.steps.size(), done > 0);
}

void expect_sound(const std::string& name, const Block& drafted, std::uint64_t seed, int count) {
  rc::detail::TestParams defaults;
  defaults.seed = seed;
  defaults.maxSuccess = count;
  rc::detail::Configuration standing;
  standing.testParams = defaults;
  const char* given = std::getenv("RC_PARAMS");
  const rc::detail::Configuration config =
      rc::detail::configFromString(given == nullptr ? "" : given, standing);
  RefusalTable table;
  rc::detail::TestListenerAdapter listener;
  const auto result = rc::detail::checkTestable(
      [&] {
        const Sequence sequence = *random_sequence();
        Faults faults;
        run(drafted, sequence, table, faults);
        std::string all;
        for (const std::string& f : faults) all += f + "\n";
        if (!faults.empty()) RC_FAIL(all);
      },
      rc::detail::TestMetadata{name, name}, config.testParams, listener, config.reproduce);
  table.print(name);
  std::ostringstream os;
  rc::detail::printResultMessage(result, os);
  EXPECT_TRUE(result.template is<rc::detail::SuccessResult>()) << os.str();
  EXPECT_GE(table.first_done(), 0.75);
  EXPECT_EQ(table.never_done(), "");
}

TEST(AlterationProperties, KnitTopFirst) { expect_sound("knit top 1", knit_top(), 101, 2500); }
TEST(AlterationProperties, KnitTopSecond) { expect_sound("knit top 2", knit_top(), 102, 2500); }
TEST(AlterationProperties, KnitTopThird) { expect_sound("knit top 3", knit_top(), 103, 2500); }
TEST(AlterationProperties, KnitTopFourth) { expect_sound("knit top 4", knit_top(), 104, 2500); }
TEST(AlterationProperties, WovenBodiceFirst) {
  expect_sound("woven bodice 1", woven_bodice(), 201, 2500);
}
TEST(AlterationProperties, WovenBodiceSecond) {
  expect_sound("woven bodice 2", woven_bodice(), 202, 2500);
}
TEST(AlterationProperties, WovenBodiceThird) {
  expect_sound("woven bodice 3", woven_bodice(), 203, 2500);
}
TEST(AlterationProperties, WovenBodiceFourth) {
  expect_sound("woven bodice 4", woven_bodice(), 204, 2500);
}

TEST(AlterationProperties, EveryOperationSaysWhatItLeavesAlone) {
  for (const OperationInfo& info : operation_catalogue())
    EXPECT_TRUE(left_alone_knows(info.id)) << info.id;
}

// The checks above would see what they are for.
TEST(AlterationProperties, OwnChecksSeeDamage) {
  const auto faults_of = [](auto&& damage) {
    Block block = lined(woven_bodice());
    const Block start = block;
    damage(block);
    Faults faults;
    own_outline_faults(block, faults);
    own_seam_faults(block, faults);
    own_join_faults(block, faults);
    own_lining_faults(block, faults);
    own_wiggle_faults(start, block, 0, faults);
    std::string all;
    for (const std::string& f : faults) all += f + "; ";
    return all;
  };
  const auto edge = [](Block& b, const char* piece, const char* id) -> std::vector<Vec2>& {
    return find_edge(*find_piece(b, piece), id)->curve.points;
  };
  EXPECT_EQ(faults_of([](Block&) {}), "");
  EXPECT_NE(faults_of([](Block& b) {
              find_seam(b, "shoulder")->sections[0].ease_mm += 0.11;
            }).find("seam shoulder"),
            std::string::npos);
  EXPECT_NE(faults_of([](Block& b) {
              find_piece(b, "sleeve")->notches.front().at_mm += 0.11;
            }).find("up to"),
            std::string::npos);
  EXPECT_NE(faults_of([&](Block& b) {
              edge(b, "front", "armhole").back().x += 1e-9;
            }).find("does not meet"),
            std::string::npos);
  EXPECT_NE(faults_of([&](Block& b) {
              std::vector<Vec2>& p = edge(b, "front", "neckline");
              const Vec2 handle = p[1] - p[0];
              p[1] = p[0] + handle + 0.02 * left_normal(handle);
            }).find("join neckline-over-shoulder"),
            std::string::npos);
  EXPECT_NE(faults_of([&](Block& b) {
              std::vector<Vec2>& p = edge(b, "front", "neckline");
              const Vec2 chord = p.back() - p.front();
              p[1] = p.front() + 0.3 * chord + 0.2 * left_normal(chord);
              p[p.size() - 2] = p.back() - 0.3 * chord - 0.2 * left_normal(chord);
            }).find("front.neckline wiggles"),
            std::string::npos);
  EXPECT_NE(faults_of([&](Block& b) {
              edge(b, "back", "neckline")[1].y -= 1200.0;
            }).find("back crosses itself"),
            std::string::npos);
  EXPECT_NE(faults_of([&](Block& b) {
              edge(b, "front-lining", "armhole")[1].x += 1e-9;
            }).find("does not follow"),
            std::string::npos);
}

}  // namespace
}  // namespace pinwright
