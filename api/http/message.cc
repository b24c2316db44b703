#include "api/http/message.h"

namespace pinwright::api {

namespace {

std::string compact(const Json& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string quoted(const std::string& etag) { return "\"" + etag + "\""; }

/// Paths and words of the machinery are nothing to the one who asks.
Refusal for_strangers(const Refusal& told, std::string& log) {
  if (told.fault != Fault::broken && told.fault != Fault::busy) return told;
  for (const Problem& problem : told.problems) {
    log += problem.code + ": " + problem.place + ": " + problem.what + " " + problem.mend + "\n";
  }
  const bool busy = told.fault == Fault::busy;
  Refusal out;
  out.fault = told.fault;
  out.problems.push_back(
      {told.problems.empty() ? "internal" : told.problems.front().code, "the service",
       busy ? "The store is held by another program." : "Something failed in the service itself.",
       busy ? "Repeat the request in a moment; nothing was changed."
            : "Tell whoever runs the service; the log says more. Nothing was changed."});
  return out;
}

}  // namespace

std::string HttpRequest::header(const std::string& name) const {
  const auto found = headers.find(name);
  return found == headers.end() ? std::string() : found->second;
}

HttpAnswer problem_answer(const Refusal& told, const std::string& instance) {
  HttpAnswer answer;
  const Refusal refusal = for_strangers(told, answer.log);
  answer.status = http_status(refusal.fault);
  answer.content_type = "application/problem+json";
  answer.body = compact(problem_details(refusal, instance));
  if (!refusal.etag.empty()) answer.headers.emplace_back("ETag", quoted(refusal.etag));
  if (refusal.fault == Fault::unauthorised)
    answer.headers.emplace_back("WWW-Authenticate", "Bearer");
  if (refusal.fault == Fault::busy) answer.headers.emplace_back("Retry-After", "1");
  return answer;
}

HttpAnswer problem_answer(const Problem& problem, const std::string& instance) {
  return problem_answer(refuse(problem), instance);
}

HttpAnswer reply_answer(const Reply& reply) {
  HttpAnswer answer;
  answer.content_type = "application/json";
  answer.body = compact(reply.body);
  if (!reply.etag.empty()) answer.headers.emplace_back("ETag", quoted(reply.etag));
  if (reply.created) {
    answer.status = 201;
    answer.headers.emplace_back("Location", "/v1" + reply.location);
  }
  return answer;
}

HttpAnswer answer_of(const Outcome& outcome, const std::string& instance) {
  return outcome.ok() ? reply_answer(outcome.reply()) : problem_answer(outcome.refusal(), instance);
}

}  // namespace pinwright::api
