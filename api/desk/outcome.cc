#include "api/desk/outcome.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace pinwright::api {

namespace {

struct CodeFault {
  std::string_view code;
  Fault fault;
};

constexpr auto kFaults = std::to_array<CodeFault>({
    {"json-malformed", Fault::malformed},
    {"json-not-a-number", Fault::malformed},
    {"json-number-range", Fault::malformed},
    {"json-not-utf8", Fault::malformed},
    {"json-too-deep", Fault::malformed},
    {"json-key-twice", Fault::malformed},
    {"json-control-character", Fault::malformed},
    {"header-malformed", Fault::malformed},
    {"query-malformed", Fault::malformed},
    {"json-text-too-long", Fault::too_large},
    {"too-large", Fault::too_large},
    {"words-too-long", Fault::too_large},
    {"proof-failed", Fault::proof_failed},
    {"block-unknown", Fault::not_found},
    {"revision-unknown", Fault::not_found},
    {"entry-unknown", Fault::not_found},
    {"route-unknown", Fault::not_found},
    {"block-exists", Fault::exists},
    {"revision-stale", Fault::stale},
    {"base-missing", Fault::base_missing},
    {"media-type", Fault::media_type},
    {"method-not-allowed", Fault::method},
    {"token-missing", Fault::unauthorised},
    {"token-wrong", Fault::unauthorised},
    {"host-foreign", Fault::forbidden},
    {"store-busy", Fault::busy},
    {"store-read-only", Fault::broken},
    {"store-corrupt", Fault::broken},
    {"store-full", Fault::broken},
    {"store-cannot-open", Fault::broken},
    {"store-newer", Fault::broken},
    {"store-foreign", Fault::broken},
    {"store-broken", Fault::broken},
    {"store-missing", Fault::broken},
    {"revision-damaged", Fault::broken},
    {"internal", Fault::broken},
});

struct FaultInfo {
  Fault fault;
  int http;
  int exit;
  int gravity;  ///< of several problems the one of most gravity names the fault
  std::string_view slug;
  std::string_view title;
};

// 422 for a reused idempotency key and 428 for a missing If-Match are the usual answers
// (RFC 6585 section 3; draft-ietf-httpapi-idempotency-key-header, from memory).
constexpr auto kFaultInfo = std::to_array<FaultInfo>({
    {Fault::malformed, 400, 2, 5, "malformed", "The request cannot be read"},
    {Fault::unsound, 422, 2, 0, "unsound", "The request cannot be used as it is"},
    {Fault::proof_failed, 422, 1, 1, "proof-failed", "The block would not sew together"},
    {Fault::not_found, 404, 2, 3, "not-found", "There is no such thing"},
    {Fault::exists, 409, 3, 3, "exists", "It exists already"},
    {Fault::stale, 412, 3, 3, "stale", "Another revision is current"},
    {Fault::base_missing, 428, 2, 2, "base-missing", "The revision it is based on must be named"},
    {Fault::too_large, 413, 2, 6, "too-large", "The request is too large"},
    {Fault::media_type, 415, 2, 6, "media-type", "The body is of another kind"},
    {Fault::method, 405, 2, 6, "method", "This place does not take that method"},
    {Fault::unauthorised, 401, 2, 7, "unauthorised", "A token is needed"},
    {Fault::forbidden, 403, 2, 7, "forbidden", "This is not allowed"},
    {Fault::busy, 503, 3, 8, "busy", "The store is busy"},
    {Fault::broken, 500, 3, 9, "broken", "The service failed"},
});

const FaultInfo& info(Fault fault) {
  return *std::find_if(kFaultInfo.begin(), kFaultInfo.end(),
                       [fault](const FaultInfo& entry) { return entry.fault == fault; });
}

Fault fault_of_code(std::string_view code) {
  const auto* const found = std::find_if(kFaults.begin(), kFaults.end(),
                                         [code](const CodeFault& f) { return f.code == code; });
  return found == kFaults.end() ? Fault::unsound : found->fault;
}

}  // namespace

Fault fault_of(const Problems& problems) {
  Fault gravest = Fault::unsound;
  for (const Problem& problem : problems) {
    const Fault fault = fault_of_code(problem.code);
    if (info(fault).gravity > info(gravest).gravity) gravest = fault;
  }
  return gravest;
}

Refusal refuse(Problems problems) {
  Refusal refusal;
  refusal.fault = fault_of(problems);
  refusal.problems = std::move(problems);
  return refusal;
}

Refusal refuse(Problem problem) { return refuse(Problems{std::move(problem)}); }

int http_status(Fault fault) { return info(fault).http; }
std::string_view title(Fault fault) { return info(fault).title; }
int exit_status(Fault fault) { return info(fault).exit; }

Json problem_details(const Refusal& refusal, std::string_view instance) {
  const FaultInfo& fault = info(refusal.fault);
  Json details;
  details["type"] = "urn:pinwright:problem:" + std::string(fault.slug);
  details["title"] = fault.title;
  details["status"] = fault.http;
  details["detail"] = refusal.problems.empty()
                          ? std::string(fault.title)
                          : refusal.problems.front().what + " " + refusal.problems.front().mend;
  if (!instance.empty()) details["instance"] = instance;
  details["problems"] = problems_to_json(refusal.problems);
  if (!refusal.current.is_null()) details["current"] = refusal.current;
  return details;
}

}  // namespace pinwright::api
