#include "api/desk/desk.h"

#include "api/desk/advice_json.h"
#include "api/desk/fabrics.h"
#include "api/desk/foresight_json.h"
#include "api/desk/knowledge_json.h"
#include "api/desk/request.h"
#include "api/desk/revision_json.h"
#include "api/desk/together_json.h"
#include "api/exchange/block_json.h"
#include "api/exchange/object_reader.h"
#include "api/exchange/wearer_json.h"
#include "engine/base/nearest_word.h"
#include "knowledge/load.h"
#include "knowledge/understand.h"

namespace pinwright::api {

Desk::Desk(knowledge::Knowledge knowledge, std::unique_ptr<Store> store)
    : dictionary_(std::make_shared<const knowledge::Dictionary>()),
      known_(std::make_shared<const Known>(std::move(knowledge), dictionary_)),
      store_(std::move(store)) {}

std::shared_ptr<const Desk::Known> Desk::known() const {
  const std::lock_guard<std::mutex> hold(knowledge_lock_);
  return known_;
}

std::shared_ptr<const knowledge::Knowledge> Desk::knowledge() const {
  auto now = known();
  return {now, &now->knowledge};
}

Outcome Desk::reload_knowledge() {
  const std::lock_guard<std::mutex> one_at_a_time(reload_lock_);
  auto loaded = knowledge::load(knowledge()->folders);
  if (!loaded) {
    Problems problems = loaded.problems();
    problems.insert(problems.begin(),
                    {"knowledge-kept", "/v1/knowledge",
                     "The knowledge on disk cannot be used (" + std::to_string(problems.size()) +
                         (problems.size() == 1 ? " problem" : " problems") +
                         "); what was loaded before stays in use.",
                     "Mend what is told here and ask again."});
    return refuse(std::move(problems));
  }
  auto fresh = std::make_shared<const Known>(std::move(loaded).value(), dictionary_);
  Reply reply;
  reply.body = {{"reloaded", true}};
  reply.body.update(knowledge_counts(fresh->knowledge));
  const std::lock_guard<std::mutex> hold(knowledge_lock_);
  known_ = std::move(fresh);
  return reply;
}

Refusal Desk::no_store() const {
  return refuse(Problem{"store-missing", "store", "No store is open.",
                        "Name one with --store, or set PINWRIGHT_STORE."});
}

Outcome outcome_of(const Written& written) {
  if (!written.ok()) {
    Refusal refusal = refuse(written.problems);
    if (written.current) {
      refusal.current = revision_line_to_json(*written.current);
      refusal.etag = written.current->etag();
    }
    return refusal;
  }
  const RevisionLine& line = written.revision->line;
  Reply reply;
  reply.body = revision_to_json(*written.revision);
  reply.body.erase("geometry");
  reply.body["drawing"] = line.parent ? Json("/v1/blocks/" + line.block +
                                             "/drawing.svg?from=" + std::to_string(*line.parent) +
                                             "&to=" + std::to_string(line.number))
                                      : Json("/v1/blocks/" + line.block + "/drawing.svg");
  reply.etag = line.etag();
  reply.created = true;
  reply.location = "/blocks/" + line.block + "/revisions/" + std::to_string(line.number);
  return reply;
}

Outcome Desk::list_knowledge(const std::string& section) const {
  const auto known = knowledge();
  Reply reply;
  if (section.empty()) {
    reply.body = knowledge_overview(*known);
    Json fabrics = Json::array();
    for (const Fabric& fabric : known_fabrics()) fabrics.push_back(fabric.id);
    reply.body["fabrics"] = std::move(fabrics);
    return reply;
  }
  if (auto listed = knowledge_section(*known, section)) {
    reply.body = *std::move(listed);
    return reply;
  }
  return refuse(Problem{"entry-unknown", "/v1/knowledge/" + section,
                        "The knowledge has no section \"" + section + "\".",
                        "Ask for problems, signs, causes, zones, operations or layers."});
}

Outcome Desk::show_knowledge(const std::string& id) const {
  const auto known = knowledge();
  if (auto entry = knowledge_entries(*known, id)) {
    Reply reply;
    reply.body = *std::move(entry);
    return reply;
  }
  return refuse(Problem{"entry-unknown", id, "The knowledge has no entry \"" + id + "\".",
                        "Did you mean \"" + nearest_word(id, knowledge_ids(*known)) + "\"?"});
}

Outcome Desk::describe(const Json& request) const {
  const auto now = known();
  Problems problems;
  ObjectReader in(request, "", problems);
  const std::string words = in.text("words", Need::required, 65536);
  const std::string kind = in.text("kind", Need::optional, 64);
  in.refuse_rest();
  if (!problems.empty()) return refuse(std::move(problems));
  const auto understood = now->listener().hear(words, kind);
  if (!understood) return refuse(understood.problems());
  Reply reply;
  reply.body["findings"] = findings_to_json(understood->findings);
  reply.body["not_understood"] = not_understood_to_json(understood->not_understood);
  reply.body.update(remarks_to_json(*understood));
  return reply;
}

Outcome Desk::blocks() {
  if (store_ == nullptr) return no_store();
  const auto lines = store_->blocks();
  if (!lines) return refuse(lines.problems());
  Reply reply;
  reply.body["blocks"] = Json::array();
  for (const RevisionLine& line : *lines) {
    reply.body["blocks"].push_back(revision_line_to_json(line));
  }
  return reply;
}

Outcome Desk::revisions(const std::string& block) {
  if (store_ == nullptr) return no_store();
  const auto lines = store_->revisions(block);
  if (!lines) return refuse(lines.problems());
  Reply reply;
  reply.etag = lines->back().etag();
  reply.body["block"] = block;
  reply.body["revisions"] = Json::array();
  for (const RevisionLine& line : *lines) {
    reply.body["revisions"].push_back(revision_line_to_json(line));
  }
  return reply;
}

Outcome Desk::revision(const std::string& block, int number) {
  if (store_ == nullptr) return no_store();
  const auto revision = store_->read(block, number);
  if (!revision) return refuse(revision.problems());
  Reply reply;
  reply.body = revision_to_json(*revision);
  reply.etag = revision->line.etag();
  return reply;
}

Result<Subject> Desk::subject(const std::string& block, int number) {
  if (store_ == nullptr) return no_store().problems;
  auto revision = store_->read(block, number);
  if (!revision) return revision.problems();
  const RevisionLine& line = revision->line;
  const std::string key = block + "@" + line.etag();
  std::shared_ptr<const Block> parsed = cache_.find(key);
  if (parsed == nullptr) {
    const Json text = Json::parse(revision->body.geometry, nullptr, false);
    auto read = read_block_json(text, "/geometry");
    if (!read) return read.problems();
    parsed = std::make_shared<const Block>(std::move(read).value());
    cache_.keep(key, parsed);
  }
  return Subject{parsed, line.number, line.etag()};
}

Result<Subject> Desk::subject_from(const Json& block) {
  auto read = read_block_json(block);
  if (!read) return read.problems();
  return Subject{std::make_shared<const Block>(std::move(read).value()), 0, ""};
}

Outcome Desk::advise(const Subject& subject, const Json& request) const {
  const auto now = this->known();
  const knowledge::Knowledge* known = &now->knowledge;
  Problems problems;
  ObjectReader in(request, "", problems);
  const Told told = read_told(in, problems);
  const auto together = read_together(in, problems);
  in.refuse_rest();
  if (!problems.empty()) return refuse(std::move(problems));
  auto heard = hear(*known, now->listener(), subject.block->kind, told);
  if (!heard) return refuse(heard.problems());
  heard->tryon.block = subject.block->id;
  heard->tryon.revision = subject.revision;
  const auto advice =
      knowledge::advise(*known, *subject.block, heard->tryon, heard->remarks.not_understood);
  if (!advice) return refuse(advice.problems());
  Reply reply;
  reply.etag = subject.etag;
  reply.body["block"] = subject.block->id;
  reply.body["revision"] = subject.revision == 0 ? Json() : Json(subject.revision);
  reply.body["etag"] = subject.etag.empty() ? Json() : Json(subject.etag);
  reply.body.update(advice_to_json(*known, *advice));
  reply.body.update(remarks_to_json(heard->remarks));
  reply.body["asked"] = heard->tryon.asked;
  if (together) {
    const auto joint =
        knowledge::size_together(*known, *subject.block, heard->tryon, *advice, *together);
    if (!joint) return refuse(joint.problems());
    reply.body["together"] = together_to_json(*joint);
  }
  return reply;
}

Outcome Desk::foresee(const Subject& subject, const Json& request) const {
  Problems problems;
  ObjectReader in(request, "", problems);
  TryOn worn;
  if (const Json* wearer = in.field("wearer", Need::optional))
    worn.wearer = read_wearer(*wearer, in.place_of("wearer"), problems);
  if (const Json* fabric = in.field("fabric", Need::optional))
    worn.fabric = read_fabric_or_id(*fabric, in.place_of("fabric"), problems);
  in.refuse_rest();
  if (!problems.empty()) return refuse(std::move(problems));
  const auto known = knowledge();
  const auto foresight = knowledge::foresee(*known, *subject.block, worn);
  if (!foresight) return refuse(foresight.problems());
  Reply reply;
  reply.etag = subject.etag;
  reply.body["block"] = subject.block->id;
  reply.body["revision"] = subject.revision == 0 ? Json() : Json(subject.revision);
  reply.body["etag"] = subject.etag.empty() ? Json() : Json(subject.etag);
  reply.body.update(foresight_to_json(*known, *foresight));
  return reply;
}

}  // namespace pinwright::api
