// pinwright serve as a process: prints where it listens, ends on SIGTERM and SIGINT.

#include <httplib.h>

#include <chrono>
#include <csignal>
#include <thread>

#include "tests/api/cli/program.h"

namespace pinwright::api {
namespace {

/// The port that a started service printed; 0 when it did not within 20 s.
int printed_port(const Program& pinwright) {
  for (int i = 0; i < 400; ++i) {
    const std::string out = slurp(pinwright.file("out"));
    const std::size_t at = out.find("127.0.0.1:");
    if (at != std::string::npos && out.find('\n', at) != std::string::npos) {
      return std::atoi(out.c_str() + at + 10);
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
  }
  return 0;
}

class Serve : public testing::TestWithParam<int> {};

TEST_P(Serve, AnswersWhatTheCommandsAnswerAndStopsOnASignal) {
  const Program pinwright;
  pinwright.save_top();
  const Ran advised =
      pinwright({"advise", "deck-top", "the front neckline gapes by 2 cm in all", "--json"});
  const pid_t child = pinwright.start({"serve", "--port", "0"});
  const int port = printed_port(pinwright);
  ASSERT_GT(port, 0) << slurp(pinwright.file("err"));
  httplib::Client client("127.0.0.1", port);
  client.set_keep_alive(true);
  client.set_tcp_nodelay(true);
  const auto answer =
      client.Post("/v1/blocks/deck-top/advice",
                  R"({"words": "the front neckline gapes by 2 cm in all"})", "application/json");
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 200);
  EXPECT_EQ(Json::parse(answer->body), advised.json()) << "one object by both ways";
  kill(child, GetParam());
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFEXITED(status));
  EXPECT_EQ(WEXITSTATUS(status), 0);
}

INSTANTIATE_TEST_SUITE_P(Signals, Serve, testing::Values(SIGTERM, SIGINT));

TEST(ServeKnowledge, SighupLoadsTheKnowledgeAnew) {
  const Program pinwright;
  const std::string own = pinwright.write("own.yaml", "zones:\n  - {id: cuff, name: cuff}\n");
  const pid_t child = pinwright.start({"--overlay", own, "serve", "--port", "0"});
  const int port = printed_port(pinwright);
  ASSERT_GT(port, 0) << slurp(pinwright.file("err"));
  httplib::Client client("127.0.0.1", port);
  const auto zones = [&client] { return client.Get("/v1/knowledge/zones")->body; };
  const auto wait_for = [&pinwright](const std::string& words) {
    for (int i = 0; i < 200 && slurp(pinwright.file("err")).find(words) == std::string::npos; ++i)
      std::this_thread::sleep_for(std::chrono::milliseconds(50));
    EXPECT_NE(slurp(pinwright.file("err")).find(words), std::string::npos);
  };
  EXPECT_NE(zones().find("\"cuff\""), std::string::npos);
  pinwright.write("own.yaml", "zones:\n  - {id: yoke, name: yoke}\n");
  kill(child, SIGHUP);
  wait_for("loaded anew");
  EXPECT_NE(zones().find("\"yoke\""), std::string::npos);
  pinwright.write("own.yaml", "zones:\n\t- no\n");
  kill(child, SIGHUP);
  wait_for("own.yaml:2");
  EXPECT_NE(zones().find("\"yoke\""), std::string::npos);
  kill(child, SIGTERM);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
}

TEST(ServeBad, AddressesTokensAndPorts) {
  const Program pinwright;
  expect_refused(pinwright({"serve", "--address", "0.0.0.0", "--port", "0"}), 2, "--address",
                 "--token-file");
  const std::string token = pinwright.write("token", "two words\n");
  expect_refused(pinwright({"serve", "--port", "0", "--token-file", token}), 2, token, "one line");
  expect_refused(pinwright({"serve", "--port", "99999"}), 2, "--port", "65535");
  expect_refused(pinwright({"serve", "--port", "0", "--knowledge", pinwright.file("none")}), 2,
                 "none", "");
}

}  // namespace
}  // namespace pinwright::api
