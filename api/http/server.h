#pragma once
// The HTTP service: a socket, threads, and the routes of router.h.

#include <functional>
#include <memory>
#include <string>

#include "api/desk/desk.h"
#include "engine/base/result.h"

namespace pinwright::api {

struct ServerOptions {
  std::string address = "127.0.0.1";
  int port = 8017;                     ///< 0: any free one
  std::string token;                   ///< when set, every request but GET /v1/health must bear it
  std::size_t threads = 32;            ///< one a connection
  std::size_t most_bytes = 8U << 20U;  ///< of a body, unpacked
  int idle_seconds = 2;   ///< an idle connection is closed after it, so that its thread is free
  int read_seconds = 10;  ///< a request that trickles in is given up after it
  std::function<void(const std::string&)> log;  ///< called from any thread; lines for the operator
};

class Server {
 public:
  /// Binds the address; nothing is answered before run(). Problems: "address-needs-token" (an
  /// address beyond this machine without a token), "token-weak" (under 16 bytes), "port-range",
  /// "address-in-use" (or not to be had). The desk must outlive the server.
  static Result<std::unique_ptr<Server>> bind(Desk& desk, const ServerOptions& options);
  ~Server();

  int port() const;
  /// "http://127.0.0.1:8017"
  std::string url() const;
  /// Answers until stop(); requests under way are finished. Returns once.
  void run();
  /// From any thread, before or during run(); not from a signal handler.
  void stop();

 private:
  struct Inside;
  explicit Server(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace pinwright::api
