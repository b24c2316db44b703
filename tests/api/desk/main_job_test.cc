// From words to a saved revision through the desk.

#include "tests/api/desk/room.h"

namespace pinwright::api {
namespace {

constexpr const char* kGapes = "The front neckline gapes, I pinned out 2 cm in all.";

class MainJob : public testing::Test {
 protected:
  void SetUp() override {
    desk_ = open_desk(scratch_.file("store.db"));
    const Outcome drafted = desk_->draft(draft_request());
    ASSERT_TRUE(drafted.ok()) << told(drafted);
  }
  Subject top() {
    auto subject = desk_->subject("deck-top");
    EXPECT_TRUE(subject.ok());
    return *subject;
  }
  std::size_t revisions() { return desk_->revisions("deck-top").reply().body["revisions"].size(); }
  /// The first proposal that moves a line.
  static std::string on_pattern(const Json& advice) {
    for (const Json& proposal : advice["proposals"]) {
      if (proposal["on_pattern"].get<bool>()) return proposal["id"].get<std::string>();
    }
    return "";
  }
  Scratch scratch_;
  std::unique_ptr<Desk> desk_;
};

TEST_F(MainJob, WordsBecomeAdviceAPreviewAndARevision) {
  const Outcome advised = desk_->advise(top(), {{"words", kGapes}});
  ASSERT_TRUE(advised.ok()) << told(advised);
  const Json& advice = advised.reply().body;
  EXPECT_EQ(advice["block"], "deck-top");
  EXPECT_EQ(advice["revision"], 1);
  ASSERT_FALSE(advice["findings"].empty());
  EXPECT_EQ(advice["findings"][0]["sign"], "front-neckline-gapes");
  EXPECT_EQ(advice["findings"][0]["amount_mm"], 20.0);
  EXPECT_EQ(advice["findings"][0]["of"], "whole");
  ASSERT_GE(advice["causes"].size(), 2U);
  EXPECT_GE(advice["causes"][0]["probability"].get<double>(),
            advice["causes"][1]["probability"].get<double>());
  const std::string proposal = on_pattern(advice);
  ASSERT_FALSE(proposal.empty());

  const Json change = {{"proposal", proposal}, {"words", kGapes}, {"geometry", true}};
  const Outcome previewed = desk_->preview(top(), change);
  ASSERT_TRUE(previewed.ok()) << told(previewed);
  const Json& preview = previewed.reply().body;
  EXPECT_TRUE(previewed.reply().pass);
  EXPECT_EQ(preview["base_revision"], 1);
  EXPECT_FALSE(preview["notes"].empty());
  EXPECT_TRUE(preview["proof"]["pass"].get<bool>());
  EXPECT_EQ(revisions(), 1U) << "a preview saves nothing";

  Json apply = change;
  apply["reason"] = "gapes by 2 cm on deckhand 3";
  const Outcome applied = desk_->apply("deck-top", {0, preview["etag"].get<std::string>()}, apply);
  ASSERT_TRUE(applied.ok()) << told(applied);
  EXPECT_EQ(applied.reply().body["revision"], 2);
  EXPECT_EQ(applied.reply().location, "/blocks/deck-top/revisions/2");
  EXPECT_EQ(revisions(), 2U);

  const Json kept = desk_->revision("deck-top", 2).reply().body;
  EXPECT_EQ(kept["geometry"], preview["geometry"]) << "what was previewed is what was saved";
  EXPECT_EQ(kept["tryon"]["words"], kGapes);
  EXPECT_EQ(kept["tryon"]["proposal"], proposal);
  EXPECT_EQ(kept["steps"], preview["steps"]);
  EXPECT_EQ(kept["parent"], 1);
  const Outcome checked = desk_->check(top());
  EXPECT_TRUE(checked.reply().pass);
  EXPECT_EQ(checked.reply().body["revision"], 2);
}

TEST_F(MainJob, AdviceHasTheFieldsThatArePromised) {
  const Outcome advised =
      desk_->advise(top(), {{"words", std::string(kGapes) + " The zipper sulks."},
                            {"answers", {{"neck-edge-longer-than-pattern", "absent"}}}});
  ASSERT_TRUE(advised.ok()) << told(advised);
  const Json& advice = advised.reply().body;
  const auto has = [](const Json& object, std::initializer_list<const char*> fields) {
    for (const char* field : fields) {
      EXPECT_TRUE(object.contains(field)) << field << " in " << object.dump();
    }
  };
  has(advice, {"block", "revision", "etag", "findings", "not_understood", "verdict", "settled",
               "causes", "question", "proposals", "cautions"});
  for (const Json& finding : advice["findings"]) {
    has(finding, {"sign", "zone", "side", "amount_mm", "of", "taken", "takes_up_mm", "state",
                  "posture", "words"});
  }
  ASSERT_EQ(advice["findings"].size(), 2U);
  EXPECT_EQ(advice["findings"][1]["state"], "absent");
  EXPECT_TRUE(advice["findings"][1]["amount_mm"].is_null());
  ASSERT_FALSE(advice["not_understood"].empty());
  has(advice["not_understood"][0], {"words", "at", "nearest"});
  for (const Json& cause : advice["causes"]) {
    has(cause, {"id", "name", "kind", "probability", "for", "against", "what", "check", "sources"});
    for (const char* side : {"for", "against"}) {
      for (const Json& reason : cause[side]) has(reason, {"sign", "text", "log_odds"});
    }
  }
  if (!advice["question"].is_null()) {
    has(advice["question"], {"sign", "asks", "gain_bits", "cost"});
  }
  ASSERT_FALSE(advice["proposals"].empty());
  for (const Json& proposal : advice["proposals"]) {
    has(proposal, {"id", "cause", "name", "on_pattern", "suits", "steps", "follow", "sources"});
    for (const Json& step : proposal["steps"]) {
      has(step, {"operation", "amount_mm", "of", "assumed", "worth_making", "limit", "text"});
    }
  }
}

TEST_F(MainJob, FindingsAndStepsOfAnAnswerMayBeSentBackAsTheyAre) {
  const Json advice = desk_->advise(top(), {{"words", kGapes}}).reply().body;
  const Outcome again = desk_->advise(top(), {{"findings", advice["findings"]}});
  ASSERT_TRUE(again.ok()) << told(again);
  EXPECT_EQ(again.reply().body["causes"], advice["causes"]);
  std::size_t previewed = 0;
  for (const Json& proposal : advice["proposals"]) {
    if (!proposal["on_pattern"].get<bool>()) continue;
    const Outcome by_steps = desk_->preview(top(), {{"steps", proposal["steps"]}});
    const Outcome by_id = desk_->preview(top(), {{"proposal", proposal["id"]}, {"words", kGapes}});
    ASSERT_EQ(told(by_steps), told(by_id)) << proposal["id"];
    if (!by_id.ok()) continue;  // this block cannot bear it, and both ways say so alike
    ++previewed;
    EXPECT_EQ(by_steps.reply().body["proof"], by_id.reply().body["proof"]);
  }
  EXPECT_GE(previewed, 2U);
}

TEST_F(MainJob, TheSameRequestGivesTheSameAnswerToTheLastByte) {
  const Json request = {{"words", kGapes}};
  EXPECT_EQ(desk_->advise(top(), request).reply().body.dump(),
            desk_->advise(top(), request).reply().body.dump());
  EXPECT_EQ(desk_->preview(top(), longer_body()).reply().body.dump(),
            desk_->preview(top(), longer_body()).reply().body.dump());
}

TEST_F(MainJob, AnAmountForAProposalSaysWhatItCounts) {
  const Json advice = desk_->advise(top(), {{"words", kGapes}}).reply().body;
  Json change = {{"proposal", "close-neck-into-bust"}, {"words", kGapes}};
  bool divides = false;
  for (const Json& proposal : advice["proposals"]) {
    if (!proposal["on_pattern"].get<bool>() || proposal["steps"][0]["operation"] != "close-wedge") {
      continue;
    }
    change["proposal"] = proposal["id"];
    divides = true;
    break;
  }
  ASSERT_TRUE(divides) << "a remedy that closes a wedge is known for a gaping neckline";
  change["amounts"] = {"12 mm"};
  EXPECT_TRUE(tells(desk_->preview(top(), change), "of-missing", "/amounts/0"));
  change["amounts"] = {12};
  EXPECT_TRUE(tells(desk_->preview(top(), change), "amount-without-unit", "/amounts/0"));
  change["amounts"] = {"12 mm whole"};
  const Outcome whole = desk_->preview(top(), change);
  ASSERT_TRUE(whole.ok()) << told(whole);
  change["amounts"] = {"6 mm half"};
  const Outcome half = desk_->preview(top(), change);
  ASSERT_TRUE(half.ok()) << told(half);
  EXPECT_EQ(whole.reply().body["proof"]["measures"], half.reply().body["proof"]["measures"]);
  change["amounts"] = {"400 mm half"};
  EXPECT_TRUE(tells(desk_->preview(top(), change), "amount-range", "/amounts/0/amount_mm") ||
              tells(desk_->preview(top(), change), "amount-range", "/amounts/0"))
      << told(desk_->preview(top(), change));
}

TEST_F(MainJob, DrawingsOfABlockAChangeAndAPreview) {
  ASSERT_TRUE(desk_->apply("deck-top", {1, ""}, with_reason(longer_body())).ok());
  const auto plain = desk_->draw(top());
  ASSERT_TRUE(plain.ok());
  EXPECT_NE(plain->find("<svg"), std::string::npos);
  const auto change = desk_->draw_change(*desk_->subject("deck-top", 1), top());
  ASSERT_TRUE(change.ok());
  EXPECT_NE(change->find("class=\"before\""), std::string::npos);
  const auto preview = desk_->draw_preview(top(), longer_body());
  ASSERT_TRUE(preview.ok());
  EXPECT_NE(*preview, *change);
}

}  // namespace
}  // namespace pinwright::api
