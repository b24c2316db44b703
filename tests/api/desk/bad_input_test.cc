// Each bad request is answered with the place and a mend, and leaves the store as it was.

#include "tests/api/desk/room.h"

namespace pinwright::api {
namespace {

struct Bad {
  const char* name;
  const char* request;
  const char* code;
  const char* place;
};

void PrintTo(const Bad& bad, std::ostream* out) { *out << bad.name; }

class DeskWithTop {
 public:
  DeskWithTop() : desk_(open_desk(scratch_.file("store.db"))) {
    const Outcome drafted = desk_->draft(draft_request());
    EXPECT_TRUE(drafted.ok()) << told(drafted);
    before_ = desk_->revisions("deck-top").reply().body;
  }
  ~DeskWithTop() {
    EXPECT_EQ(desk_->revisions("deck-top").reply().body, before_);
    EXPECT_EQ(desk_->blocks().reply().body["blocks"].size(), 1U);
  }
  DeskWithTop(const DeskWithTop&) = delete;
  DeskWithTop& operator=(const DeskWithTop&) = delete;
  Desk& operator*() { return *desk_; }
  Subject top() { return *desk_->subject("deck-top"); }

 private:
  Scratch scratch_;
  std::unique_ptr<Desk> desk_;
  Json before_;
};

class BadAdvice : public testing::TestWithParam<Bad> {};

TEST_P(BadAdvice, IsRefused) {
  DeskWithTop room;
  const Outcome outcome = (*room).advise(room.top(), Json::parse(GetParam().request));
  EXPECT_TRUE(tells(outcome, GetParam().code, GetParam().place)) << told(outcome);
  EXPECT_EQ(exit_status(outcome.refusal().fault), 2);
}

INSTANTIATE_TEST_SUITE_P(
    Requests, BadAdvice,
    testing::Values(
        Bad{"Nothing", R"({})", "nothing-told", "/words"},
        Bad{"NoObject", R"([1])", "type-wrong", ""},
        Bad{"Typo", R"({"wrods": "gapes"})", "field-unknown", "/wrods"},
        Bad{"NumberForWords", R"({"words": 12})", "type-wrong", "/words"},
        Bad{"UnknownSign", R"({"findings": [{"sign": "front-neckline-gaps"}]})", "sign-unknown",
            "/findings/0/sign"},
        Bad{"UnknownZone", R"({"findings": [{"sign": "front-neckline-gapes", "zone": "knee"}]})",
            "zone-unknown", "/findings/0/zone"},
        Bad{"AbsurdAmount",
            R"({"findings": [{"sign": "front-neckline-gapes", "amount_mm": 400, "of": "whole"}]})",
            "amount-range", "/findings/0/amount_mm"},
        Bad{"NegativeAmount",
            R"({"findings": [{"sign": "front-neckline-gapes", "amount_mm": -20, "of": "whole"}]})",
            "amount-range", "/findings/0/amount_mm"},
        Bad{"NoUnit",
            R"({"findings": [{"sign": "front-neckline-gapes", "amount": 20, "of": "whole"}]})",
            "amount-without-unit", "/findings/0/amount"},
        Bad{"NoOf", R"({"findings": [{"sign": "front-neckline-gapes", "amount_mm": 20}]})",
            "of-missing", "/findings/0/of"},
        Bad{"UnknownAnswer", R"({"answers": {"neck-hovers": "present"}})", "sign-unknown",
            "/answers/neck-hovers"},
        Bad{"UnknownStyle", R"({"words": "the front neckline gapes", "style": ["sleevless"]})",
            "feature-unknown", "/style/0"},
        Bad{"UnknownAsked", R"({"words": "the front neckline gapes", "asked": ["neck-hovers"]})",
            "sign-unknown", "/asked/0"},
        Bad{"OddAnswer", R"({"answers": {"front-neckline-gapes": "maybe"}})", "value-unknown",
            "/answers/front-neckline-gapes"},
        Bad{"Contradiction",
            R"({"words": "the front neckline gapes", "answers": {"front-neckline-gapes": "absent"}})",
            "answer-contradicts", "/answers/front-neckline-gapes"},
        Bad{"UnknownFabric", R"({"words": "the front neckline gapes", "fabric": "cotton-jersy"})",
            "fabric-unknown", "/fabric"}),
    [](const testing::TestParamInfo<Bad>& bad) { return std::string(bad.param.name); });

class BadChange : public testing::TestWithParam<Bad> {};

TEST_P(BadChange, IsRefusedInPreviewAndInApply) {
  DeskWithTop room;
  const Json request = Json::parse(GetParam().request);
  const Outcome preview = (*room).preview(room.top(), request);
  EXPECT_TRUE(tells(preview, GetParam().code, GetParam().place)) << told(preview);
  const Outcome apply = (*room).apply("deck-top", {1, ""}, with_reason(request));
  EXPECT_TRUE(tells(apply, GetParam().code, GetParam().place)) << told(apply);
}

INSTANTIATE_TEST_SUITE_P(
    Requests, BadChange,
    testing::Values(
        Bad{"Neither", R"({})", "change-missing", "/steps"},
        Bad{"Both", R"({"steps": [{"operation": "sew"}], "proposal": "x"})", "change-missing",
            "/proposal"},
        Bad{"NoSteps", R"({"steps": []})", "change-missing", "/steps"},
        Bad{"StepsNoList", R"({"steps": 3})", "type-wrong", "/steps"},
        Bad{"UnknownOperation", R"({"steps": [{"operation": "close-wege"}]})", "operation-unknown",
            "/steps/0/operation"},
        Bad{"UnknownOption",
            R"({"steps": [{"operation": "lengthen", "amount_mm": 9, "piece": "body", "at": "x"}]})",
            "option-unknown", "/steps/0/at"},
        Bad{"SecondStepBad",
            R"({"steps": [{"operation": "lengthen", "piece": "body", "amount_mm": 20},
                          {"operation": "lengthen", "piece": "leg", "amount_mm": 20}]})",
            "option-value", "/steps/1/piece"},
        Bad{"HalfOrWhole", R"({"steps": [{"operation": "full-bust", "amount_mm": 12}]})",
            "of-missing", "/steps/0/of"},
        Bad{"NoUnit", R"({"steps": [{"operation": "lengthen", "piece": "body", "amount": "20"}]})",
            "amount-without-unit", "/steps/0/amount"},
        Bad{"UnknownProposal", R"({"proposal": "wish", "words": "the front neckline gapes"})",
            "proposal-unknown", "/proposal"},
        Bad{"ProposalForNothing", R"({"proposal": "wish"})", "nothing-told", "/words"},
        Bad{"AmountsForSteps", R"({"steps": [{"operation": "sew"}], "amounts": ["2 cm"]})",
            "amounts-without-proposal", "/amounts"}),
    [](const testing::TestParamInfo<Bad>& bad) { return std::string(bad.param.name); });

