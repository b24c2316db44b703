// Drafting, saving, checking.

#include "api/desk/changed.h"
#include "api/desk/desk.h"
#include "api/desk/fabrics.h"
#include "api/desk/request.h"
#include "api/exchange/block_json.h"
#include "api/exchange/object_reader.h"
#include "api/exchange/proof_json.h"
#include "api/exchange/wearer_json.h"
#include "engine/draft/draft.h"

namespace pinwright::api {

namespace {

struct DraftRequest {
  std::string kind;
  DraftInput input;
  bool save = false;
  std::string author;
  std::string reason;
};

/// As in the block's schema: lower-case letters and digits, parts joined by single hyphens.
bool is_id(const std::string& text) {
  char before = '-';
  for (const char c : text) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (!plain && (c != '-' || before == '-')) return false;
    before = c;
  }
  return before != '-';
}

/// The draft speaks of the wearer's body; the request may have called it measurements.
Problems at_measurements(const Json& request, Problems problems) {
  constexpr std::string_view kBody = "/wearer/body";
  for (Problem& problem : problems) {
    if (request.contains("measurements") && problem.place.starts_with(kBody)) {
      problem.place.replace(0, kBody.size(), "/measurements");
    }
  }
  return problems;
}

std::map<std::string, double> read_ease(ObjectReader& in, Problems& problems) {
  std::map<std::string, double> out;
  const Json* ease = in.field("ease", Need::optional);
  if (ease == nullptr) return out;
  ObjectReader fields(*ease, in.place_of("ease"), problems);
  for (const std::string& name : fields.take_rest()) {
    if (const auto mm = fields.number(name, Need::required, -1000, 1000)) out[name] = *mm;
  }
  return out;
}

DraftRequest read_draft(const Json& request, Problems& problems) {
  DraftRequest out;
  ObjectReader in(request, "", problems);
  out.kind = in.text("kind", Need::required, 64);
  out.input.id = in.text("id", Need::required, 64);
  if (!out.input.id.empty() && !is_id(out.input.id)) {
    in.note("id-malformed", "id", "\"" + out.input.id + "\" is no id.",
            "Use lower-case letters and digits, parts joined by single hyphens: deck-top.");
  }
  out.input.name = in.text("name", Need::optional);
  out.input.size = in.text("size", Need::optional);
  const Json* wearer = in.field("wearer", Need::optional);
  const Json* body = in.field("measurements", Need::optional);
  if ((wearer != nullptr) == (body != nullptr)) {
    in.note("field-missing", "measurements",
            wearer == nullptr ? "Neither measurements nor a wearer is given."
                              : "Both measurements and a wearer are given.",
            "Give one of the two.");
  } else if (wearer != nullptr) {
    out.input.wearer = read_wearer(*wearer, "/wearer", problems);
  } else {
    out.input.wearer.body = read_measurements(*body, "/measurements", problems);
  }
  if (const Json* fabric = in.field("fabric", Need::optional)) {
    out.input.fabric = read_fabric_or_id(*fabric, "/fabric", problems);
  } else {
    const Fabric* usual = find_fabric(out.kind == "knit-top" ? "cotton-jersey" : "cotton-poplin");
    if (usual != nullptr) out.input.fabric = *usual;
  }
  out.input.ease = read_ease(in, problems);
  out.save = in.flag("save", Need::optional).value_or(false);
  out.author = in.text("author", Need::optional);
  out.reason = in.text("reason", Need::optional, 2000);
  in.refuse_rest();
  return out;
}

}  // namespace

Outcome Desk::draft(const Json& request, const std::string& key) {
  Problems problems;
  const DraftRequest read = read_draft(request, problems);
  if (!problems.empty()) return refuse(std::move(problems));
  const auto block = pinwright::draft(read.kind, read.input);
  if (!block) return refuse(at_measurements(request, block.problems()));
  if (const Problems unsound = check_block(*block); !unsound.empty()) return refuse(unsound);
  if (read.save) {
    const RequestKey once{key,
                          "draft\n" + request.dump(-1, ' ', false, Json::error_handler_t::replace)};
    return save_block(*block, read.author, read.reason.empty() ? "drafted" : read.reason, once);
  }
  const Proof proof = prove(*block);
  Reply reply;
  reply.pass = proof.pass;
  reply.body["block"] = to_json(*block);
  reply.body["proof"] = to_json(proof);
  return reply;
}

Outcome Desk::save_block(const Block& block, const std::string& author, const std::string& reason,
                         const RequestKey& key) {
  if (store_ == nullptr) return no_store();
  const Proof proof = prove(block);
  if (!proof.pass) return refuse(proof_failed(block.id, proof));
  NewRevision fresh{author, reason, block.name, block.kind, block.size, {}};
  fresh.body.proof = to_json(proof).dump();
  fresh.body.geometry = to_json(block).dump();
  return outcome_of(store_->save(block.id, fresh, key));
}

Outcome Desk::save(const Json& request, const std::string& key) {
  const RequestKey once{key,
                        "save\n" + request.dump(-1, ' ', false, Json::error_handler_t::replace)};
  // Either the block itself, or an object that holds it.
  if (!request.is_object() || !request.contains("block") || request.contains("format")) {
    const auto block = read_block_json(request);
    if (!block) return refuse(block.problems());
    return save_block(*block, "", "saved", once);
  }
  Problems problems;
  ObjectReader in(request, "", problems);
  const Json* inner = in.field("block", Need::required);
  const std::string author = in.text("author", Need::optional);
  const std::string reason = in.text("reason", Need::optional, 2000);
  in.refuse_rest();
  const auto block = read_block_json(*inner, "/block");
  problems.insert(problems.end(), block.problems().begin(), block.problems().end());
  if (!problems.empty()) return refuse(std::move(problems));
  return save_block(*block, author, reason.empty() ? "saved" : reason, once);
}

Outcome Desk::check(const Subject& subject) const {
  const Proof proof = prove(*subject.block);
  Reply reply;
  reply.etag = subject.etag;
  reply.pass = proof.pass;
  reply.body["block"] = subject.block->id;
  reply.body["revision"] = subject.revision == 0 ? Json() : Json(subject.revision);
  reply.body["etag"] = subject.etag.empty() ? Json() : Json(subject.etag);
  reply.body["proof"] = to_json(proof);
  return reply;
}

}  // namespace pinwright::api
