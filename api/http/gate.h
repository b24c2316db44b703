#pragma once
#include <optional>
#include <string>

#include "api/http/message.h"

namespace pinwright::api {

/// Who may ask: with a token every request but GET /v1/health must bear it ("token-missing",
/// "token-wrong"; 401). Without one only requests to a loopback name are answered, so that no page
/// of the web can reach the service under a name of its own that points here ("host-foreign"; 403).
/// Nothing when the request may pass.
std::optional<HttpAnswer> refuse_stranger(const HttpRequest& request, const std::string& token);

}  // namespace pinwright::api
