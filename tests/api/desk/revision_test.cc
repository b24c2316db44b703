// What is kept, what is refused, and that a refusal changes nothing.

#include "tests/api/desk/room.h"

namespace pinwright::api {
namespace {

class Revisions : public testing::Test {
 protected:
  void SetUp() override {
    desk_ = open_desk(scratch_.file("store.db"));
    const Outcome drafted = desk_->draft(draft_request());
    ASSERT_TRUE(drafted.ok()) << told(drafted);
  }
  Json everything() { return desk_->revisions("deck-top").reply().body; }
  Scratch scratch_;
  std::unique_ptr<Desk> desk_;
};

TEST_F(Revisions, AStaleBaseIsRefusedWithTheCurrentRevisionAndNothingChanges) {
  ASSERT_TRUE(desk_->apply("deck-top", {1, ""}, with_reason(longer_body())).ok());
  const Json before = everything();
  const Outcome stale = desk_->apply("deck-top", {1, ""}, with_reason(longer_body(5)));
  ASSERT_FALSE(stale.ok());
  EXPECT_EQ(stale.refusal().fault, Fault::stale);
  EXPECT_TRUE(tells(stale, "revision-stale", "block deck-top"));
  EXPECT_EQ(stale.refusal().current["revision"], 2);
  EXPECT_EQ(stale.refusal().current["etag"], stale.refusal().etag);
  EXPECT_EQ(everything(), before);
  EXPECT_EQ(http_status(stale.refusal().fault), 412);
  EXPECT_EQ(exit_status(stale.refusal().fault), 3);
}

TEST_F(Revisions, ABaseAndAReasonAreNeeded) {
  const Json before = everything();
  EXPECT_EQ(desk_->apply("deck-top", {}, with_reason(longer_body())).refusal().fault,
            Fault::base_missing);
  EXPECT_TRUE(tells(desk_->apply("deck-top", {1, ""}, longer_body()), "field-missing", "/reason"));
  EXPECT_TRUE(tells(desk_->apply("deck-top", {1, ""}, with_reason(longer_body(), "  ")),
                    "field-missing", "/reason"));
  EXPECT_EQ(everything(), before);
}

TEST_F(Revisions, ARepeatedApplyIsAnsweredAsBefore) {
  const Json request = with_reason(longer_body());
  const Outcome first = desk_->apply("deck-top", {1, ""}, request, "key-1");
  ASSERT_TRUE(first.ok()) << told(first);
  const Outcome again = desk_->apply("deck-top", {1, ""}, request, "key-1");
  ASSERT_TRUE(again.ok()) << told(again);
  EXPECT_EQ(again.reply().body, first.reply().body);
  EXPECT_EQ(again.reply().etag, first.reply().etag);
  EXPECT_EQ(everything()["revisions"].size(), 2U);
  const Outcome other = desk_->apply("deck-top", {2, ""}, with_reason(longer_body(7)), "key-1");
  EXPECT_TRUE(tells(other, "request-key-reused", "idempotency key key-1"));
  EXPECT_EQ(everything()["revisions"].size(), 2U);
}

TEST_F(Revisions, StepsThatMoveNothingAreNotKept) {
  const Json sew = {{"steps", {{{"operation", "sew"}}}}};
  EXPECT_TRUE(
      tells(desk_->apply("deck-top", {1, ""}, with_reason(sew)), "nothing-changed", "/steps"));
  EXPECT_EQ(everything()["revisions"].size(), 1U);
}

TEST_F(Revisions, ABlockThatWouldNotSewTogetherIsNotSaved) {
  Json block = desk_->revision("deck-top", 1).reply().body["geometry"];
  block["id"] = "odd-top";
  block["seams"][0]["sections"][0]["ease_mm"] =
      block["seams"][0]["sections"][0]["ease_mm"].get<double>() + 5.0;
  const Outcome refused = desk_->save(block);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.refusal().fault, Fault::proof_failed) << told(refused);
  EXPECT_GE(refused.refusal().problems.size(), 2U) << "the failed checks are told as well";
  EXPECT_EQ(exit_status(refused.refusal().fault), 1);
  EXPECT_EQ(http_status(refused.refusal().fault), 422);
  EXPECT_EQ(desk_->blocks().reply().body["blocks"].size(), 1U);
}

TEST_F(Revisions, ABlockIsSavedReadBackAndNotSavedTwice) {
  Json block = desk_->revision("deck-top", 1).reply().body["geometry"];
  block["id"] = "deck-top-2";
  const Outcome saved =
      desk_->save({{"block", block}, {"author", "fitter 2"}, {"reason", "for the second ferry"}});
  ASSERT_TRUE(saved.ok()) << told(saved);
  EXPECT_EQ(desk_->revision("deck-top-2", 0).reply().body["geometry"], block);
  EXPECT_EQ(desk_->revision("deck-top-2", 0).reply().body["author"], "fitter 2");
  const Outcome twice = desk_->save(block);
  EXPECT_EQ(twice.refusal().fault, Fault::exists);
  EXPECT_EQ(twice.refusal().current["revision"], 1);
}

TEST_F(Revisions, RestoringGivesANewRevisionWithTheOldGeometry) {
  const Json first = desk_->revision("deck-top", 1).reply().body["geometry"];
  ASSERT_TRUE(desk_->apply("deck-top", {1, ""}, with_reason(longer_body())).ok());
  const Outcome restored =
      desk_->restore("deck-top", {}, {{"revision", 1}, {"reason", "it was the wrong wearer"}});
  ASSERT_TRUE(restored.ok()) << told(restored);
  EXPECT_EQ(restored.reply().body["revision"], 3);
  EXPECT_EQ(restored.reply().body["restores"], 1);
  EXPECT_EQ(desk_->revision("deck-top", 0).reply().body["geometry"], first);
  EXPECT_TRUE(tells(desk_->restore("deck-top", {}, {{"revision", 1.5}, {"reason", "x"}}),
                    "type-wrong", "/revision"));
  EXPECT_TRUE(tells(desk_->restore("deck-top", {}, {{"revision", 1}}), "field-missing", "/reason"));
  EXPECT_EQ(desk_->restore("deck-top", {1, ""}, {{"revision", 1}, {"reason", "x"}}).refusal().fault,
            Fault::stale);
  EXPECT_EQ(desk_->restore("deck-top", {}, {{"revision", 9}, {"reason", "x"}}).refusal().fault,
            Fault::not_found);
  EXPECT_EQ(everything()["revisions"].size(), 3U);
}

TEST(WithoutStore, WhatNeedsOneSaysSo) {
  Desk desk(shipped_knowledge(), nullptr);
  EXPECT_EQ(desk.blocks().refusal().problems.front().code, "store-missing");
  EXPECT_EQ(desk.draft(draft_request()).refusal().problems.front().code, "store-missing");
  Json request = draft_request();
  request["save"] = false;
  const Outcome drafted = desk.draft(request);
  ASSERT_TRUE(drafted.ok()) << told(drafted);
  EXPECT_TRUE(drafted.reply().pass);
  const auto subject = Desk::subject_from(drafted.reply().body["block"]);
  ASSERT_TRUE(subject.ok());
  EXPECT_TRUE(desk.preview(*subject, longer_body()).ok());
}

}  // namespace
}  // namespace pinwright::api
