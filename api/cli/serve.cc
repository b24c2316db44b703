// pinwright serve: the HTTP service until SIGINT or SIGTERM; SIGHUP loads the knowledge anew.

#include <csignal>
#include <iostream>
#include <thread>

#include "api/cli/commands.h"
#include "api/cli/say.h"
#include "api/cli/session.h"
#include "api/exchange/read_file.h"
#include "api/http/server.h"

namespace pinwright::api::cli {

namespace {

constexpr std::size_t kLongestToken = 4096;

Result<std::string> read_token(const std::string& path) {
  if (path.empty()) return std::string();
  auto text = read_file_limited(path, kLongestToken);
  if (!text) return text.problems();
  std::string token = std::move(text).value();
  while (!token.empty() && (token.back() == '\n' || token.back() == '\r')) token.pop_back();
  if (token.empty() || token.find_first_of(" \t\r\n") != std::string::npos) {
    return Problem{
        "token-malformed", path, "The file does not hold one token.",
        "Put one line without spaces into it, for instance from `openssl rand -hex 16`."};
  }
  return token;
}

void reload(Desk& desk) {
  const Outcome outcome = desk.reload_knowledge();
  std::cerr << (outcome.ok() ? std::string("The knowledge was loaded anew.\n")
                             : say_problems(outcome.refusal().problems))
            << std::flush;
}

}  // namespace

int run_serve(const Options& options) {
  auto token = read_token(options.token_file);
  if (!token) return finish(options, token.problems());
  // Blocked before any thread starts, so that only the one that waits for them gets them.
  sigset_t signals;
  sigemptyset(&signals);
  sigaddset(&signals, SIGINT);
  sigaddset(&signals, SIGTERM);
  sigaddset(&signals, SIGHUP);
  pthread_sigmask(SIG_BLOCK, &signals, nullptr);
  std::signal(SIGPIPE, SIG_IGN);

  auto desk = open_desk(options, With::both);
  if (!desk) return finish(options, desk.problems());
  ServerOptions settings;
  settings.address = options.address;
  settings.port = options.port;
  settings.token = *token;
  settings.log = [](const std::string& line) { std::cerr << line << std::flush; };
  auto server = Server::bind(**desk, settings);
  if (!server) return finish(options, server.problems());

  Server& running = **server;
  Desk& answering = **desk;
  std::thread waiting([&signals, &running, &answering] {
    int received = SIGHUP;
    while (sigwait(&signals, &received) == 0 && received == SIGHUP) reload(answering);
    running.stop();
  });
  if (options.json) {
    std::cout << Json{{"url", running.url()}}.dump() << std::endl;
  } else {
    std::cout << "Listening on " << running.url() << std::endl;
  }
  running.run();
  pthread_kill(waiting.native_handle(), SIGTERM);  // when it ended by itself
  waiting.join();
  return 0;
}

}  // namespace pinwright::api::cli
