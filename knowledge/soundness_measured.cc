#include "knowledge/soundness_measured.h"

#include "knowledge/expression.h"

namespace pinwright::knowledge {
namespace {

bool goes_round(Dimension d) { return d == Dimension::whole || d == Dimension::half; }

/// The expression of a field; what is wrong with it is told.
std::optional<Expression> read(const std::string& text, const Measured& m, const char* field,
                               ToldProblems& problems) {
  const auto e = parse_expression(text, {}, at(m.place.of(field)));
  if (e) return *e;
  problems.add(e.problems());
  return std::nullopt;
}

}  // namespace

void prove_measured(const Knowledge& k, const Measured& m, ToldProblems& problems) {
  const Sign* sign = find_sign(k, m.sign);
  if (sign == nullptr)
    problems.say(m.place, "sign", "sign-unknown",
                 m.id + " speaks for " + m.sign + ", which is no sign", offer_id(k.signs, m.sign));
  if (m.text.find("{amount}") == std::string::npos && m.text.find("{fold}") == std::string::npos)
    problems.say(m.place, "text", "text-without-amount", "the text of " + m.id + " says no amount",
                 "write {amount} where it belongs");
  const auto amount = read(m.amount, m, "amount", problems);
  const auto from = read(m.from, m, "from", problems);
  const auto sure = read(m.sure, m, "sure", problems);
  if (!amount || !from || !sure) return;
  const Dimension d = amount->dimension();
  if (d != Dimension::length && !goes_round(d))
    return problems.say(m.place, "amount", "measured-dimension",
                        "the amount of " + m.id + " is " + std::string(to_text(d)),
                        "write a length, or an amount of the whole or of the half");
  if (sign != nullptr && sign->counts != Counts::none &&
      goes_round(d) != (sign->counts == Counts::girth))
    problems.say(m.place, "amount", "measured-dimension",
                 "the amount of " + m.id + " is " + std::string(to_text(d)) + ", but the sign " +
                     sign->id +
                     (sign->counts == Counts::girth ? " counts a girth" : " counts a distance"),
                 "let it speak for another sign, or mend the amount");
  const auto limit = [&](const Expression& e, const char* field) -> std::optional<double> {
    if (e.dimension() != d) {
      problems.say(m.place, field, "measured-dimension",
                   "`" + std::string(field) + "` of " + m.id + " is " +
                       std::string(to_text(e.dimension())) + ", but the amount is " +
                       std::string(to_text(d)),
                   d == Dimension::whole  ? "write it as \"5 mm whole\""
                   : d == Dimension::half ? "write it as \"5 mm half\""
                                          : "write it as \"5 mm\"");
      return std::nullopt;
    }
    const auto value = evaluate(e, {}).value;
    if (!value)
      problems.say(m.place, field, "measured-dimension",
                   "`" + std::string(field) + "` of " + m.id + " is no plain amount",
                   "write a number with its unit");
    return value;
  };
  const auto least = limit(*from, "from");
  const auto most = limit(*sure, "sure");
  if (least && most && (*least < 0.0 || *least >= *most))
    problems.say(m.place, "from", "limits-crossed",
                 "`from` of " + m.id + " is not from nothing up to below `sure`", "mend the two");
}

}  // namespace pinwright::knowledge
