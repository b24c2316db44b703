// The main job and every route over a real socket.

#include "tests/api/http/service.h"

namespace pinwright::api {
namespace {

TEST(Routes, FromWordsToASavedRevision) {
  Service service;
  auto client = service.client();
  const Json words = {{"words", "The front neckline gapes, I pinned out 2 cm in all."}};
  const auto advised = client.Post("/v1/blocks/deck-top/advice", words.dump(), kJson);
  ASSERT_TRUE(advised);
  ASSERT_EQ(advised->status, 200) << advised->body;
  const Json advice = body_of(advised);
  EXPECT_EQ(advice, service.desk().advise(*service.desk().subject("deck-top"), words).reply().body)
      << "the service answers with the desk's own object";
  Json change = words;
  for (const Json& proposal : advice["proposals"]) {
    if (proposal["on_pattern"].get<bool>()) {
      change["proposal"] = proposal["id"];
      break;
    }
  }
  ASSERT_TRUE(change.contains("proposal")) << advised->body;
  const auto previewed = client.Post("/v1/blocks/deck-top/previews", change.dump(), kJson);
  ASSERT_TRUE(previewed);
  ASSERT_EQ(previewed->status, 200) << previewed->body;
  EXPECT_TRUE(body_of(previewed)["proof"]["pass"].get<bool>());
  const std::string etag = previewed->get_header_value("ETag");
  EXPECT_EQ(etag, "\"" + body_of(previewed)["etag"].get<std::string>() + "\"");

  const auto drawn = client.Post("/v1/blocks/deck-top/previews", {{"Accept", "image/svg+xml"}},
                                 change.dump(), kJson);
  ASSERT_TRUE(drawn);
  EXPECT_EQ(drawn->get_header_value("Content-Type"), "image/svg+xml");
  EXPECT_NE(drawn->body.find("<svg"), std::string::npos);

  change["reason"] = "gapes on deckhand 3";
  const auto applied =
      client.Post("/v1/blocks/deck-top/revisions", {{"If-Match", etag}}, change.dump(), kJson);
  ASSERT_TRUE(applied);
  ASSERT_EQ(applied->status, 201) << applied->body;
  EXPECT_EQ(applied->get_header_value("Location"), "/v1/blocks/deck-top/revisions/2");
  const auto kept = client.Get("/v1/blocks/deck-top/revisions/2");
  ASSERT_TRUE(kept);
  EXPECT_EQ(kept->get_header_value("ETag"), applied->get_header_value("ETag"));
  EXPECT_EQ(body_of(kept)["reason"], "gapes on deckhand 3");
  const auto change_drawn = client.Get("/v1/blocks/deck-top/drawing.svg?from=1&to=2");
  ASSERT_TRUE(change_drawn);
  EXPECT_EQ(change_drawn->status, 200);
  EXPECT_NE(change_drawn->body.find("class=\"before\""), std::string::npos);
}

TEST(Routes, EveryReadingRouteAnswers) {
  Service service;
  auto client = service.client();
  const std::pair<const char*, const char*> routes[] = {
      {"/v1/health", "status"},
      {"/v1/knowledge", "signs"},
      {"/v1/knowledge/problems", "problems"},
      {"/v1/knowledge/signs", "signs"},
      {"/v1/knowledge/causes", "causes"},
      {"/v1/knowledge/zones", "zones"},
      {"/v1/knowledge/operations", "operations"},
      {"/v1/knowledge/entries/front-neckline-gapes", "entries"},
      {"/v1/schema/block", "$schema"},
      {"/v1/blocks", "blocks"},
      {"/v1/blocks/deck-top", "geometry"},
      {"/v1/blocks/deck-top/revisions", "revisions"},
      {"/v1/blocks/deck-top/revisions/1", "geometry"},
      {"/v1/blocks/deck-top/check", "proof"},
      {"/v1/blocks/deck-top/check?revision=1", "proof"},
  };
  for (const auto& [path, field] : routes) {
    const auto answer = client.Get(path);
    ASSERT_TRUE(answer) << path;
    EXPECT_EQ(answer->status, 200) << path << answer->body;
    EXPECT_TRUE(body_of(answer).contains(field)) << path << ": " << answer->body.substr(0, 200);
  }
  const auto drawing = client.Get("/v1/blocks/deck-top/drawing.svg");
  ASSERT_TRUE(drawing);
  EXPECT_EQ(drawing->get_header_value("Content-Type"), "image/svg+xml");
  const auto head = client.Head("/v1/blocks/deck-top");
  ASSERT_TRUE(head);
  EXPECT_EQ(head->status, 200);
  EXPECT_TRUE(head->body.empty());
}

TEST(Routes, DescribeDraftSaveAndRestore) {
  Service service;
  auto client = service.client();
  const auto described =
      client.Post("/v1/describe", R"({"words": "the bust is too tight"})", kJson);
  ASSERT_TRUE(described);
  EXPECT_EQ(described->status, 200) << described->body;
  EXPECT_FALSE(body_of(described)["findings"].empty()) << described->body;

  Json request = draft_request("woven-bodice", "purser-bodice");
  request["save"] = false;
  const auto drafted = client.Post("/v1/drafts", request.dump(), kJson);
  ASSERT_TRUE(drafted);
  ASSERT_EQ(drafted->status, 200) << drafted->body;
  const Json block = body_of(drafted)["block"];
  const auto saved = client.Post("/v1/blocks", block.dump(), kJson);
  ASSERT_TRUE(saved);
  ASSERT_EQ(saved->status, 201) << saved->body;
  EXPECT_EQ(saved->get_header_value("Location"), "/v1/blocks/purser-bodice/revisions/1");
  EXPECT_EQ(body_of(client.Get("/v1/blocks/purser-bodice"))["geometry"], block);
  expect_problem(client.Post("/v1/blocks", block.dump(), kJson), 409, "block-exists");

  const auto restored = client.Post("/v1/blocks/deck-top/restore",
                                    R"({"revision": 1, "reason": "once more"})", kJson);
  ASSERT_TRUE(restored);
  EXPECT_EQ(restored->status, 201) << restored->body;
  EXPECT_EQ(body_of(restored)["restores"], 1);
}

TEST(Routes, IfNoneMatchSavesTheBody) {
  Service service;
  auto client = service.client();
  const auto first = client.Get("/v1/blocks/deck-top");
  ASSERT_TRUE(first);
  const std::string etag = first->get_header_value("ETag");
  const auto second = client.Get("/v1/blocks/deck-top", {{"If-None-Match", "\"x\", " + etag}});
  ASSERT_TRUE(second);
  EXPECT_EQ(second->status, 304);
  EXPECT_TRUE(second->body.empty());
  const auto third = client.Get("/v1/blocks/deck-top", {{"If-None-Match", "\"x\""}});
  EXPECT_EQ(third->status, 200);
}

}  // namespace
}  // namespace pinwright::api
