#include "api/http/headers.h"

#include <gtest/gtest.h>

#include "api/http/router.h"

namespace pinwright::api {
namespace {

HttpRequest with(const std::string& name, const std::string& value) {
  HttpRequest request;
  request.headers.emplace(name, value);
  return request;
}

TEST(Headers, IfMatchNamesOneStrongTag) {
  EXPECT_EQ(if_match(with("if-match", "\"1-ab\""))->etag, "1-ab");
  EXPECT_EQ(if_match(with("if-match", "  \"1-ab\" "))->etag, "1-ab");
  EXPECT_EQ(if_match(with("if-match", "W/\"1-ab\""))->etag, "W/\"1-ab\"");
  for (const char* bad : {"1-ab", "\"\"", "\"", "\"a\",\"b\"", "\"a b\""}) {
    EXPECT_FALSE(if_match(with("if-match", bad)).ok()) << bad;
  }
}

TEST(Headers, KeysMayBeQuoted) {
  EXPECT_EQ(*idempotency_key(with("idempotency-key", "abc")), "abc");
  EXPECT_EQ(*idempotency_key(with("idempotency-key", "\"abc\"")), "abc");
  EXPECT_EQ(*idempotency_key(HttpRequest{}), "");
  for (const char* bad : {"", "\"\"", "a b", "caf\xC3\xA9"}) {
    EXPECT_FALSE(idempotency_key(with("idempotency-key", bad)).ok()) << bad;
  }
}

TEST(Headers, MediaTypes) {
  for (const char* json :
       {"application/json", "Application/JSON; charset=utf-8", "application/merge-patch+json"}) {
    EXPECT_TRUE(is_json(json)) << json;
  }
  for (const char* other : {"", "text/json", "application/jsonx", "text/plain"}) {
    EXPECT_FALSE(is_json(other)) << other;
  }
  EXPECT_TRUE(wants_svg(with("accept", "image/svg+xml")));
  EXPECT_TRUE(wants_svg(with("accept", "image/svg+xml, application/json;q=0.5")));
  EXPECT_FALSE(wants_svg(with("accept", "application/json, image/svg+xml")));
  EXPECT_FALSE(wants_svg(with("accept", "*/*")));
}

TEST(Headers, LoopbackHosts) {
  for (const char* ours :
       {"localhost", "LOCALHOST:80", "127.0.0.1", "127.0.0.1:8017", "[::1]:80"}) {
    EXPECT_TRUE(is_loopback_host(ours)) << ours;
  }
  for (const char* other : {"", "localhost.example", "127.0.0.1.example", "10.0.0.1:80", "[::2]:80",
                            "skerry.example"}) {
    EXPECT_FALSE(is_loopback_host(other)) << other;
  }
}

TEST(Headers, BearerTokens) {
  EXPECT_TRUE(bearer_fits("Bearer secret", "secret"));
  EXPECT_TRUE(bearer_fits("bearer  secret", "secret"));
  for (const char* bad : {"", "Bearer", "Bearer ", "Bearer secre", "Bearer secrets", "secret"}) {
    EXPECT_FALSE(bearer_fits(bad, "secret")) << bad;
  }
}

TEST(Methods, AreKnownByPath) {
  EXPECT_EQ(methods_at("/v1/blocks"), (std::vector<std::string>{"GET", "HEAD", "POST"}));
  EXPECT_EQ(methods_at("/v1/blocks/x/restore"), std::vector<std::string>{"POST"});
  for (const char* none : {"", "/", "/v1", "/v1/blocks/", "v1/blocks", "/v1/blocks/a/b/c"}) {
    EXPECT_TRUE(methods_at(none).empty()) << none;
  }
}

}  // namespace
}  // namespace pinwright::api
