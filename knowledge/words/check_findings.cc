#include <algorithm>
#include <string>

#include "engine/base/nearest_word.h"
#include "knowledge/understand.h"
#include "knowledge/words/amount_rules.h"

namespace pinwright::knowledge {
namespace {

class Checker {
 public:
  Checker(const Knowledge& k, std::string_view prefix) : k_(k), prefix_(prefix) {}

  void check(const Finding& finding, std::size_t number) {
    place_ = prefix_ + "/" + std::to_string(number);
    const auto sign = std::find_if(k_.signs.begin(), k_.signs.end(),
                                   [&](const Sign& known) { return known.id == finding.sign; });
    if (sign == k_.signs.end()) {
      add("sign-unknown", "/sign", "There is no sign \"" + finding.sign + "\".",
          "Nearest: " + nearest(finding.sign, k_.signs) + ".");
    }
    check_zone(finding, sign == k_.signs.end() ? nullptr : &*sign);
    if (!finding.amount) return;
    if (!amount_in_range(finding.amount->mm)) {
      add("amount-range", "/amount/mm", "The amount is not above 0 and at most 300 mm.",
          "Check number and unit, or leave the amount out.");
    }
    if (sign != k_.signs.end() && sign->counts == Counts::none) {
      add("amount-not-counted", "/amount", "The sign " + sign->id + " takes no amount.",
          "Leave the amount out, or pick the sign that it belongs to.");
    }
  }

  Problems problems;

 private:
  void check_zone(const Finding& finding, const Sign* sign) {
    if (finding.zone.empty() && sign) return;  // the sign tells its zone
    const bool known = std::any_of(k_.zones.begin(), k_.zones.end(),
                                   [&](const Zone& zone) { return zone.id == finding.zone; });
    if (!known) {
      add("zone-unknown", "/zone", "There is no zone \"" + finding.zone + "\".",
          "Nearest: " + nearest(finding.zone, k_.zones) + ".");
    } else if (sign && sign->zone != finding.zone) {
      add("zone-of-another-sign", "/zone",
          "The sign " + sign->id + " belongs to zone " + sign->zone + ", not " + finding.zone + ".",
          "Write zone " + sign->zone + ", or pick a sign of zone " + finding.zone + ".");
    }
  }

  template <class Entry>
  static std::string nearest(const std::string& id, const std::vector<Entry>& entries) {
    std::vector<std::string> ids;
    for (const Entry& entry : entries) ids.push_back(entry.id);
    return ids.empty() ? "none, the knowledge is empty" : nearest_word(id, ids);
  }

  void add(std::string code, const std::string& field, std::string what, std::string mend) {
    problems.push_back({std::move(code), place_ + field, std::move(what), std::move(mend)});
  }

  const Knowledge& k_;
  std::string prefix_;
  std::string place_;
};

}  // namespace

Problems check_findings(const Knowledge& k, const std::vector<Finding>& findings,
                        std::string_view prefix) {
  Checker checker(k, prefix);
  for (std::size_t i = 0; i < findings.size(); ++i) checker.check(findings[i], i);
  return std::move(checker.problems);
}

}  // namespace pinwright::knowledge
