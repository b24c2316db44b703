#include "api/http/gate.h"

#include "api/http/headers.h"

namespace pinwright::api {

std::optional<HttpAnswer> refuse_stranger(const HttpRequest& request, const std::string& token) {
  if (token.empty()) {
    if (!request.has_header("host") || is_loopback_host(request.header("host"))) {
      return std::nullopt;
    }
    return problem_answer(Problem{"host-foreign", "header Host",
                                  "The service is asked under a name that is not this machine's.",
                                  "Ask it as 127.0.0.1 or localhost, or run it with a token."},
                          request.path);
  }
  if (request.path == "/v1/health") return std::nullopt;
  if (!request.has_header("authorization")) {
    return problem_answer(Problem{"token-missing", "header Authorization", "No token was sent.",
                                  "Send Authorization: Bearer with the token of the service."},
                          request.path);
  }
  if (bearer_fits(request.header("authorization"), token)) return std::nullopt;
  return problem_answer(
      Problem{"token-wrong", "header Authorization", "The token is not that of this service.",
              "Look up the token with whoever runs the service."},
      request.path);
}

}  // namespace pinwright::api
