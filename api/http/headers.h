#pragma once
// What stands in the headers and the query of a request.

#include <string>

#include "api/http/message.h"
#include "api/store/store.h"
#include "engine/base/result.h"

namespace pinwright::api {

/// The revision named by If-Match: exactly one strong entity tag. "base-missing" without the header
/// and for `*` (which names none); "header-malformed" otherwise. A weak tag never fits (RFC 9110,
/// 8.8.3.2) and is passed on as it stands, to be found stale.
Result<Base> if_match(const HttpRequest& request);

/// True when If-None-Match names this entity tag (weak comparison) or is `*`.
bool if_none_match(const HttpRequest& request, const std::string& quoted_etag);

/// The Idempotency-Key without quotes; "" when there is none. "header-malformed" when it is empty,
/// has over 200 bytes or is not printable ASCII.
Result<std::string> idempotency_key(const HttpRequest& request);

/// A whole number of at least 1, or `otherwise` when it is not in the query. "query-malformed".
Result<int> query_number(const HttpRequest& request, const std::string& name, int otherwise);

/// True when image/svg+xml is asked for before application/json.
bool wants_svg(const HttpRequest& request);

/// application/json or a +json type, with or without parameters.
bool is_json(const std::string& content_type);

/// "Bearer <token>" compared in a time that does not depend on where it differs.
bool bearer_fits(const std::string& authorization, const std::string& token);

/// The host named by a Host header is this machine's loopback: localhost, 127.x.x.x, [::1].
bool is_loopback_host(const std::string& host);

}  // namespace pinwright::api
