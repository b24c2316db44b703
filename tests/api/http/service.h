#pragma once
// A real server on a free port of 127.0.0.1, with a knit top saved, and a client to ask it.

#include <httplib.h>

#include <memory>
#include <string>
#include <thread>

#include "api/http/server.h"
#include "tests/api/desk/room.h"

namespace pinwright::api {

inline constexpr const char* kJson = "application/json";

class Service {
 public:
  explicit Service(ServerOptions options = {}) : desk_(open_desk(scratch_.file("store.db"))) {
    const Outcome drafted = desk_->draft(draft_request());
    EXPECT_TRUE(drafted.ok()) << told(drafted);
    options.port = 0;
    auto bound = Server::bind(*desk_, options);
    EXPECT_TRUE(bound.ok());
    if (!bound.ok()) return;
    server_ = std::move(bound).value();
    thread_ = std::thread([this] { server_->run(); });
  }
  ~Service() {
    if (server_ == nullptr) return;
    server_->stop();
    thread_.join();
  }
  Service(const Service&) = delete;
  Service& operator=(const Service&) = delete;

  Desk& desk() { return *desk_; }
  Server& server() { return *server_; }
  httplib::Client client() const {
    httplib::Client made("127.0.0.1", server_->port());
    made.set_tcp_nodelay(true);
    made.set_keep_alive(true);
    made.set_read_timeout(30, 0);
    return made;
  }

 private:
  Scratch scratch_;
  std::unique_ptr<Desk> desk_;
  std::unique_ptr<Server> server_;
  std::thread thread_;
};

inline Json body_of(const httplib::Result& answer) {
  return answer ? Json::parse(answer->body, nullptr, false) : Json();
}

/// Problem details of RFC 9457 with our list of problems, of this status and with this code.
inline void expect_problem(const httplib::Result& answer, int status, const std::string& code) {
  ASSERT_TRUE(answer) << httplib::to_string(answer.error());
  EXPECT_EQ(answer->status, status) << answer->body;
  EXPECT_EQ(answer->get_header_value("Content-Type"), "application/problem+json");
  const Json details = body_of(answer);
  ASSERT_TRUE(details.is_object()) << answer->body;
  for (const char* field : {"type", "title", "status", "detail", "instance", "problems"}) {
    EXPECT_TRUE(details.contains(field)) << field << " in " << answer->body;
  }
  EXPECT_EQ(details["status"], status);
  ASSERT_FALSE(details["problems"].empty());
  bool found = false;
  for (const Json& problem : details["problems"]) {
    for (const char* field : {"code", "place", "what", "mend"}) {
      EXPECT_TRUE(problem.contains(field) && problem[field].is_string()) << answer->body;
    }
    found = found || problem["code"] == code;
  }
  EXPECT_TRUE(found) << "no " << code << " in " << answer->body;
}

}  // namespace pinwright::api
