#pragma once
// What the desk gives back for every request: a reply, or a refusal that says how it can be mended.
// The command line and the HTTP service differ only in how they carry these.

#include <string>
#include <utility>
#include <variant>

#include "api/exchange/json.h"
#include "engine/base/result.h"

namespace pinwright::api {

/// What kind of refusal it is: decides the HTTP status and the exit status.
enum class Fault {
  malformed,     ///< the bytes are not what they should be (no JSON, NaN, no text)
  unsound,       ///< well formed, but what it says cannot be used
  proof_failed,  ///< the changed block would not sew together; nothing was saved
  not_found,     ///< no such block, revision, entry
  exists,        ///< a block of this id is saved already
  stale,         ///< based on a revision that is no longer current
  base_missing,  ///< it was not said on which revision the work is based
  too_large,
  media_type,    ///< the body is of another kind than asked for
  method,        ///< the place is right, the method is not
  unauthorised,  ///< no token, or the wrong one
  forbidden,     ///< asked under a name that is not this machine's
  busy,          ///< another program holds the store; try again
  broken,        ///< the store or the machine failed
};

struct Reply {
  Json body;
  std::string etag;      ///< of the revision the reply speaks of, without quotes; empty: none
  bool created = false;  ///< a revision was written (now, or when the request first came)
  std::string location;  ///< of what was created, below /v1: "/blocks/deck-top/revisions/2"
  bool pass = true;      ///< false: a proof is told and it does not pass
};

struct Refusal {
  Fault fault = Fault::unsound;
  Problems problems;  ///< at least one
  Json current;       ///< with `stale` and `exists`: the current revision, else null
  std::string etag;   ///< of `current`
};

class [[nodiscard]] Outcome {
 public:
  Outcome(Reply reply) : value_(std::move(reply)) {}        // NOLINT(google-explicit-constructor)
  Outcome(Refusal refusal) : value_(std::move(refusal)) {}  // NOLINT(google-explicit-constructor)
  bool ok() const { return std::holds_alternative<Reply>(value_); }
  /// REQUIRES: ok().
  const Reply& reply() const { return std::get<Reply>(value_); }
  Reply& reply() { return std::get<Reply>(value_); }
  /// REQUIRES: !ok().
  const Refusal& refusal() const { return std::get<Refusal>(value_); }

 private:
  std::variant<Reply, Refusal> value_;
};

/// The fault that a problem's code stands for; Fault::unsound for all that are not listed. Of
/// several problems the gravest counts: a broken store before a missing block before unsound input.
Fault fault_of(const Problems& problems);

/// A refusal with its fault taken from the codes.
Refusal refuse(Problems problems);
Refusal refuse(Problem problem);

/// Status of the answer over HTTP, and its short title.
int http_status(Fault fault);
std::string_view title(Fault fault);
/// 1 the proof failed, 2 bad input, 3 any other refusal (stale revision, exists, store).
int exit_status(Fault fault);

/// The refusal as RFC 9457 problem details: type, title, status, detail, instance (when given),
/// problems, and `current` where there is one.
Json problem_details(const Refusal& refusal, std::string_view instance = {});

}  // namespace pinwright::api
