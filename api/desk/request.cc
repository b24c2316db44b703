#include "api/desk/request.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "api/desk/fabrics.h"
#include "api/exchange/amount_text.h"
#include "api/exchange/finding_json.h"
#include "api/exchange/object_reader.h"
#include "api/exchange/step_json.h"
#include "api/exchange/wearer_json.h"
#include "engine/base/nearest_word.h"

namespace pinwright::api {

namespace {

constexpr std::size_t kMostWords = 65536;
constexpr std::size_t kMostAmounts = 64;
constexpr std::size_t kMostTogether = 16;

void add(Problems& to, const Problems& from) { to.insert(to.end(), from.begin(), from.end()); }

/// Appends what is not there yet.
void put(std::vector<std::string>& to, const std::string& one) {
  if (std::find(to.begin(), to.end(), one) == to.end()) to.push_back(one);
}

template <class Entries>
std::string offered(const Entries& entries, const std::string& wrong) {
  std::vector<std::string> ids;
  for (const auto& entry : entries) ids.push_back(entry.id);
  return "Did you mean \"" + nearest_word(wrong, ids) + "\"?";
}

/// A list as we answered it, without what we added for the reader of the answer.
template <std::size_t N>
Json without(const Json& list, const std::array<const char*, N>& added) {
  if (!list.is_array()) return list;
  Json out = Json::array();
  for (const Json& item : list) {
    if (!item.is_object()) {
      out.push_back(item);
      continue;
    }
    Json kept = Json::object();
    for (const auto& [key, value] : item.items()) {
      const bool is_added = std::any_of(added.begin(), added.end(),
                                        [&key = key](const char* name) { return key == name; });
      if (!is_added && !value.is_null()) kept[key] = value;
    }
    out.push_back(std::move(kept));
  }
  return out;
}

std::optional<FindingState> answer_state(std::string_view text) {
  if (text == "present") return FindingState::present;
  if (text == "absent") return FindingState::absent;
  if (text == "unknown") return FindingState::not_looked_at;
  return std::nullopt;
}

void read_answers(const Json& value, const std::string& place, Told& told, Problems& problems) {
  ObjectReader in(value, place, problems);
  for (const std::string& sign : in.take_rest()) {
    const auto state =
        in.word<FindingState>(sign, Need::required, answer_state, {"present", "absent", "unknown"});
    if (state) told.answers.emplace_back(sign, *state);
  }
}

/// Takes " half" or " of whole" from the end of a text.
std::optional<Of> take_of(std::string& text) {
  for (const auto& [word, meaning] : {std::pair{" half", Of::half}, {" whole", Of::whole}}) {
    if (!text.ends_with(word)) continue;
    text.erase(text.size() - std::string_view(word).size());
    if (text.ends_with(" of")) text.erase(text.size() - 3);
    return meaning;
  }
  return std::nullopt;
}

ChangeRequest::Amount read_one_amount(const Json& value, const std::string& place,
                                      Problems& problems) {
  ChangeRequest::Amount out;
  out.place = place;
  if (value.is_string()) {
    std::string text = value.get<std::string>();
    out.of = take_of(text);
    auto mm = read_amount(text, place);
    if (mm) out.amount = *mm;
    add(problems, mm.problems());
  } else if (value.is_number()) {
    out.amount = value.get<double>();
    out.plain = true;
  } else {
    ObjectReader in(value, place, problems);
    out.amount = in.number("amount_mm", Need::required, -1e6, 1e6).value_or(0.0);
    out.of = in.word<Of>("of", Need::optional, of, {"half", "whole"});
    in.refuse_rest();
  }
  return out;
}

void read_amounts(ObjectReader& in, ChangeRequest& out, Problems& problems) {
  const Json* amounts = in.field("amounts", Need::optional);
  if (amounts == nullptr) return;
  const std::string place = in.place_of("amounts");
  if (list_or_note(*amounts, place, kMostAmounts, problems) == nullptr) return;
  std::size_t i = 0;
  for (const Json& item : *amounts) {
    const std::string here = member(place, i++);
    if (item.is_null()) {
      out.amounts.emplace_back();
    } else {
      out.amounts.emplace_back(read_one_amount(item, here, problems));
    }
  }
}

Finding* find_sign_in(std::vector<Finding>& findings, const std::string& sign) {
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& finding) { return finding.sign == sign; });
  return found == findings.end() ? nullptr : &*found;
}

