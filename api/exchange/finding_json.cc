#include "api/exchange/finding_json.h"

#include "api/exchange/amount_text.h"
#include "api/exchange/object_reader.h"

namespace pinwright::api {
namespace {

constexpr double kAnyAmount = 1e6;  // a sane bound for reading; what is plausible the sign knows
constexpr std::size_t kMostFindings = 256;
constexpr double kLeastSure = 0.01;
constexpr double kMostBytes = 65536.0;  // of a text that findings point into

std::optional<double> read_mm(ObjectReader& in, Problems& problems) {
  const auto mm = in.number("amount_mm", Need::optional, -kAnyAmount, kAnyAmount);
  const Json* amount = in.field("amount", Need::optional);
  if (amount == nullptr) return mm;
  if (mm) {
    in.note("amount-twice", "amount", "The amount stands twice, as amount and as amount_mm.",
            "Leave one of the two.");
  } else if (amount->is_string()) {
    auto read = read_amount(amount->get_ref<const std::string&>(), in.place_of("amount"));
    if (read.ok()) return read.value();
    problems.insert(problems.end(), read.problems().begin(), read.problems().end());
  } else if (amount->is_number()) {
    in.note("amount-without-unit", "amount", "The amount does not say its unit.",
            "Write \"amount_mm\" for millimetres, or text with a unit: \"3/8 in\".");
  } else {
    in.note("type-wrong", "amount", "Here stands " + shown(*amount) + ".",
            "Write text with a unit: \"3/8 in\".");
  }
  return std::nullopt;
}

void read_place_in_text(ObjectReader& in, Finding& out) {
  const double begin = in.number("begin", Need::optional, 0.0, kMostBytes).value_or(0.0);
  const double end = in.number("end", Need::optional, 0.0, kMostBytes).value_or(0.0);
  if (end < begin) {
    in.note("value-range", "end", "The words end before they begin.", "Leave begin and end out.");
    return;
  }
  out.begin = static_cast<std::size_t>(begin);
  out.end = static_cast<std::size_t>(end);
}

}  // namespace

Json to_json(const Finding& finding) {
  Json out = {{"sign", finding.sign}, {"zone", finding.zone}, {"side", to_text(finding.side)}};
  if (finding.amount) {
    out["amount_mm"] = finding.amount->mm;
    out["of"] = to_text(finding.amount->of);
    out["taken"] = to_text(finding.amount->taken);
  }
  out["state"] = to_text(finding.state);
  out["posture"] = finding.posture;
  out["words"] = finding.words;
  if (finding.end > 0) {
    out["begin"] = finding.begin;
    out["end"] = finding.end;
  }
  if (finding.sure < 1.0) out["sure"] = finding.sure;
  return out;
}

Json to_json(const std::vector<Finding>& findings) {
  Json out = Json::array();
  for (const Finding& finding : findings) out.push_back(to_json(finding));
  return out;
}

Finding read_finding(const Json& value, const std::string& place, Problems& problems) {
  ObjectReader in(value, place, problems);
  Finding out;
  out.sign = in.text("sign", Need::required, 64);
  out.zone = in.text("zone", Need::optional, 64);
  out.side =
      in.word<Side>("side", Need::optional, side, {"both", "left", "right"}).value_or(Side::both);
  const auto mm = read_mm(in, problems);
  const bool has_of = in.field("of", Need::optional) != nullptr;
  const auto counts = in.word<Of>("of", Need::optional, of, {"whole", "half"});
  const auto how = in.word<Taken>("taken", Need::optional, taken,
                                  {"unsaid", "fold-depth", "cloth", "gap", "let-out", "distance"});
  if (mm) {
    if (!has_of) {
      in.note("of-missing", "of", "The amount does not say what it counts.",
              "Add \"of\": \"whole\" (of the whole garment) or \"half\" (each side).");
    }
    out.amount = FoundAmount{*mm, counts.value_or(Of::whole), how.value_or(Taken::unsaid)};
  }
  out.state = in.word<FindingState>("state", Need::optional, finding_state,
                                    {"present", "absent", "not-looked-at"})
                  .value_or(FindingState::present);
  out.posture = in.text("posture", Need::optional);
  out.words = in.text("words", Need::optional, 65536);
  read_place_in_text(in, out);
  out.sure = in.number("sure", Need::optional, kLeastSure, 1.0).value_or(1.0);
  in.refuse_rest();
  return out;
}

std::vector<Finding> read_findings(const Json& value, const std::string& place,
                                   Problems& problems) {
  std::vector<Finding> out;
  if (list_or_note(value, place, kMostFindings, problems) == nullptr) return out;
  std::size_t i = 0;
  for (const Json& item : value) out.push_back(read_finding(item, member(place, i++), problems));
  return out;
}

}  // namespace pinwright::api
