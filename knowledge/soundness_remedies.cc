#include "knowledge/soundness_remedies.h"

#include <cmath>
#include <optional>

#include "engine/alteration/catalogue.h"
#include "knowledge/expression.h"
#include "knowledge/soundness.h"
#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

class RemedyProver {
 public:
  RemedyProver(const Knowledge& k, const Cause& cause, const Remedy& remedy, ToldProblems& problems)
      : r_(remedy), found_(found_dimensions(k, cause)), problems_(problems) {}

  void run() {
    limits();
    for (const auto& s : r_.steps) step(s);
  }

 private:
  void limits() {
    if (r_.smallest_mm && r_.largest_mm && *r_.smallest_mm >= *r_.largest_mm)
      problems_.say(r_.place, "smallest_mm", "limits-crossed",
                    "smallest_mm of " + r_.id + " is not below largest_mm", "mend the two");
    if (r_.largest_mm && r_.beyond.empty())
      problems_.say(r_.place, "largest_mm", "beyond-missing",
                    r_.id + " has a largest amount, but no way beyond it",
                    "say under `beyond` what is better then");
    if (!r_.largest_mm && !r_.beyond.empty())
      problems_.say(r_.place, "beyond", "beyond-without-largest",
                    r_.id + " says what is better beyond, but not beyond what",
                    "give `largest_mm`, or leave `beyond` out");
    const auto usual = usual_amount();
    if (!usual) return;
    const std::string made =
        "the usual amount makes " + said_length(*usual) + " in the first step of " + r_.id;
    if (r_.smallest_mm && *usual < *r_.smallest_mm)
      problems_.say(r_.place, "smallest_mm", "limits-exclude-usual",
                    made + ", less than smallest_mm", "mend usual_mm or the limit");
    else if (r_.largest_mm && *usual > *r_.largest_mm)
      problems_.say(r_.place, "largest_mm", "limits-exclude-usual", made + ", more than largest_mm",
                    "mend usual_mm or the limit");
  }

  /// What the first step takes when nothing but the usual amount is known; nothing when that is not
  /// enough to know it by.
  std::optional<double> usual_amount() const {
    if (!r_.usual_mm || r_.steps.empty() || r_.steps[0].amount.empty()) return std::nullopt;
    const auto e = parse_expression(r_.steps[0].amount, found_, "");
    if (!e) return std::nullopt;  // told with the step
    const FoundAmount usual{*r_.usual_mm, r_.usual_of, Taken::cloth};
    Values values;
    for (const auto& name : e->found_names()) {
      if (name.empty())
        values.found = usual;
      else
        values.found_of.emplace(name, usual);
    }
    const auto got = evaluate(*e, values).value;
    if (!got) return std::nullopt;
    const OperationInfo* operation = find_operation(r_.steps[0].operation);
    if (operation == nullptr || operation->amount == AmountKind::ratio) return std::nullopt;
    const bool halved = operation->amount == AmountKind::half && e->dimension() == Dimension::whole;
    return std::abs(halved ? *got / 2.0 : *got);
  }

  void step(const RemedyStep& s) {
    const OperationInfo* operation = find_operation(s.operation);
    Step trial;
    trial.operation = s.operation;
    trial.options = s.options;
    if (operation != nullptr)
      trial.amount = operation->amount == AmountKind::ratio  ? 0.9
                     : operation->amount == AmountKind::none ? 0.0
                                                             : operation->most;
    for (Problem p : check_step(trial, "")) {
      p.place = at(s.place.of(field_of(s.place, p.place)));
      problems_.add(std::move(p));
    }
    const bool says_amount =
        s.text.find("{amount}") != std::string::npos || s.text.find("{fold}") != std::string::npos;
    if (s.amount.empty()) {
      if (operation != nullptr && operation->amount != AmountKind::none)
        problems_.say(s.place, "operation", "amount-missing", s.operation + " needs an amount",
                      "write one under `amount`");
      if (says_amount)
        problems_.say(s.place, "text", "text-without-amount",
                      "the text says an amount but the step has none",
                      "write the amount, or the text without it");
      return;
    }
    const auto expression = parse_expression(s.amount, found_, at(s.place.of("amount")));
    if (!expression) {
      problems_.add(expression.problems());
      return;
    }
    if (operation != nullptr) amount_suits(s, *operation, expression->dimension());
  }

  /// "/options/piece" or "/piece" of check_step as the field it stands in.
  static std::string field_of(const Place& place, std::string told) {
    if (!told.empty() && told.front() == '/') told.erase(0, 1);
    const std::string option = "options/" + told.substr(told.rfind('/') + 1);
    if (place.fields.contains(told)) return told;
    return place.fields.contains(option) ? option : "operation";
  }

  void amount_suits(const RemedyStep& s, const OperationInfo& operation, Dimension d) {
    using enum Dimension;
    bool suits = false;
    std::string wanted;
    switch (operation.amount) {
      case AmountKind::half:
        suits = d == half || d == whole;
        wanted = "half(..) or whole(..)";
        break;
      case AmountKind::whole:
        suits = d == length;
        wanted = "a length (of one sleeve)";
        break;
      case AmountKind::distance:
        suits = d == length;
        wanted = "a length, never halved";
        break;
      case AmountKind::ratio:
        suits = d == ratio;
        wanted = "a plain number";
        break;
      case AmountKind::none:
        suits = d == length || d == half || d == whole;
        wanted = "a length to note";
        break;
    }
    if (!suits)
      problems_.say(s.place, "amount", "amount-dimension",
                    "\"" + s.amount + "\" is " + std::string(to_text(d)) + ", but " + s.operation +
                        " takes " + wanted,
                    "write the amount as " + wanted);
    if (s.of && ((d == half && *s.of == Of::whole) || (d == whole && *s.of == Of::half)))
      problems_.say(s.place, "of", "amount-of",
                    "`of` says one thing and \"" + s.amount + "\" is the other",
                    "leave `of` out or mend the amount");
  }

  const Remedy& r_;
  FoundDimensions found_;
  ToldProblems& problems_;
};

}  // namespace

void prove_remedy(const Knowledge& k, const Cause& cause, const Remedy& remedy,
                  ToldProblems& problems) {
  RemedyProver(k, cause, remedy, problems).run();
}

}  // namespace pinwright::knowledge
