// Several complaints sized together, as every other program sees it.

#include "tests/api/desk/room.h"
#include "tests/api/two_complaints.h"

namespace pinwright::api {
namespace {

class Together : public testing::Test {
 protected:
  void SetUp() override {
    desk_ = open_desk(scratch_.file("store.db"));
    const Outcome drafted = desk_->draft(draft_request());
    ASSERT_TRUE(drafted.ok()) << told(drafted);
  }
  Subject top() { return *desk_->subject("deck-top"); }
  Scratch scratch_;
  std::unique_ptr<Desk> desk_;
};

void expect_keys(const Json& object, const std::vector<std::string>& keys) {
  for (const std::string& key : keys) EXPECT_TRUE(object.contains(key)) << key << "\n" << object;
}

TEST_F(Together, AdviceShowsTheSet) {
  const Outcome outcome = desk_->advise(top(), {{"words", kTwo}, {"together", true}});
  ASSERT_TRUE(outcome.ok()) << told(outcome);
  const Json set = outcome.reply().body["together"];
  expect_keys(set, {"proposals", "met", "steps", "kept", "sewn", "left_out", "targets", "held",
                    "conflicts"});
  EXPECT_TRUE(set["met"].get<bool>());
  ASSERT_EQ(set["steps"].size(), 2U);
  for (const Json& step : set["steps"]) {
    expect_keys(step, {"operation", "amount_mm", "of", "side", "proposals", "asked_by", "alone_mm",
                       "assumed", "least_mm", "most_mm", "at_least", "at_most", "bound_reason",
                       "used", "text"});
    EXPECT_EQ(step["proposals"].size(), 1U);
    EXPECT_LE(step["least_mm"].get<double>(), step["amount_mm"].get<double>());
    EXPECT_GE(step["most_mm"].get<double>(), step["amount_mm"].get<double>());
  }
  EXPECT_EQ(set["steps"][0]["asked_by"], Json::array({"front neckline gapes 1 cm"}));
  bool slope = false;
  for (const Json& target : set["targets"]) {
    const bool angle = target["kind"] == "angle";
    const std::string unit = angle ? "_deg" : "_mm";
    expect_keys(target, {"measure", "name", "before" + unit, "wanted" + unit, "after" + unit,
                         "left_over" + unit, "met", "asked_by", "shares"});
    EXPECT_EQ(target.contains("of"), target["kind"] == "girth");
    double sum = 0.0;
    for (const Json& share : target["shares"]) {
      sum += share["change" + unit].get<double>();
      EXPECT_EQ(share["operation"], set["steps"][share["step"].get<std::size_t>()]["operation"]);
    }
    EXPECT_NEAR(sum, target["after" + unit].get<double>() - target["before" + unit].get<double>(),
                0.2);
    if (target["measure"] != "shoulder-slope") continue;
    slope = true;
    EXPECT_EQ(target["shares"].size(), 2U) << "the wedge turns the shoulder too";
  }
  EXPECT_TRUE(slope);
  EXPECT_FALSE(desk_->advise(top(), {{"words", kTwo}}).reply().body.contains("together"));
}

TEST_F(Together, PreviewApplyAndHistoryHoldTheSameSet) {
  Json change = {{"words", kTwo}, {"together", true}, {"geometry", true}};
  const Outcome preview = desk_->preview(top(), change);
  ASSERT_TRUE(preview.ok()) << told(preview);
  EXPECT_TRUE(preview.reply().pass);
  const Json seen = preview.reply().body;
  EXPECT_EQ(seen["together"],
            desk_->advise(top(), {{"words", kTwo}, {"together", true}}).reply().body["together"]);
  EXPECT_EQ(seen["steps"].size(), 2U);
  EXPECT_EQ(desk_->subject("deck-top")->revision, 1);

  change["reason"] = "two things at the try-on";
  const Outcome applied = desk_->apply("deck-top", {1, ""}, change);
  ASSERT_TRUE(applied.ok()) << told(applied);
  EXPECT_TRUE(applied.reply().created);
  const Json kept = desk_->revision("deck-top", 2).reply().body;
  EXPECT_EQ(kept["geometry"], seen["geometry"]);
  EXPECT_EQ(kept["steps"], seen["steps"]);
  EXPECT_EQ(kept["tryon"]["together"], seen["together"]) << "why each amount is what it is";
  EXPECT_EQ(kept["reason"], "two things at the try-on");
  // The wishes are met on the saved block as its own proof measures it.
  for (const Json& target : seen["together"]["targets"]) {
    for (const Json& measure : kept["proof"]["measures"]) {
      if (measure["id"] != target["measure"]) continue;
      const std::string unit = target["kind"] == "angle" ? "_deg" : "_mm";
      EXPECT_NEAR(measure["after" + unit].get<double>(), target["wanted" + unit].get<double>(),
                  1.0);
    }
  }
}

TEST_F(Together, TheStepsMayBeSentBackAsTheyAre) {
  const Json seen = desk_->preview(top(), {{"words", kTwo}, {"together", true}}).reply().body;
  const Outcome again = desk_->preview(top(), {{"steps", seen["together"]["steps"]}});
  ASSERT_TRUE(again.ok()) << told(again);
  EXPECT_EQ(again.reply().body["proof"], seen["proof"]);
}

TEST_F(Together, NamedProposalsOnly) {
  const Json request = {{"words", kTwo},
                        {"together", {{"proposals", Json::array({"lower-shoulder-point"})}}}};
  const Outcome preview = desk_->preview(top(), request);
  ASSERT_TRUE(preview.ok()) << told(preview);
  EXPECT_EQ(preview.reply().body["steps"].size(), 1U);
  EXPECT_EQ(preview.reply().body["steps"][0]["operation"], "swing-shoulder");
}

TEST_F(Together, BodyAndEaseOfTheWearer) {
  Json body = deckhand_3();
  body["bust-girth"] = 980;
  const Json request = {{"words", kTwo},
                        {"wearer", {{"id", "deckhand-4"}, {"body", body}}},
                        {"together", {{"body", true}}}};
  const Outcome preview = desk_->preview(top(), request);
  ASSERT_TRUE(preview.ok()) << told(preview);
  bool bust = false;
  for (const Json& target : preview.reply().body["together"]["targets"]) {
    if (target["measure"] != "bust-girth") continue;
    bust = true;
    EXPECT_EQ(target["asked_by"], "body and ease");
    EXPECT_TRUE(target["met"].get<bool>());
  }
  EXPECT_TRUE(bust);
}

TEST_F(Together, AConflictIsToldAndNothingIsApplied) {
  const Json told_of = {{"words", kTooMuch}, {"together", true}};
  const Outcome advised = desk_->advise(top(), told_of);
  ASSERT_TRUE(advised.ok()) << told(advised);
  const Json set = advised.reply().body["together"];
  EXPECT_FALSE(set["met"].get<bool>());
  ASSERT_EQ(set["conflicts"].size(), 1U);
  bool limit = false;
  for (const Json& member : set["conflicts"][0]["members"]) {
    if (member["kind"] != "limit") continue;
    limit = true;
    EXPECT_NE(member["says"].get<std::string>().find("head of 570 mm"), std::string::npos);
    EXPECT_FALSE(member["relax"].is_null());
  }
  EXPECT_TRUE(limit) << set["conflicts"];

  const Outcome preview = desk_->preview(top(), told_of);
  EXPECT_TRUE(tells(preview, "together-conflict", "/together")) << told(preview);
  EXPECT_NE(told(preview).find("head of 570 mm"), std::string::npos);
  Json change = told_of;
  change["reason"] = "all of it";
  const Outcome applied = desk_->apply("deck-top", {1, ""}, change);
  EXPECT_TRUE(tells(applied, "together-conflict", "/together")) << told(applied);
  EXPECT_EQ(desk_->subject("deck-top")->revision, 1);
  const Result<std::string> drawn = desk_->draw_preview(top(), told_of);
  EXPECT_FALSE(drawn.ok());
}

struct BadTogether {
  const char* name;
  const char* request;
  const char* code;
  const char* place;
};

class TogetherRefused : public testing::TestWithParam<BadTogether> {};

TEST_P(TogetherRefused, InPreviewAndInApply) {
  const Scratch scratch;
  const std::unique_ptr<Desk> desk = open_desk(scratch.file("store.db"));
  const Outcome drafted = desk->draft(draft_request());
  ASSERT_TRUE(drafted.ok()) << told(drafted);
  Json request = Json::parse(GetParam().request);
  const Outcome preview = desk->preview(*desk->subject("deck-top"), request);
  EXPECT_TRUE(tells(preview, GetParam().code, GetParam().place)) << told(preview);
  request["reason"] = "why not";
  const Outcome applied = desk->apply("deck-top", {1, ""}, request);
  EXPECT_TRUE(tells(applied, GetParam().code, GetParam().place)) << told(applied);
  EXPECT_EQ(desk->subject("deck-top")->revision, 1);
}

INSTANTIATE_TEST_SUITE_P(
    Requests, TogetherRefused,
    testing::Values(
        BadTogether{"NothingTold", R"({"together": true})", "nothing-told", "/words"},
        BadTogether{"False", R"({"together": false, "words": "too long"})", "change-missing",
                    "/steps"},
        BadTogether{"NoObject", R"({"together": "all", "words": "the top is too long"})",
                    "type-wrong", "/together"},
        BadTogether{"UnknownField",
                    R"({"together": {"proposal": "x"}, "words": "the top is too long"})",
                    "field-unknown", "/together/proposal"},
        BadTogether{"BesidesSteps",
                    R"({"together": true, "words": "the top is too long",
                        "steps": [{"operation": "sew"}]})",
                    "change-missing", "/steps"},
        BadTogether{"BesidesAProposal",
                    R"({"together": true, "words": "the top is too long", "proposal": "x"})",
                    "change-missing", "/proposal"},
        BadTogether{"WithAmounts",
                    R"({"together": true, "words": "the top is too long", "amounts": ["2 cm"]})",
                    "amounts-without-proposal", "/amounts"},
        BadTogether{"UnknownProposal",
                    R"({"together": {"proposals": ["shorten-body", "wish"]},
                        "words": "the top is 3 cm too long"})",
                    "proposal-unknown", "/together/proposals/1"},
        BadTogether{"Twice",
                    R"({"together": {"proposals": ["shorten-body", "shorten-body"]},
                        "words": "the top is 3 cm too long"})",
                    "proposal-twice", "/together/proposals/1"},
        BadTogether{"NotOnThePattern",
                    R"({"together": {"proposals": ["hang-and-stay"]},
                        "words": "the top is 3 cm too long"})",
                    "nothing-to-size", "/together"},
        BadTogether{"TooMany",
                    R"({"together": {"proposals": ["a","b","c","d","e","f","g","h","i","j","k",
                        "l","m","n","o","p","q"]}, "words": "the top is 3 cm too long"})",
                    "text-size", "/together/proposals"},
        BadTogether{"NothingFound", R"({"together": true, "words": "the bust is fine"})",
                    "none-chosen", "/together"}),
    [](const testing::TestParamInfo<BadTogether>& bad) { return std::string(bad.param.name); });

}  // namespace
}  // namespace pinwright::api