TEST(BadDraft, EverythingWrongIsToldAtOnce) {
  DeskWithTop room;
  const Json request = Json::parse(
      R"({"kind": "knit-top", "id": "Deck Top", "measurements": {"burst-girth": 960,
          "waist-girth": "82", "bust-girth": 96}, "fabric": "velvet", "ease": {"bust-girth": "x"}})");
  const Outcome outcome = (*room).draft(request);
  EXPECT_TRUE(tells(outcome, "id-malformed", "/id")) << told(outcome);
  EXPECT_TRUE(tells(outcome, "measurement-unknown", "/measurements/burst-girth")) << told(outcome);
  EXPECT_TRUE(tells(outcome, "amount-without-unit", "/measurements/waist-girth")) << told(outcome);
  EXPECT_TRUE(tells(outcome, "measurement-range", "/measurements/bust-girth")) << told(outcome);
  EXPECT_TRUE(tells(outcome, "fabric-unknown", "/fabric")) << told(outcome);
  EXPECT_TRUE(tells(outcome, "type-wrong", "/ease/bust-girth")) << told(outcome);
}

TEST(BadDraft, MissingMeasurementsAreNamed) {
  DeskWithTop room;
  Json request = draft_request("knit-top", "other-top");
  request["measurements"].erase("scye-depth");
  const Outcome outcome = (*room).draft(request);
  ASSERT_FALSE(outcome.ok());
  EXPECT_NE(told(outcome).find("scye-depth"), std::string::npos) << told(outcome);
  EXPECT_NE(told(outcome).find("/measurements"), std::string::npos) << told(outcome);
  request = draft_request("kilt", "kilt");
  EXPECT_EQ((*room).draft(request).refusal().problems.front().code, "draft-kind-unknown");
}

TEST(BadBlock, DamagedBlocksAreNotSaved) {
  DeskWithTop room;
  const Json good = (*room).revision("deck-top", 1).reply().body["geometry"];
  Json open = good;
  open["id"] = "open-top";
  open["pieces"][0]["edges"].erase(open["pieces"][0]["edges"].begin());
  EXPECT_FALSE((*room).save(open).ok());
  Json seamless = good;
  seamless["id"] = "seamless-top";
  seamless["seams"] = Json::array();
  const Outcome refused = (*room).save(seamless);
  EXPECT_NE(told(refused).find("seam-missing"), std::string::npos) << told(refused);
  EXPECT_FALSE((*room).save(Json::parse("[]")).ok());
  EXPECT_FALSE((*room).save(Json::parse(R"({"block": {}})")).ok());
}

TEST(Outcome, EveryProblemOfARefusalIsCarriedInTheDetails) {
  const Refusal refusal = refuse(Problems{{"sign-unknown", "/a", "What.", "Mend."},
                                          {"json-malformed", "line 1", "Broken.", "Repair."}});
  const Json details = problem_details(refusal, "/v1/describe");
  EXPECT_EQ(details["type"], "urn:pinwright:problem:malformed") << "the gravest names the kind";
  EXPECT_EQ(details["status"], 400);
  EXPECT_EQ(details["instance"], "/v1/describe");
  ASSERT_EQ(details["problems"].size(), 2U);
  EXPECT_EQ(details["problems"][1]["mend"], "Repair.");
}

}  // namespace
}  // namespace pinwright::api
