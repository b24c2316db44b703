#include "api/desk/desk.h"

#include "api/desk/advice_json.h"
#include "api/desk/fabrics.h"
#include "api/desk/knowledge_json.h"
#include "api/desk/request.h"
#include "api/desk/revision_json.h"
#include "api/desk/together_json.h"
#include "api/exchange/block_json.h"
#include "api/exchange/object_reader.h"
#include "engine/base/nearest_word.h"
#include "knowledge/understand.h"

namespace pinwright::api {

Desk::Desk(knowledge::Knowledge knowledge, std::unique_ptr<Store> store)
    : knowledge_(std::move(knowledge)), listener_(knowledge_), store_(std::move(store)) {}

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
  Reply reply;
  if (section.empty()) {
    reply.body = knowledge_overview(knowledge_);
    Json fabrics = Json::array();
    for (const Fabric& fabric : known_fabrics()) fabrics.push_back(fabric.id);
    reply.body["fabrics"] = std::move(fabrics);
    return reply;
  }
  if (auto listed = knowledge_section(knowledge_, section)) {
    reply.body = *std::move(listed);
    return reply;
  }
  return refuse(Problem{"entry-unknown", "/v1/knowledge/" + section,
                        "The knowledge has no section \"" + section + "\".",
                        "Ask for problems, signs, causes, zones or operations."});
}

Outcome Desk::show_knowledge(const std::string& id) const {
  if (auto entry = knowledge_entries(knowledge_, id)) {
    Reply reply;
    reply.body = *std::move(entry);
    return reply;
  }
  return refuse(Problem{"entry-unknown", id, "The knowledge has no entry \"" + id + "\".",
                        "Did you mean \"" + nearest_word(id, knowledge_ids(knowledge_)) + "\"?"});
}

Outcome Desk::describe(const Json& request) const {
  Problems problems;
  ObjectReader in(request, "", problems);
  const std::string words = in.text("words", Need::required, 65536);
  const std::string kind = in.text("kind", Need::optional, 64);
  in.refuse_rest();
  if (!problems.empty()) return refuse(std::move(problems));
  const auto understood = listener_.hear(words, kind);
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
  Problems problems;
  ObjectReader in(request, "", problems);
  const Told told = read_told(in, problems);
  const auto together = read_together(in, problems);
  in.refuse_rest();
  if (!problems.empty()) return refuse(std::move(problems));
  auto heard = hear(knowledge_, listener_, subject.block->kind, told);
  if (!heard) return refuse(heard.problems());
  heard->tryon.block = subject.block->id;
  heard->tryon.revision = subject.revision;
  const auto advice =
      knowledge::advise(knowledge_, *subject.block, heard->tryon, heard->remarks.not_understood);
  if (!advice) return refuse(advice.problems());
  Reply reply;
  reply.etag = subject.etag;
  reply.body["block"] = subject.block->id;
  reply.body["revision"] = subject.revision == 0 ? Json() : Json(subject.revision);
  reply.body["etag"] = subject.etag.empty() ? Json() : Json(subject.etag);
  reply.body.update(advice_to_json(knowledge_, *advice));
  reply.body.update(remarks_to_json(heard->remarks));
  reply.body["asked"] = heard->tryon.asked;
  if (together) {
    const auto joint =
        knowledge::size_together(knowledge_, *subject.block, heard->tryon, *advice, *together);
    if (!joint) return refuse(joint.problems());
    reply.body["together"] = together_to_json(*joint);
  }
  return reply;
}

}  // namespace pinwright::api
