#include "api/exchange/step_json.h"

#include "api/exchange/amount_text.h"
#include "api/exchange/object_reader.h"
#include "engine/alteration/catalogue.h"

namespace pinwright::api {
namespace {

constexpr double kAnyAmount = 1e6;  // a sane bound for reading; the catalogue knows the real one
constexpr std::size_t kMostSteps = 64;

void read_of(ObjectReader& in, const OperationInfo& info, bool has_amount, Step& out) {
  const bool divides = info.amount == AmountKind::half || info.amount == AmountKind::whole;
  const bool stands = in.field("of", Need::optional) != nullptr;
  const auto said = in.word<Of>("of", Need::optional, of, {"half", "whole"});
  if (said) {
    out.of = *said;
  } else if (!divides) {
    out.of = Of::whole;
  } else if (has_amount && !stands) {
    in.note("of-missing", "of", "The amount does not say what it counts.",
            "Add \"of\": \"half\" (of the half pattern) or \"whole\" (of the whole garment).");
  }
}

/// The amount under one of its three names.
bool read_step_amount(ObjectReader& in, bool ratio, Step& out, Problems& problems) {
  const auto mm = in.number("amount_mm", Need::optional, -kAnyAmount, kAnyAmount);
  const Json* amount = in.field("amount", Need::optional);
  if (mm && amount != nullptr) {
    in.note("amount-twice", "amount", "The amount stands twice, as amount and as amount_mm.",
            "Leave one of the two.");
  }
  if (mm && ratio) {
    in.note("type-wrong", "amount_mm", "This operation takes a ratio, not a length.",
            "Write it as \"amount\": 0.9.");
  }
  if (mm) out.amount = *mm;
  if (amount == nullptr) return mm.has_value();
  if (ratio) {
    if (const auto plain = in.number("amount", Need::optional, -kAnyAmount, kAnyAmount)) {
      out.amount = *plain;
    }
  } else if (amount->is_string()) {
    auto read = read_amount(amount->get_ref<const std::string&>(), in.place_of("amount"));
    if (read.ok()) out.amount = read.value();
    problems.insert(problems.end(), read.problems().begin(), read.problems().end());
  } else if (amount->is_number()) {
    in.note("amount-without-unit", "amount", "The amount does not say its unit.",
            "Write \"amount_mm\" for millimetres, or text with a unit: \"3/8 in\".");
  } else {
    in.note("type-wrong", "amount", "Here stands " + shown(*amount) + ".",
            "Write text with a unit: \"3/8 in\".");
  }
  return true;
}

}  // namespace

Json to_json(const Step& step) {
  Json out = {{"operation", step.operation}};
  for (const auto& [key, value] : step.options) out[key] = value;
  const OperationInfo* info = find_operation(step.operation);
  const AmountKind kind = info == nullptr ? AmountKind::half : info->amount;
  if (kind == AmountKind::ratio) {
    out["amount"] = step.amount;
  } else if (kind != AmountKind::none || step.amount != 0.0) {
    const bool divides = kind == AmountKind::half || kind == AmountKind::whole;
    out["amount_mm"] = step.amount;
    out["of"] = to_text(divides ? step.of : Of::whole);
  }
  out["side"] = to_text(step.side);
  return out;
}

Json to_json(const std::vector<Step>& steps) {
  Json out = Json::array();
  for (const Step& step : steps) out.push_back(to_json(step));
  return out;
}

Step read_step(const Json& value, const std::string& place, Problems& problems) {
  const std::size_t before = problems.size();
  ObjectReader in(value, place, problems);
  Step out;
  out.operation = in.text("operation", Need::required, 64);
  const OperationInfo* info = find_operation(out.operation);
  const bool ratio = info != nullptr && info->amount == AmountKind::ratio;
  const bool has_amount = read_step_amount(in, ratio, out, problems);
  if (info != nullptr) {
    read_of(in, *info, has_amount, out);
  } else {
    in.field("of", Need::optional);
  }
  out.side =
      in.word<Side>("side", Need::optional, side, {"both", "left", "right"}).value_or(Side::both);
  for (const std::string& key : in.take_rest()) {
    out.options[key] = in.text(key, Need::required, 64);
  }
  // an unreadable field would only be told twice
  if (problems.size() == before) {
    const Problems unsound = check_step(out, place);
    problems.insert(problems.end(), unsound.begin(), unsound.end());
  }
  return out;
}

std::vector<Step> read_steps(const Json& value, const std::string& place, Problems& problems) {
  std::vector<Step> out;
  if (list_or_note(value, place, kMostSteps, problems) == nullptr) return out;
  std::size_t i = 0;
  for (const Json& item : value) out.push_back(read_step(item, member(place, i++), problems));
  return out;
}

}  // namespace pinwright::api
