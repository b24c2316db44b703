// A folder laid over the knowledge of a running service, and loaded anew while it answers.

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <fstream>

#include "knowledge/load.h"
#include "tests/api/http/service.h"

namespace pinwright::api {
namespace {

const char* const kOwn = R"(problems:
  - {id: hem-flares-at-sea, name: Hem flares on deck, sign: hem-flares-at-sea,
     causes: [hem-stretched-on-deck, hem-cut-on-a-roll]}
signs:
  - id: hem-flares-at-sea
    name: Hem flares out in the wind
    zone: hem
    ask: Does the hem flare out on deck?
    phrases: [<hem> flutters in wind]
    sources: [from memory]
causes:
  - id: hem-stretched-on-deck
    name: Hem pulled long on a moving deck
    kind: sewing
    what: The edge was pulled while it was stitched on a moving deck.
    prior: 0.1
    ground: judged from memory
    makes: [{sign: hem-flares-at-sea, strength: 0.8}]
    check: Measure the edge against the pattern.
    remedies:
      - id: steam-the-hem-back
        name: Steam the deck hem back
        steps: [{operation: sew, text: Steam the hem back.}]
        sources: [from memory]
    sources: [from memory]
  - id: hem-cut-on-a-roll
    name: Hem cut while the ferry rolled
    kind: block
    what: The line was not trued.
    prior: 0.05
    ground: judged from memory
    makes: [{sign: hem-flares-at-sea, strength: 0.5}]
    check: Lay the pieces on each other.
    remedies:
      - id: cut-in-harbour
        name: True the hem in harbour
        steps: [{operation: sew, text: True the hem line.}]
        sources: [from memory]
    sources: [from memory]
)";

/// A service with a folder of its own over the shipped knowledge.
class Overlaid : public ::testing::Test {
 protected:
  Overlaid() : folder_(scratch_.file("own")) {
    std::filesystem::create_directory(folder_);
    write(kOwn);
    auto loaded = knowledge::load({PINWRIGHT_SOURCE_DIR "/knowledge/data", folder_});
    EXPECT_TRUE(loaded.ok()) << (loaded ? ""
                                        : loaded.problems()[0].place + loaded.problems()[0].what);
    if (!loaded) return;
    desk_ = std::make_unique<Desk>(std::move(loaded).value(), open_store(scratch_.file("s.db")));
    EXPECT_TRUE(desk_->draft(draft_request()).ok());
    ServerOptions options;
    options.port = 0;
    server_ = Server::bind(*desk_, options).value();
    thread_ = std::thread([this] { server_->run(); });
  }
  ~Overlaid() override {
    if (server_ == nullptr) return;
    server_->stop();
    thread_.join();
  }
  void write(const std::string& text) const {
    std::ofstream(folder_ + "/own.yaml", std::ios::binary) << text;
  }
  httplib::Client client() const {
    httplib::Client made("127.0.0.1", server_->port());
    made.set_tcp_nodelay(true);
    return made;
  }
  httplib::Result reload() const {
    return client().Post("/v1/knowledge/reload", "{}", "application/json");
  }
  /// How many findings the words give by a phrase; what is only supposed does not count.
  std::size_t understood() const {
    const Json findings =
        body_of(client().Post("/v1/describe", R"({"words": "the hem flutters in the wind"})",
                              "application/json"))["findings"];
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(), [](const Json& finding) {
          return finding["sign"] == "hem-flares-at-sea" && finding["sure"].get<double>() == 1.0;
        }));
  }

  Scratch scratch_;
  std::string folder_;
  std::unique_ptr<Desk> desk_;
  std::unique_ptr<Server> server_;
  std::thread thread_;
};

