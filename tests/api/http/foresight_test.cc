// POST /v1/blocks/{id}/foresight.

#include "tests/api/http/service.h"

namespace pinwright::api {
namespace {

class ForesightRoute : public ::testing::Test {
 protected:
  httplib::Result ask(const Json& request) {
    return client_.Post("/v1/blocks/deck-top/foresight", request.dump(), "application/json");
  }
  Service service_;
  httplib::Client client_ = service_.client();
};

TEST_F(ForesightRoute, NothingForTheWearerOfTheBlock) {
  const auto answer = ask(Json::object());
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 200) << answer->body;
  const Json told = body_of(answer);
  EXPECT_EQ(told["findings"], Json::array());
  EXPECT_EQ(told["proposals"], Json::array());
  EXPECT_FALSE(told["measures"].empty());
  EXPECT_EQ(told["block"], "deck-top");
  EXPECT_EQ(told["revision"], 1);
  EXPECT_FALSE(answer->get_header_value("ETag").empty());
}

TEST_F(ForesightRoute, AFullerArmWithAmountAndCure) {
  const Json same = body_of(ask(Json::object()));
  double has = 0.0;
  for (const Json& m : same["measures"])
    if (m["measure"] == "upper-arm-girth") has = m["body_mm"].get<double>();
  ASSERT_GT(has, 0.0);
  Json measured = deckhand_3();
  measured["upper-arm-girth"] = has + 24.0;
  const auto answer = ask({{"wearer", {{"id", "deckhand-5"}, {"body", measured}}}});
  ASSERT_TRUE(answer);
  ASSERT_EQ(answer->status, 200) << answer->body;
  const Json told = body_of(answer);
  ASSERT_FALSE(told["findings"].empty());
  const Json& first = told["findings"][0];
  EXPECT_EQ(first["sign"], "arm-fuller-than-sleeve-allows");
  EXPECT_EQ(first["measured"], true);
  EXPECT_NEAR(first["amount_mm"].get<double>(), 24.0, 0.6);
  EXPECT_TRUE(first["of"].is_null()) << "of one sleeve";
  ASSERT_FALSE(first["cures"].empty());
  EXPECT_EQ(told["proposals"][0]["id"], first["cures"][0]);
  EXPECT_TRUE(told["proposals"][0].contains("beyond"));
}

TEST_F(ForesightRoute, WhatIsWrongIsTold) {
  expect_problem(ask({{"words", "too tight"}}), 422, "field-unknown");
  expect_problem(ask({{"wearer", {{"body", {{"bust-girth", 9.2}}}}}}), 422, "measurement-range");
  expect_problem(client_.Post("/v1/blocks/no-such/foresight", "{}", "application/json"), 404,
                 "block-unknown");
  expect_problem(client_.Get("/v1/blocks/deck-top/foresight"), 405, "method-not-allowed");
}

}  // namespace
}  // namespace pinwright::api
