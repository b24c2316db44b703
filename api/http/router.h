#pragma once
// The routes of the service, all below /v1:
//
// clang-format off
//   GET  /health                         {"status": "ok"}
//   GET  /knowledge                      overview, and which folder told what
//   GET  /knowledge/{section}            problems, signs, causes, zones, operations, layers
//   GET  /knowledge/entries/{id}         one entry with phrases and sources
//   POST /knowledge/reload               {}: the folders anew; unsound, the old knowledge is kept (422)
//   GET  /schema/block                   JSON Schema of the block format
//   POST /describe                       words -> findings
//   POST /drafts                         measurements -> block; with "save": true its revision 1
//   GET  /blocks                         latest revision of each
//   POST /blocks                         save: revision 1
//   GET  /blocks/{id}                    latest revision with the block itself
//   POST /blocks/{id}/advice             what was told -> causes, question, proposals
//   POST /blocks/{id}/foresight          wearer, cloth -> what a toile would show, amounts and cures
//   POST /blocks/{id}/previews           change without saving; Accept: image/svg+xml for its drawing
//   GET  /blocks/{id}/revisions          its history; /revisions/{n} one of them
//   POST /blocks/{id}/revisions          apply; If-Match names the revision previewed on
//   POST /blocks/{id}/restore            {"revision": n, "reason"} -> a new revision equal to n
//   GET  /blocks/{id}/drawing.svg        ?revision=n, or ?from=n&to=m for before and after
//   GET  /blocks/{id}/check              the proof; ?revision=n
// clang-format on
//
// Answers carry an ETag where they speak of a revision. If-None-Match is honoured on GET (304),
// Idempotency-Key on every POST that writes. Whatever goes wrong is told as problem details (RFC
// 9457): unknown routes (404) and methods (405 with Allow), bodies that are no JSON (415, 400).

#include <string>
#include <vector>

#include "api/desk/desk.h"
#include "api/http/message.h"

namespace pinwright::api {

/// Answers a request. Never throws; an exception from below is answered with 500 and told nothing
/// of.
HttpAnswer answer(Desk& desk, const HttpRequest& request);

/// Methods that are known at this path, in alphabetical order; empty: no such path.
std::vector<std::string> methods_at(const std::string& path);

/// The answer when something failed in us; says nothing of what it was.
HttpAnswer internal_answer(const std::string& instance);

}  // namespace pinwright::api
