#include "api/http/server.h"

#include <httplib.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <exception>
#include <thread>

#include "api/http/gate.h"
#include "api/http/headers.h"
#include "api/http/router.h"

namespace pinwright::api {

namespace {

HttpRequest read_request(const httplib::Request& from) {
  HttpRequest request;
  request.method = from.method;
  request.path = from.path;
  request.query = {from.params.begin(), from.params.end()};
  for (const auto& [name, value] : from.headers) {
    std::string lower = name;
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    request.headers.emplace(std::move(lower), value);
  }
  return request;
}

void write_answer(const HttpAnswer& answer, httplib::Response& to) {
  to.status = answer.status;
  for (const auto& [name, value] : answer.headers) to.set_header(name, value);
  to.set_header("X-Content-Type-Options", "nosniff");
  to.set_header("Cache-Control", "no-cache");
  if (!answer.content_type.empty()) to.set_content(answer.body, answer.content_type);
}

/// What the library refused by itself, before any handler saw it.
Problem refused_by_library(int status) {
  switch (status) {
    case 413:
      return {"too-large", "the body", "The body is too large.", "Send at most 8 MiB."};
    case 414:
      return {"too-large", "the path", "The path is too long.", "Ask for a path of this service."};
    case 404:
      return {"route-unknown", "the path", "There is nothing at this path.",
              "All paths begin with /v1; start at /v1/knowledge or /v1/blocks."};
    default:
      return {"header-malformed", "the request", "The request cannot be read as HTTP.",
              "Send HTTP/1.1 with a method, a path and headers as RFC 9112 says."};
  }
}

Problems check(const ServerOptions& options) {
  Problems problems;
  if (options.token.empty() && !is_loopback_host(options.address) && options.address != "::1") {
    problems.push_back({"address-needs-token", "--address",
                        "The address " + options.address +
                            " can be reached from other machines, but there is no token.",
                        "Give a token with --token-file, or listen on 127.0.0.1."});
  }
  if (!options.token.empty() && options.token.size() < 16) {
    problems.push_back({"token-weak", "--token-file",
                        "The token has only " + std::to_string(options.token.size()) + " bytes.",
                        "Use at least 16, for instance from `openssl rand -hex 16`."});
  }
  if (options.port < 0 || options.port > 65535) {
    problems.push_back({"port-range", "--port", std::to_string(options.port) + " is no port.",
                        "Use 0 (any free one) to 65535."});
  }
  return problems;
}

}  // namespace

struct Server::Inside {
  Inside(Desk& d, const ServerOptions& o) : desk(d), options(o) {}

  Desk& desk;
  ServerOptions options;
  httplib::Server http;
  socket_t socket = INVALID_SOCKET;
  int port = 0;
  std::atomic<bool> stopping = false;
  std::atomic<bool> started = false;
  std::atomic<bool> finished = false;

  void log(const std::string& line) const {
    if (options.log && !line.empty()) options.log(line);
  }

  void handle(const httplib::Request& from, httplib::Response& to,
              const httplib::ContentReader* reader) {
    HttpRequest request = read_request(from);
    bool too_large = false;
    if (reader != nullptr) {
      // The library's own limit counts neither chunked bodies nor what a packed one unpacks to.
      const auto receive = [&](const char* data, std::size_t size) {
        too_large = too_large || size > options.most_bytes - request.body.size();
        if (!too_large) request.body.append(data, size);
        return !too_large;
      };
      // A form of several parts is read to its end as well (the library wants it so) and then
      // refused for what it is: no JSON.
      const bool whole =
          from.is_multipart_form_data()
              ? (*reader)([](const httplib::MultipartFormData&) { return true; }, receive)
              : (*reader)(receive);
      if (!whole) {
        to.set_header("Connection", "close");
        write_answer(problem_answer(too_large || to.status == 413
                                        ? refused_by_library(413)
                                        : Problem{"json-malformed", "the body",
                                                  "The body broke off before its end.",
                                                  "Send the whole body again."},
                                    request.path),
                     to);
        return;
      }
    }
    const auto refused = refuse_stranger(request, options.token);
    const HttpAnswer given = refused ? *refused : answer(desk, request);
    log(given.log);
    write_answer(given, to);
  }

  void set_up() {
    http.set_tcp_nodelay(true);
    http.set_keep_alive_max_count(1000000);
    http.set_keep_alive_timeout(options.idle_seconds);
    http.set_read_timeout(options.read_seconds, 0);
    http.set_write_timeout(options.read_seconds, 0);
    http.set_payload_max_length(options.most_bytes);
    http.new_task_queue = [this] { return new httplib::ThreadPool(options.threads); };
    // Only REUSEADDR: with REUSEPORT two services could share a port and split the requests.
    http.set_socket_options([this](socket_t made) {
      socket = made;
      const int yes = 1;
      setsockopt(made, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    });

    const auto plain = [this](const httplib::Request& from, httplib::Response& to) {
      handle(from, to, nullptr);
    };
    const auto with_body = [this](const httplib::Request& from, httplib::Response& to,
                                  const httplib::ContentReader& reader) {
      handle(from, to, &reader);
    };
    const std::string every = R"([\s\S]*)";
    http.Get(every, plain);
    http.Options(every, plain);
    http.Post(every, with_body);
    http.Put(every, with_body);
    http.Patch(every, with_body);
    http.Delete(every, with_body);

    http.set_error_handler([](const httplib::Request& from, httplib::Response& to) {
      if (!to.body.empty() || to.status < 400) return;
      const int status = to.status;
      write_answer(problem_answer(refused_by_library(status), from.path.substr(0, 200)), to);
    });
    http.set_exception_handler(
        [this](const httplib::Request& from, httplib::Response& to, std::exception_ptr) {
          log("an exception reached the server at " + from.path.substr(0, 200) + "\n");
          write_answer(internal_answer(from.path.substr(0, 200)), to);
        });
  }
};

Server::Server(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Server::~Server() = default;

Result<std::unique_ptr<Server>> Server::bind(Desk& desk, const ServerOptions& options) {
  if (Problems problems = check(options); !problems.empty()) return problems;
  auto inside = std::make_unique<Inside>(desk, options);
  inside->set_up();
  if (options.port == 0) {
    inside->port = inside->http.bind_to_any_port(options.address);
  } else if (inside->http.bind_to_port(options.address, options.port)) {
    inside->port = options.port;
  } else {
    inside->port = -1;
  }
  if (inside->port <= 0) {
    return Problem{"address-in-use", "--address, --port",
                   options.address + ":" + std::to_string(options.port) + " cannot be had.",
                   "Stop the program that listens there, or take another port (0: any free one)."};
  }
  // The library's backlog is 5: a burst of connections would be dropped and tried again after 1 s.
  listen(inside->socket, 512);
  return std::unique_ptr<Server>(new Server(std::move(inside)));
}

int Server::port() const { return inside_->port; }

std::string Server::url() const {
  const std::string& address = inside_->options.address;
  const bool v6 = address.find(':') != std::string::npos;
  return "http://" + (v6 ? "[" + address + "]" : address) + ":" + std::to_string(inside_->port);
}

void Server::run() {
  inside_->started = true;
  if (!inside_->stopping) inside_->http.listen_after_bind();
  inside_->finished = true;
}

void Server::stop() {
  inside_->stopping = true;
  // The library forgets a stop that comes before it runs.
  while (inside_->started && !inside_->finished && !inside_->http.is_running()) {
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  inside_->http.stop();
}

}  // namespace pinwright::api
