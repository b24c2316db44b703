#pragma once
// A request and an answer without a library's types, so that routes can be told without a socket.

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "api/desk/outcome.h"

namespace pinwright::api {

struct HttpRequest {
  std::string method;  ///< upper case
  std::string path;    ///< decoded, without the query
  std::multimap<std::string, std::string> query;
  std::multimap<std::string, std::string> headers;  ///< names in lower case
  std::string body;

  /// The first one of that name, or "".
  std::string header(const std::string& name) const;
  bool has_header(const std::string& name) const { return headers.count(name) != 0; }
};

struct HttpAnswer {
  int status = 200;
  std::string content_type;
  std::vector<std::pair<std::string, std::string>> headers;
  std::string body;
  std::string log;  ///< for whoever runs the service; never sent
};

/// Problem details (application/problem+json) with the ETag of the current revision where known.
/// What failed on our side (busy, broken) is told in general words; the details go to `log`.
HttpAnswer problem_answer(const Refusal& refusal, const std::string& instance);
HttpAnswer problem_answer(const Problem& problem, const std::string& instance);

/// A reply as application/json: 200, or 201 with Location; with its ETag.
HttpAnswer reply_answer(const Reply& reply);
HttpAnswer answer_of(const Outcome& outcome, const std::string& instance);

}  // namespace pinwright::api
