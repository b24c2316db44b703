#include "knowledge/words/ask_back.h"

#include <algorithm>
#include <array>
#include <cstdio>

namespace pinwright::knowledge {
namespace {

constexpr double kContradicted = 0.5;
constexpr std::size_t kMostKinds = 5;

/// "2.5 cm"
std::string centimetres(double mm) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.3g cm", mm / 10.0);
  return text.data();
}

class AskingBack {
 public:
  AskingBack(const Draft& draft, const std::vector<Finding>& findings)
      : draft_(draft), findings_(findings) {}

  std::vector<AskBack> run() {
    for (std::size_t f = 0; f < findings_.size(); ++f) {
      if (findings_[f].state != FindingState::present) continue;
      if (findings_[f].amount) {
        how_taken(f);
        of_what(f);
        nearer_to(f);
      }
      how_much(f);
      which_kind(f);
    }
    return std::move(asked_);
  }

 private:
  const Sign& sign(std::size_t f) const { return draft_.k.signs[draft_.findings[f].sign]; }

  std::string quoted(std::size_t f) const { return "\"" + findings_[f].words + "\""; }

  void ask(std::size_t f, std::string question, std::vector<AskBack::Answer> answers) {
    asked_.push_back({f, std::move(question), std::move(answers)});
  }

  void how_taken(std::size_t f) {
    const FoundAmount& amount = *findings_[f].amount;
    if (amount.taken != Taken::unsaid || sign(f).counts != Counts::girth) return;
    if (!draft_.lexicon.is_excess(draft_.findings[f].sign)) return;
    Finding fold = findings_[f];
    Finding cloth = findings_[f];
    fold.amount->taken = Taken::fold_depth;
    cloth.amount->taken = Taken::cloth;
    ask(f,
        quoted(f) + ": are the " + centimetres(amount.mm) +
            " the depth of a pinned fold, or the cloth that is too much?",
        {{"the cloth itself, " + centimetres(amount.mm), cloth},
         {"the depth of a fold, which takes up " + centimetres(2.0 * amount.mm), fold}});
  }

  void of_what(std::size_t f) {
    const DraftFinding& draft = draft_.findings[f];
    if (sign(f).counts != Counts::girth || !sign(f).sided) return;
    if (draft.of || (draft.side && *draft.side != Side::both)) return;
    Finding half = findings_[f];
    Finding whole = findings_[f];
    half.amount->of = Of::half;
    whole.amount->of = Of::whole;
    ask(f, quoted(f) + ": is that each side, or in all?", {{"each side", half}, {"in all", whole}});
  }

  void nearer_to(std::size_t f) {
    const SaidNumber& said = draft_.reading.numbers[*draft_.findings[f].number];
    if (!(said.most > said.least)) return;
    Finding least = findings_[f];
    Finding most = findings_[f];
    least.amount->mm = said.least;
    most.amount->mm = said.most;
    ask(f,
        quoted(f) + ": " + centimetres(said.value) +
            " was taken, the middle. Is it nearer to one end?",
        {{centimetres(said.least), least}, {centimetres(said.most), most}});
  }

  void how_much(std::size_t f) {
    const std::string& words = draft_.findings[f].unmeasured;
    if (words.empty() || findings_[f].amount) return;
    ask(f, "How much is \"" + words + "\" in centimetres or inches?", {});
  }

  void which_kind(std::size_t f) {
    std::vector<AskBack::Answer> answers;
    for (const Sign& kind : draft_.k.signs) {
      if (kind.kind_of != findings_[f].sign) continue;
      const bool told = std::any_of(findings_.begin(), findings_.end(),
                                    [&](const auto& other) { return other.sign == kind.id; });
      if (told) return;
      Finding as_kind = findings_[f];
      as_kind.sign = kind.id;
      as_kind.zone = kind.zone;
      if (kind.counts == Counts::none) as_kind.amount.reset();
      answers.push_back({kind.ask.empty() ? kind.name : kind.name + ": " + kind.ask, as_kind});
    }
    if (answers.empty() || answers.size() > kMostKinds) return;
    answers.push_back({"neither, or not looked at", findings_[f]});
    ask(f, quoted(f) + ": which of these is it?", std::move(answers));
  }

  const Draft& draft_;
  const std::vector<Finding>& findings_;
  std::vector<AskBack> asked_;
};

bool one_side(Side a, Side b) { return a == b || a == Side::both || b == Side::both; }

}  // namespace

std::vector<AskBack> ask_back(const Draft& draft, const std::vector<Finding>& findings) {
  return AskingBack(draft, findings).run();
}

std::vector<Contradiction> contradictions(std::vector<Finding>& findings) {
  std::vector<Contradiction> found;
  for (std::size_t a = 0; a < findings.size(); ++a) {
    if (findings[a].state != FindingState::present) continue;
    for (std::size_t b = 0; b < findings.size(); ++b) {
      if (findings[b].state != FindingState::absent || findings[a].sign != findings[b].sign ||
          findings[a].posture != findings[b].posture ||
          !one_side(findings[a].side, findings[b].side)) {
        continue;
      }
      found.push_back({a, b,
                       "\"" + findings[a].words + "\" and \"" + findings[b].words +
                           "\" say the opposite of each other; tell which holds, or when which."});
    }
  }
  for (const Contradiction& two : found) {
    for (std::size_t f : {two.present, two.absent}) {
      findings[f].sure = std::min(findings[f].sure, kContradicted);
    }
  }
  return found;
}

}  // namespace pinwright::knowledge
