// Hedging 4: what was said with a "maybe" is less sure.

#include <algorithm>

#include "knowledge/words/draft_finding.h"

namespace pinwright::knowledge {
namespace {

class Hedging {
 public:
  explicit Hedging(Draft& draft) : draft_(draft), reading_(draft.reading) {}

  void run() {
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) {
      const auto [first, last] = notions_of(reading_, c);
      for (std::size_t n = first; n < last; ++n) {
        const Notion& notion = reading_.notions[n];
        if (notion.kind != Notion::Kind::hedge) continue;
        if (reading_.words[notion.tokens.front()].taken || of_amount(notion)) continue;
        weaken(c, notion);
      }
    }
  }

 private:
  /// "maybe 2 cm", "2 cm I think": the amount is not sure, the finding is.
  bool of_amount(const Notion& notion) const {
    const auto number = [&](std::size_t i) { return reading_.words[i].number.has_value(); };
    std::size_t after = notion.tokens.back() + 1;
    while (after < reading_.tokens.size() && !number(after) &&
           reading_.tokens[after].kind == Token::Kind::word &&
           reading_.words[after].load != Load::content) {
      ++after;
    }
    const std::size_t before = notion.tokens.front();
    return (after < reading_.tokens.size() && number(after)) ||
           (before > 0 && number(before - 1)) || (before > 1 && number(before - 2));
  }

  /// All findings of the clause that go on after the hedge; else its nearest; where it has none
  /// ("I'm not sure, but ..."), those of the next clause that has some, in the same sentence.
  void weaken(std::size_t c, const Notion& notion) {
    bool some = false;
    for (DraftFinding& finding : draft_.findings) {
      if (!has_part(draft_, finding, c) || *finding.tokens.rbegin() < notion.tokens.back())
        continue;
      finding.sure *= notion.sure;
      some = true;
    }
    if (some) return;
    if (const auto near = nearest_finding(draft_, c, notion.tokens.back())) {
      draft_.findings[*near].sure *= notion.sure;
      return;
    }
    for (std::size_t next = c + 1; next < reading_.clauses.size(); ++next) {
      if (reading_.clauses[next].sentence != reading_.clauses[c].sentence) return;
      for (DraftFinding& finding : draft_.findings) {
        if (finding.clause != next) continue;
        finding.sure *= notion.sure;
        some = true;
      }
      if (some) return;
    }
  }

  Draft& draft_;
  Reading& reading_;
};

}  // namespace

void hedge(Draft& draft) { Hedging(draft).run(); }

}  // namespace pinwright::knowledge