void hear_answers(const knowledge::Knowledge& k, const Told& told, std::vector<Finding>& findings,
                  Problems& problems) {
  for (const auto& [id, state] : told.answers) {
    const knowledge::Sign* sign = knowledge::find_sign(k, id);
    const std::string place = member("/answers", id);
    if (sign == nullptr) {
      problems.push_back(
          {"sign-unknown", place, "No sign is called \"" + id + "\".", offered(k.signs, id)});
      continue;
    }
    Finding* before = find_sign_in(findings, id);
    if (before != nullptr && before->sure < 1.0 && state != FindingState::not_looked_at) {
      for (Finding& finding : findings) {  // what was supposed or hedged is settled by the answer
        if (finding.sign != id || !(finding.sure < 1.0)) continue;
        if (finding.state != state) finding.amount.reset();
        finding.state = state;
        finding.sure = 1.0;
      }
    }
    if (before == nullptr) {
      Finding finding;
      finding.sign = id;
      finding.zone = sign->zone;
      finding.state = state;
      findings.push_back(std::move(finding));
    } else if (before->state != state && state != FindingState::not_looked_at &&
               before->state != FindingState::not_looked_at) {
      problems.push_back({"answer-contradicts", place,
                          "The answer says " + std::string(to_text(state)) +
                              ", but what was told says " + std::string(to_text(before->state)) +
                              (before->words.empty() ? "." : ": \"" + before->words + "\"."),
                          "Leave out the one that does not hold."});
    }
  }
}

void hear_style(const knowledge::Knowledge& k, const Told& told, TryOn& tryon, Problems& problems) {
  for (std::size_t i = 0; i < told.style.size(); ++i) {
    const std::string& id = told.style[i];
    const bool known = std::any_of(k.features.begin(), k.features.end(),
                                   [&](const knowledge::Feature& f) { return f.id == id; });
    if (known) {
      put(tryon.style, id);
    } else {
      problems.push_back({"feature-unknown", member("/style", i),
                          "No garment feature is called \"" + id + "\".", offered(k.features, id)});
    }
  }
}

void hear_asked(const knowledge::Knowledge& k, const Told& told, TryOn& tryon, Problems& problems) {
  for (std::size_t i = 0; i < told.asked.size(); ++i) {
    if (knowledge::find_sign(k, told.asked[i]) != nullptr) {
      put(tryon.asked, told.asked[i]);
    } else {
      problems.push_back({"sign-unknown", member("/asked", i),
                          "No sign is called \"" + told.asked[i] + "\".",
                          offered(k.signs, told.asked[i])});
    }
  }
  for (const auto& [sign, state] : told.answers) put(tryon.asked, sign);
}

}  // namespace

Told read_told(ObjectReader& in, Problems& problems) {
  Told out;
  out.words = in.text("words", Need::optional, kMostWords);
  if (const Json* findings = in.field("findings", Need::optional)) {
    constexpr std::array<const char*, 1> kAdded = {"takes_up_mm"};
    out.findings = read_findings(without(*findings, kAdded), in.place_of("findings"), problems);
  }
  if (const Json* answers = in.field("answers", Need::optional)) {
    read_answers(*answers, in.place_of("answers"), out, problems);
  }
  if (const Json* wearer = in.field("wearer", Need::optional)) {
    out.wearer = read_wearer(*wearer, in.place_of("wearer"), problems);
  }
  if (const Json* fabric = in.field("fabric", Need::optional)) {
    out.fabric = read_fabric_or_id(*fabric, in.place_of("fabric"), problems);
  }
  out.style = in.texts("style", Need::optional);
  out.asked = in.texts("asked", Need::optional);
  return out;
}

std::optional<knowledge::JointWish> read_together(ObjectReader& in, Problems& problems) {
  const Json* here = in.field("together", Need::optional);
  if (here == nullptr || here->is_null()) return std::nullopt;
  if (here->is_boolean()) {
    return here->get<bool>() ? std::optional(knowledge::JointWish()) : std::nullopt;
  }
  if (!here->is_object()) {
    in.note("type-wrong", "together", "Here stands " + shown(*here) + ".",
            "Write true, or {\"proposals\": [ids], \"body\": true}.");
    return std::nullopt;
  }
  ObjectReader wish(*here, in.place_of("together"), problems);
  knowledge::JointWish out;
  out.proposals = wish.texts("proposals", Need::optional);
  out.body = wish.flag("body", Need::optional).value_or(false);
  wish.refuse_rest();
  if (out.proposals.size() > kMostTogether) {
    wish.note("text-size", "proposals", "More proposals are named than can be sized together.",
              "Name at most " + std::to_string(kMostTogether) + ".");
  }
  return out;
}

