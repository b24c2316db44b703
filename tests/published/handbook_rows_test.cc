// From the sights that handbooks describe to the cause and the alteration they name: each row of
// handbook_rows.yaml is told in words to the shipped knowledge, on a real block.
#include "handbook_rows.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "engine/pattern/measures.h"
#include "knowledge/words/listener.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

using testing::HandbookRow;
using testing::HandbookRows;
using testing::WantedStep;

constexpr int kCollected = 74;  // problems gathered from the publications
constexpr std::size_t kAmongFirst = 3;
constexpr double kSameMm = 0.05;

const HandbookRows& all_rows() {
  static const HandbookRows* const kRows = [] {
    auto read =
        testing::read_handbook_rows(testing::shipped(), std::string(PINWRIGHT_SOURCE_DIR) +
                                                            "/tests/published/handbook_rows.yaml");
    for (const auto& p : read.problems())
      ADD_FAILURE() << p.code << " " << p.place << " " << p.what;
    return new HandbookRows(read.ok() ? std::move(read).value() : HandbookRows{});
  }();
  return *kRows;
}

const Listener& listener() {
  static const Listener* const kListener = new Listener(testing::shipped());
  return *kListener;
}

struct Told {
  Understood heard;
  Advice advice;
};

Told tell(const HandbookRow& row) {
  Told told;
  auto heard = listener().hear(row.signs, row.kind);
  for (const auto& p : heard.problems()) ADD_FAILURE() << p.code << " " << p.place << " " << p.what;
  if (!heard) return told;
  told.heard = std::move(heard).value();
  TryOn tryon;
  tryon.findings = told.heard.findings;
  tryon.style = row.style;
  told.advice = testing::advice(testing::drafted(row.kind), tryon);
  return told;
}

/// What was read and what came of it, for the one who mends.
std::string seen(const Told& told) {
  std::string text = "read:";
  for (const Finding& f : told.heard.findings) {
    text += "\n  " + std::string(f.state == FindingState::absent ? "no " : "") + f.sign;
    if (f.amount)
      text += " " + std::to_string(f.amount->cloth_mm()) + " " + std::string(to_text(f.amount->of));
    text += " \"" + f.words + "\"";
  }
  for (const auto& n : told.heard.not_understood) text += "\n  not understood: " + n.words;
  text += "\ncauses:";
  for (const auto& c : told.advice.causes)
    text += "\n  " + c.id + " " + std::to_string(c.probability);
  text += "\nproposals:";
  for (const auto& p : told.advice.proposals)
    for (const auto& s : p.steps) {
      text += "\n  " + p.cause + ": " + s.step.operation;
      for (const auto& [key, value] : s.step.options) text += " " + key + "=" + value;
      if (s.has_amount) text += " " + std::to_string(s.step.amount);
      if (s.assumed) text += " (assumed)";
    }
  return text;
}

/// Accepted causes among the first three.
std::set<std::string> accepted(const HandbookRow& row, const Advice& advice) {
  std::set<std::string> all;
  for (std::size_t i = 0; i < std::min(kAmongFirst, advice.causes.size()); ++i)
    if (std::find(row.causes.begin(), row.causes.end(), advice.causes[i].id) != row.causes.end())
      all.insert(advice.causes[i].id);
  return all;
}

/// A half amount counts on the half pattern, whatever the remedy's text counts.
double half_or_length(const ProposedStep& s) {
  const OperationInfo* info = find_operation(s.step.operation);
  const bool divided = info != nullptr && info->amount == AmountKind::half;
  const double amount = std::abs(s.step.amount);
  return divided && s.step.of == Of::whole ? amount / 2.0 : amount;
}

bool amount_is_right(const HandbookRow& row, const ProposedStep& s) {
  if (!row.amount && row.measure.empty() && !row.least && !row.most) return true;
  if (!s.has_amount) return false;
  const double amount = half_or_length(s);
  if (row.amount) return !s.assumed && std::abs(amount - row.amount->mm) <= kSameMm;
  if (!row.measure.empty()) {
    const auto all = measures(testing::drafted(row.kind));
    const auto* m = find_measure(all, row.measure);
    return m != nullptr && std::abs(amount - m->value) <= kSameMm;
  }
  return amount >= row.least.value_or(0.0) - kSameMm &&
         amount <= row.most.value_or(amount) + kSameMm;
}

