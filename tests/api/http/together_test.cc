// Several complaints sized together, over HTTP.

#include "tests/api/http/service.h"

namespace pinwright::api {
namespace {

const Json kTwo = {
    {"words",
     "The front neckline gapes 1 cm and the bust is fine. There are slack folds from neck to "
     "armhole of 2 cm."},
    {"together", true}};

TEST(TogetherOverHttp, AdvisePreviewAndApply) {
  Service service;
  auto client = service.client();
  const auto advised = client.Post("/v1/blocks/deck-top/advice", kTwo.dump(), kJson);
  ASSERT_TRUE(advised);
  ASSERT_EQ(advised->status, 200) << advised->body;
  const Json set = body_of(advised)["together"];
  EXPECT_EQ(set["steps"].size(), 2U);
  const auto previewed = client.Post("/v1/blocks/deck-top/previews", kTwo.dump(), kJson);
  ASSERT_TRUE(previewed);
  ASSERT_EQ(previewed->status, 200) << previewed->body;
  EXPECT_EQ(body_of(previewed)["together"], set);
  EXPECT_TRUE(body_of(previewed)["proof"]["pass"].get<bool>());
  const auto drawn = client.Post("/v1/blocks/deck-top/previews", {{"Accept", "image/svg+xml"}},
                                 kTwo.dump(), kJson);
  ASSERT_TRUE(drawn);
  EXPECT_EQ(drawn->status, 200);
  EXPECT_NE(drawn->body.find("<svg"), std::string::npos);
  Json change = kTwo;
  change["reason"] = "two things at the try-on";
  const std::string etag = previewed->get_header_value("ETag");
  const httplib::Headers headers = {{"If-Match", etag}, {"Idempotency-Key", "one"}};
  const auto applied = client.Post("/v1/blocks/deck-top/revisions", headers, change.dump(), kJson);
  ASSERT_TRUE(applied);
  ASSERT_EQ(applied->status, 201) << applied->body;
  EXPECT_EQ(body_of(applied)["tryon"]["together"], set);
  const auto again = client.Post("/v1/blocks/deck-top/revisions", headers, change.dump(), kJson);
  ASSERT_TRUE(again);
  EXPECT_EQ(body_of(again)["revision"], 2) << "the same request is answered as before";
  const auto stale =
      client.Post("/v1/blocks/deck-top/revisions", {{"If-Match", etag}}, change.dump(), kJson);
  ASSERT_TRUE(stale);
  EXPECT_EQ(stale->status, 412);
}

TEST(TogetherOverHttp, WhatCannotBeHadIsAProblem) {
  Service service;
  auto client = service.client();
  const Json request = {
      {"words",
       "The front neckline gapes 4 cm and the fold ends above the bust. The neckline slides off "
       "the shoulders by 1 cm."},
      {"together",
       {{"proposals", Json::array({"close-neckline-at-armhole", "fill-in-neckline"})}}}};
  const auto refused = client.Post("/v1/blocks/deck-top/previews", request.dump(), kJson);
  ASSERT_TRUE(refused);
  EXPECT_EQ(refused->status, 422) << refused->body;
  EXPECT_EQ(refused->get_header_value("Content-Type"), "application/problem+json");
  const Json problem = body_of(refused);
  EXPECT_EQ(problem["problems"][0]["code"], "together-conflict");
  EXPECT_EQ(problem["problems"][0]["place"], "/together");
  EXPECT_NE(problem["detail"].get<std::string>().find("head of 570 mm"), std::string::npos);
  const Json unknown = {{"words", "the top is 3 cm too long"},
                        {"together", {{"proposals", Json::array({"wish"})}}}};
  const auto bad = client.Post("/v1/blocks/deck-top/advice", unknown.dump(), kJson);
  ASSERT_TRUE(bad);
  EXPECT_EQ(bad->status, 422);
  EXPECT_EQ(body_of(bad)["problems"][0]["code"], "proposal-unknown");
}

}  // namespace
}  // namespace pinwright::api