std::string read_reason(ObjectReader& in) {
  std::string reason = in.text("reason", Need::required, 2000);
  const Json* said = in.field("reason", Need::optional);
  if (said != nullptr && said->is_string() &&
      reason.find_first_not_of(" \t\r\n") == std::string::npos) {
    in.note("field-missing", "reason", "The reason is empty.",
            "Say in a few words why the block is changed.");
  }
  return reason;
}

ChangeRequest read_change(const Json& body, bool to_be_saved, Problems& problems) {
  ChangeRequest out;
  ObjectReader in(body, "", problems);
  const Json* steps = in.field("steps", Need::optional);
  if (steps != nullptr) {
    constexpr std::array<const char*, 13> kAdded = {
        "text",     "limit",   "assumed",  "worth_making", "proposals", "asked_by",    "alone_mm",
        "least_mm", "most_mm", "at_least", "at_most",      "used",      "bound_reason"};
    out.steps = read_steps(without(*steps, kAdded), "/steps", problems);
  }
  out.proposal = in.text("proposal", Need::optional, 64);
  out.together = read_together(in, problems);
  read_amounts(in, out, problems);
  out.told = read_told(in, problems);
  out.geometry = in.flag("geometry", Need::optional).value_or(false);
  if (to_be_saved) {
    out.author = in.text("author", Need::optional);
    out.reason = read_reason(in);
  }
  in.refuse_rest();
  if (!in.is_object()) return out;
  const int ways = (steps != nullptr ? 1 : 0) + (out.proposal.empty() ? 0 : 1) +
                   (out.together.has_value() ? 1 : 0);
  if (ways != 1 && out.together) {
    in.note("change-missing", steps != nullptr ? "steps" : "proposal",
            "Proposals are to be sized together, and steps or a proposal are given besides.",
            "Name the proposals in \"together\": {\"proposals\": [...]}, and nothing besides.");
  } else if (ways != 1) {
    in.note("change-missing", steps != nullptr ? "proposal" : "steps",
            steps != nullptr ? "Both steps and a proposal are given."
                             : "Neither steps nor a proposal is given.",
            "Give either \"steps\", or \"proposal\" (or \"together\") with the words it was "
            "proposed for.");
  } else if (steps != nullptr && steps->is_array() && steps->empty()) {
    in.note("change-missing", "steps", "The list of steps is empty.", "Give at least one step.");
  }
  if (out.together && !out.amounts.empty()) {
    in.note("amounts-without-proposal", "amounts",
            "Amounts are found when proposals are sized together.",
            "Tell how much is to change in the words or findings, and leave the amounts out.");
  } else if (steps != nullptr && !out.amounts.empty()) {
    in.note("amounts-without-proposal", "amounts", "Amounts belong to a proposal.",
            "Write each amount into its step.");
  }
  return out;
}

Result<Heard> hear(const knowledge::Knowledge& k, const knowledge::Listener& listener,
                   const std::string& kind, const Told& told) {
  Heard out;
  Problems problems;
  std::vector<Finding>& findings = out.tryon.findings;
  if (told.empty()) {
    return Problem{"nothing-told", "/words", "Nothing was told of the try-on.",
                   "Say what was seen in \"words\", or give \"findings\" or \"answers\"."};
  }
  if (!told.words.empty()) {
    auto understood = listener.hear(told.words, kind);
    add(problems, understood.problems());
    if (understood) {
      findings = std::move(understood->findings);
      understood->findings.clear();
      out.remarks = std::move(understood).value();
    }
  }
  for (Problem problem : knowledge::check_findings(k, told.findings, "/findings")) {
    // The amount of a finding has parts in the model that are fields of their own in the request.
    for (const auto& [part, field] :
         {std::pair{"/amount/mm", "/amount_mm"}, std::pair{"/amount/of", "/of"}}) {
      if (!problem.place.ends_with(part)) continue;
      problem.place.replace(problem.place.size() - std::string_view(part).size(), std::string::npos,
                            field);
    }
    problems.push_back(std::move(problem));
  }
  for (Finding finding : told.findings) {
    const knowledge::Sign* sign = knowledge::find_sign(k, finding.sign);
    if (sign != nullptr && finding.zone.empty()) finding.zone = sign->zone;
    findings.push_back(std::move(finding));
  }
  hear_answers(k, told, findings, problems);
  out.tryon.style = out.remarks.style;
  hear_style(k, told, out.tryon, problems);
  out.remarks.style = out.tryon.style;
  hear_asked(k, told, out.tryon, problems);
  if (!problems.empty()) return problems;
  out.tryon.wearer = told.wearer;
  out.tryon.fabric = told.fabric;
  return out;
}

}  // namespace pinwright::api