class HandbookRowTest : public ::testing::TestWithParam<std::string> {
 protected:
  const HandbookRow& row() const {
    const auto& rows = all_rows().rows;
    return *std::find_if(rows.begin(), rows.end(),
                         [&](const HandbookRow& r) { return r.id == GetParam(); });
  }
};

TEST_P(HandbookRowTest, LeadsToItsCauseAndItsAlteration) {
  // Known to be open: the reader does not take these words rightly yet.
  static const std::set<std::string> kOpen = {"neck-does-not-pass-head-band", "sloping-shoulders",
                                              "narrow-chest", "sway-back", "loose-right-round"};
  if (kOpen.contains(std::string(GetParam()))) GTEST_SKIP() << "not read rightly yet";
  const HandbookRow& wanted = row();
  const Told told = tell(wanted);
  const std::set<std::string> causes = accepted(wanted, told.advice);
  if (wanted.found) {
    EXPECT_TRUE(std::any_of(told.heard.findings.begin(), told.heard.findings.end(),
                            [&](const Finding& f) {
                              return f.amount && f.amount->of == wanted.found->of &&
                                     std::abs(f.amount->cloth_mm() - wanted.found->mm) <= kSameMm;
                            }))
        << "the amount was not read\n"
        << seen(told);
  }
  ASSERT_FALSE(causes.empty()) << "line " << wanted.line << ", no accepted cause\n" << seen(told);
  bool offered = false;
  bool right = false;
  for (const Proposal& p : told.advice.proposals) {
    if (!causes.contains(p.cause)) continue;
    for (const ProposedStep& s : p.steps)
      for (const WantedStep& w : wanted.alteration) {
        offered = offered || w.is(s);
        right = right || (w.is(s) && amount_is_right(wanted, s));
      }
  }
  EXPECT_TRUE(offered) << "line " << wanted.line << ", no accepted alteration\n" << seen(told);
  EXPECT_TRUE(right) << "line " << wanted.line << ", not by this amount\n" << seen(told);
}

TEST_P(HandbookRowTest, KeepsWhatPublicationsDisagreeOnSideBySide) {
  const HandbookRow& wanted = row();
  if (wanted.alternatives.empty()) return;
  const Told told = tell(wanted);
  const std::set<std::string> causes = accepted(wanted, told.advice);
  auto next = wanted.alternatives.begin();
  for (const Proposal& p : told.advice.proposals)
    if (causes.contains(p.cause) && next != wanted.alternatives.end() &&
        std::any_of(p.steps.begin(), p.steps.end(),
                    [&](const ProposedStep& s) { return next->is(s); }))
      ++next;
  EXPECT_EQ(next, wanted.alternatives.end())
      << "line " << wanted.line
      << ", missing: " << (next == wanted.alternatives.end() ? "" : next->text) << "\n"
      << seen(told);
}

std::vector<std::string> ids() {
  std::vector<std::string> all;
  for (const HandbookRow& r : all_rows().rows) all.push_back(r.id);
  return all;
}

std::string test_name(const ::testing::TestParamInfo<std::string>& row) {
  std::string name = row.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Published, HandbookRowTest, ::testing::ValuesIn(ids()), test_name);

TEST(HandbookRowsFile, IsReadWithoutAProblem) {
  const auto read =
      testing::read_handbook_rows(testing::shipped(), std::string(PINWRIGHT_SOURCE_DIR) +
                                                          "/tests/published/handbook_rows.yaml");
  for (const auto& p : read.problems()) ADD_FAILURE() << p.place << " " << p.what;
  ASSERT_TRUE(read.ok());
  EXPECT_FALSE(read->rows.empty());
}

TEST(HandbookRowsFile, EveryProblemCollectedHasARowOrAReason) {
  std::set<int> told;
  for (const HandbookRow& r : all_rows().rows) {
    EXPECT_LE(r.row, kCollected) << r.id;
    told.insert(r.row);
  }
  for (const int row : all_rows().left_out) {
    EXPECT_FALSE(told.contains(row)) << row << " is told and left out";
    told.insert(row);
  }
  for (int row = 1; row <= kCollected; ++row)
    EXPECT_TRUE(told.contains(row)) << "problem " << row << " has no row and no reason";
}

}  // namespace
}  // namespace pinwright::knowledge
