// Applying names the revision that was seen: missing, stale, raced, repeated.

#include <barrier>

#include "tests/api/http/service.h"

namespace pinwright::api {
namespace {

constexpr const char* kRevisions = "/v1/blocks/deck-top/revisions";

std::size_t count(httplib::Client& client) {
  return body_of(client.Get(kRevisions))["revisions"].size();
}

TEST(Conflict, WithoutIfMatchNothingIsApplied) {
  Service service;
  auto client = service.client();
  const std::string change = with_reason(longer_body()).dump();
  expect_problem(client.Post(kRevisions, change, kJson), 428, "base-missing");
  expect_problem(client.Post(kRevisions, {{"If-Match", "*"}}, change, kJson), 428, "base-missing");
  expect_problem(client.Post(kRevisions, {{"If-Match", "1"}}, change, kJson), 400,
                 "header-malformed");
  expect_problem(client.Post(kRevisions, {{"If-Match", "\"a\", \"b\""}}, change, kJson), 400,
                 "header-malformed");
  EXPECT_EQ(count(client), 1U);
}

TEST(Conflict, AStaleEtagIsAnsweredWithTheCurrentRevision) {
  Service service;
  auto client = service.client();
  const std::string first = client.Get("/v1/blocks/deck-top")->get_header_value("ETag");
  const auto applied =
      client.Post(kRevisions, {{"If-Match", first}}, with_reason(longer_body()).dump(), kJson);
  ASSERT_EQ(applied->status, 201) << applied->body;
  const auto stale =
      client.Post(kRevisions, {{"If-Match", first}}, with_reason(longer_body(5)).dump(), kJson);
  expect_problem(stale, 412, "revision-stale");
  EXPECT_EQ(body_of(stale)["current"]["revision"], 2);
  EXPECT_EQ(stale->get_header_value("ETag"), applied->get_header_value("ETag"));
  const auto weak = client.Post(kRevisions, {{"If-Match", "W/" + stale->get_header_value("ETag")}},
                                with_reason(longer_body(5)).dump(), kJson);
  expect_problem(weak, 412, "revision-stale");
  EXPECT_EQ(count(client), 2U);
}

TEST(Conflict, OfTwoThatApplyAtOnceExactlyOneWins) {
  Service service;
  std::string etag = service.client().Get("/v1/blocks/deck-top")->get_header_value("ETag");
  for (int round = 0; round < 3; ++round) {
    std::barrier start(2);
    int status[2] = {0, 0};
    const auto race = [&](int who) {
      auto client = service.client();
      const std::string change = with_reason(longer_body(5.0 + who)).dump();
      start.arrive_and_wait();
      const auto answer = client.Post(kRevisions, {{"If-Match", etag}}, change, kJson);
      status[who] = answer ? answer->status : -1;
    };
    std::thread other(race, 1);
    race(0);
    other.join();
    EXPECT_EQ(std::min(status[0], status[1]), 201);
    EXPECT_EQ(std::max(status[0], status[1]), 412);
    auto client = service.client();
    EXPECT_EQ(count(client), static_cast<std::size_t>(round) + 2);
    etag = client.Get("/v1/blocks/deck-top")->get_header_value("ETag");
  }
}

TEST(Conflict, ARepeatedRequestWithItsKeyIsAnsweredAsBefore) {
  Service service;
  auto client = service.client();
  const std::string etag = client.Get("/v1/blocks/deck-top")->get_header_value("ETag");
  const httplib::Headers headers = {{"If-Match", etag}, {"Idempotency-Key", "\"8e03978e\""}};
  const std::string change = with_reason(longer_body()).dump();
  const auto first = client.Post(kRevisions, headers, change, kJson);
  ASSERT_EQ(first->status, 201) << first->body;
  const auto again = client.Post(kRevisions, headers, change, kJson);
  ASSERT_TRUE(again);
  EXPECT_EQ(again->status, 201);
  EXPECT_EQ(again->body, first->body);
  EXPECT_EQ(again->get_header_value("ETag"), first->get_header_value("ETag"));
  EXPECT_EQ(again->get_header_value("Location"), first->get_header_value("Location"));
  expect_problem(client.Post(kRevisions, headers, with_reason(longer_body(7)).dump(), kJson), 422,
                 "request-key-reused");
  EXPECT_EQ(count(client), 2U);
  expect_problem(
      client.Post(kRevisions, {{"If-Match", etag}, {"Idempotency-Key", std::string(201, 'k')}},
                  change, kJson),
      400, "header-malformed");
}

}  // namespace
}  // namespace pinwright::api
