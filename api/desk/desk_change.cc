// Preview, apply, restore.

#include "api/desk/advice_json.h"
#include "api/desk/changed.h"
#include "api/desk/desk.h"
#include "api/desk/proposal.h"
#include "api/desk/request.h"
#include "api/desk/revision_json.h"
#include "api/desk/together_json.h"
#include "api/exchange/block_json.h"
#include "api/exchange/fabric_json.h"
#include "api/exchange/object_reader.h"
#include "api/exchange/proof_json.h"
#include "api/exchange/step_json.h"
#include "api/exchange/wearer_json.h"
#include "engine/alteration/largest.h"
#include "knowledge/advise.h"

namespace pinwright::api {

namespace {

Json tryon_to_json(const TryOn& tryon, const ChangeRequest& request) {
  return {{"words", request.told.words},
          {"findings", findings_to_json(tryon.findings)},
          {"wearer", tryon.wearer ? to_json(*tryon.wearer) : Json()},
          {"style", tryon.style},
          {"fabric", tryon.fabric ? to_json(*tryon.fabric) : Json()},
          {"proposal", request.proposal.empty() ? Json() : Json(request.proposal)}};
}

std::string request_text(const char* what, const std::string& block, const Base& base,
                         const Json& request) {
  return std::string(what) + "\n" + block + "\n" + std::to_string(base.number) + "\n" + base.etag +
         "\n" + request.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

Problems proof_failed(const std::string& block, const Proof& proof) {
  Problems problems = {{"proof-failed", "block " + block,
                        std::to_string(proof.failures.size()) +
                            " of the checks failed: the pieces would not sew together as meant.",
                        "Mend what is listed below; nothing was saved."}};
  problems.insert(problems.end(), proof.failures.begin(), proof.failures.end());
  return problems;
}

Result<Desk::Changed> Desk::change(const Subject& subject, const ChangeRequest& request) const {
  Changed out;
  const auto now = this->known();
  const knowledge::Knowledge* known = &now->knowledge;
  if (!request.told.empty() || !request.proposal.empty() || request.together) {
    auto heard = hear(*known, now->listener(), subject.block->kind, request.told);
    if (!heard) return heard.problems();
    heard->tryon.block = subject.block->id;
    heard->tryon.revision = subject.revision;
    out.tryon = tryon_to_json(heard->tryon, request);
    if (!request.proposal.empty() || request.together) {
      const TryOn& tryon = heard->tryon;
      const auto advice =
          knowledge::advise(*known, *subject.block, tryon, heard->remarks.not_understood);
      if (!advice) return advice.problems();
      if (request.together) {
        auto joint =
            knowledge::size_together(*known, *subject.block, tryon, *advice, *request.together);
        if (!joint) return joint.problems();
        if (!joint->sizing.met) return not_met(*joint);
        out.together = together_to_json(*joint);
        out.tryon["together"] = out.together;
        out.steps = std::move(joint->steps);
      } else {
        auto steps = proposed_steps(*advice, request);
        if (!steps) return steps.problems();
        out.steps = std::move(steps).value();
      }
    }
  }
  if (request.proposal.empty() && !request.together) out.steps = request.steps;
  auto altered = alter(*subject.block, out.steps);
  if (!altered) return with_largest(*subject.block, out.steps, altered.problems());
  out.altered = std::move(altered).value();
  const Wearer* wearer = request.told.wearer ? &*request.told.wearer : nullptr;
  out.proof = prove(out.altered.block, subject.block.get(), wearer ? &wearer->body : nullptr);
  return out;
}

Outcome Desk::preview(const Subject& subject, const Json& request) const {
  Problems problems;
  const ChangeRequest read = read_change(request, false, problems);
  if (!problems.empty()) return refuse(std::move(problems));
  const auto changed = change(subject, read);
  if (!changed) return refuse(changed.problems());
  Reply reply;
  reply.etag = subject.etag;
  reply.pass = changed->proof.pass;
  Json& body = reply.body;
  body["block"] = subject.block->id;
  body["base_revision"] = subject.revision == 0 ? Json() : Json(subject.revision);
  body["etag"] = subject.etag.empty() ? Json() : Json(subject.etag);
  body["steps"] = to_json(changed->steps);
  if (!changed->together.is_null()) body["together"] = changed->together;
  body["notes"] = to_json(changed->altered.notes);
  body["proof"] = to_json(changed->proof);
  body["drawing"] = subject.etag.empty()
                        ? Json()
                        : Json{{"href", "/v1/blocks/" + subject.block->id + "/previews"},
                               {"method", "POST"},
                               {"accept", "image/svg+xml"}};
  if (read.geometry) body["geometry"] = to_json(changed->altered.block);
  return reply;
}

Outcome Desk::apply(const std::string& block, const Base& base, const Json& request,
                    const std::string& key) {
  if (store_ == nullptr) return no_store();
  const RequestKey once{key, request_text("apply", block, base, request)};
  const auto before = store_->answered(once);
  if (!before) return refuse(before.problems());
  if (*before) {
    Written again;
    again.revision = **before;
    again.replayed = true;
    return outcome_of(again);
  }
  Problems problems;
  const ChangeRequest read = read_change(request, true, problems);
  if (!problems.empty()) return refuse(std::move(problems));
  const auto current = this->subject(block);
  if (!current) return refuse(current.problems());
  const bool fits = (base.number == 0 || base.number == current->revision) &&
                    (base.etag.empty() || base.etag == current->etag) &&
                    !(base.number == 0 && base.etag.empty());
  if (!fits) return outcome_of(store_->append(block, base, {}, once));  // says why; writes nothing
  const auto changed = change(*current, read);
  if (!changed) return refuse(changed.problems());
  if (!changed->proof.pass) return refuse(proof_failed(block, changed->proof));
  const Block& after = changed->altered.block;
  if (after == *current->block) {
    return refuse(Problem{"nothing-changed", "/steps", "These steps move no line of the block.",
                          "Give a step with an amount that changes the pattern."});
  }
  NewRevision fresh{read.author, read.reason, after.name, after.kind, after.size, {}};
  fresh.body.tryon = changed->tryon.dump();
  fresh.body.steps = to_json(changed->steps).dump();
  fresh.body.notes = to_json(changed->altered.notes).dump();
  fresh.body.proof = to_json(changed->proof).dump();
  fresh.body.geometry = to_json(after).dump();
  // The base is told by its ETag, so that it is the very revision the change was worked out on.
  Outcome outcome = outcome_of(store_->append(block, {base.number, current->etag}, fresh, once));
  if (outcome.ok() && read.geometry) outcome.reply().body["geometry"] = to_json(after);
  return outcome;
}

Outcome Desk::restore(const std::string& block, const Base& base, const Json& request,
                      const std::string& key) {
  if (store_ == nullptr) return no_store();
  Problems problems;
  ObjectReader in(request, "", problems);
  const auto number = in.number("revision", Need::required, 1, 1e6);
  const std::string author = in.text("author", Need::optional);
  const std::string reason = read_reason(in);
  in.refuse_rest();
  if (number && *number != static_cast<double>(static_cast<int>(*number))) {
    in.note("type-wrong", "revision", "The revision is not a whole number.",
            "Name it by its number: 1, 2, 3, ...");
  }
  if (!problems.empty()) return refuse(std::move(problems));
  return outcome_of(store_->restore(block, static_cast<int>(*number), base, author, reason,
                                    {key, request_text("restore", block, base, request)}));
}

}  // namespace pinwright::api