TEST_F(Overlaid, TellsWhichFolderAddedWhat) {
  const Json layers = body_of(client().Get("/v1/knowledge"))["layers"];
  ASSERT_EQ(layers.size(), 2U);
  EXPECT_FALSE(layers[0].contains("entries"));
  EXPECT_EQ(layers[1]["folder"], folder_);
  EXPECT_EQ(layers[1]["entries"]["signs"], Json({"hem-flares-at-sea"}));
  EXPECT_EQ(layers[1]["counts"]["causes"], 2);
  EXPECT_EQ(layers[1]["replaces"], Json::array());
  EXPECT_EQ(body_of(client().Get("/v1/knowledge/layers"))["layers"], layers);
  const Json entry = body_of(client().Get("/v1/knowledge/entries/hem-cut-on-a-roll"));
  EXPECT_EQ(entry["entries"][0]["from"], folder_ + "/own.yaml:26");
}

TEST_F(Overlaid, ReasonsWithIt) {
  const Json advice =
      body_of(client().Post("/v1/blocks/deck-top/advice",
                            R"({"words": "the hem flutters in the wind"})", "application/json"));
  ASSERT_FALSE(advice["causes"].empty()) << advice.dump();
  EXPECT_EQ(advice["causes"][0]["id"], "hem-stretched-on-deck");
}

TEST_F(Overlaid, ReloadsWhatChangedAndTellsWhatIsReplaced) {
  std::string text = kOwn;
  const std::string was = "phrases: [<hem> flutters in wind]";
  text.replace(text.find(was), was.size(), "phrases: [<hem> streams like a flag]");
  text += R"(zones:
  - {id: hem, name: lower edge}
)";
  EXPECT_EQ(understood(), 1U);
  write(text);
  EXPECT_EQ(understood(), 1U) << "not before it is asked for";
  const auto answer = reload();
  ASSERT_TRUE(answer);
  ASSERT_EQ(answer->status, 200) << answer->body;
  const Json told = body_of(answer);
  EXPECT_EQ(told["reloaded"], true);
  ASSERT_EQ(told["layers"][1]["replaces"].size(), 1U);
  EXPECT_EQ(told["layers"][1]["replaces"][0]["entry"], "zone");
  EXPECT_EQ(told["layers"][1]["replaces"][0]["id"], "hem");
  EXPECT_EQ(understood(), 0U);
}

TEST_F(Overlaid, KeepsWhatItKnowsWhenTheFolderIsUnsound) {
  std::string text = kOwn;
  text.replace(text.find("zone: hem"), 9, "zone: hemm");
  write(text);
  const auto answer = reload();
  expect_problem(answer, 422, "knowledge-kept");
  const Json details = body_of(answer);
  EXPECT_EQ(details["problems"][1]["code"], "zone-unknown");
  EXPECT_EQ(details["problems"][1]["place"], folder_ + "/own.yaml:7");
  EXPECT_EQ(understood(), 1U);
  std::filesystem::remove_all(folder_);
  expect_problem(reload(), 422, "knowledge-kept");
  EXPECT_EQ(understood(), 1U);
}

TEST_F(Overlaid, ReloadingTakesNothing) {
  expect_problem(client().Post("/v1/knowledge/reload", R"({"folder": "/"})", "application/json"),
                 422, "field-unknown");
  expect_problem(client().Post("/v1/knowledge/reload", "", "text/plain"), 415, "media-type");
}

TEST_F(Overlaid, RequestsUnderWayAreNotDisturbedRace) {
  std::atomic<bool> done = false;
  std::thread reloading([&] {
    for (int i = 0; i < 4; ++i) EXPECT_EQ(reload()->status, 200);
    done = true;
  });
  std::vector<std::thread> asking;
  for (int i = 0; i < 3; ++i)
    asking.emplace_back([&] {
      auto mine = client();
      while (!done) {
        const auto answer =
            mine.Post("/v1/blocks/deck-top/advice", R"({"words": "the hem flutters in the wind"})",
                      "application/json");
        ASSERT_TRUE(answer);
        EXPECT_EQ(answer->status, 200);
        EXPECT_EQ(body_of(answer)["causes"][0]["id"], "hem-stretched-on-deck");
      }
    });
  reloading.join();
  for (auto& one : asking) one.join();
}

}  // namespace
}  // namespace pinwright::api
