#include "api/http/router.h"

#include <algorithm>
#include <array>
#include <exception>
#include <initializer_list>
#include <string_view>

#include "api/exchange/block_schema.h"
#include "api/exchange/parse.h"
#include "api/http/headers.h"

namespace pinwright::api {

namespace {

/// What a route works with: the request, the path's variable parts, and the body as JSON.
struct Call {
  Desk& desk;
  const HttpRequest& request;
  std::vector<std::string> parts;
  Json body;
  std::string key;  ///< idempotency key

  const std::string& part(std::size_t i) const { return parts[i]; }
  HttpAnswer give(const Outcome& outcome) const { return answer_of(outcome, request.path); }
  HttpAnswer problems(const Problems& found) const {
    return problem_answer(refuse(found), request.path);
  }
  HttpAnswer svg(const Result<std::string>& drawing) const {
    if (!drawing) return problems(drawing.problems());
    HttpAnswer answer;
    answer.content_type = "image/svg+xml";
    answer.body = *drawing;
    return answer;
  }
};

/// Calls `then` with the block of the path at the revision of the query.
template <class Then>
HttpAnswer with_subject(Call& call, Then&& then) {
  const auto number = query_number(call.request, "revision", 0);
  if (!number) return call.problems(number.problems());
  const auto subject = call.desk.subject(call.part(0), *number);
  if (!subject) return call.problems(subject.problems());
  return then(*subject);
}

HttpAnswer health(Call& call) {
  Reply reply;
  reply.body["status"] = "ok";
  return call.give(reply);
}

HttpAnswer knowledge_overview(Call& call) { return call.give(call.desk.list_knowledge("")); }
HttpAnswer knowledge_section(Call& call) {
  return call.give(call.desk.list_knowledge(call.part(0)));
}
HttpAnswer knowledge_entry(Call& call) { return call.give(call.desk.show_knowledge(call.part(0))); }

HttpAnswer knowledge_reload(Call& call) {
  if (!call.body.is_object() || !call.body.empty()) {
    return call.problems({{"field-unknown", "the body", "Reloading takes nothing.",
                           "Send {}; the folders are those the service was started with."}});
  }
  return call.give(call.desk.reload_knowledge());
}

HttpAnswer schema(Call&) {
  HttpAnswer answer;
  answer.content_type = "application/schema+json";
  answer.body = block_schema_text();
  return answer;
}

HttpAnswer describe(Call& call) { return call.give(call.desk.describe(call.body)); }
HttpAnswer draft(Call& call) { return call.give(call.desk.draft(call.body, call.key)); }
HttpAnswer blocks(Call& call) { return call.give(call.desk.blocks()); }
HttpAnswer save(Call& call) { return call.give(call.desk.save(call.body, call.key)); }
HttpAnswer latest(Call& call) { return call.give(call.desk.revision(call.part(0), 0)); }
HttpAnswer history(Call& call) { return call.give(call.desk.revisions(call.part(0))); }

HttpAnswer advise(Call& call) {
  return with_subject(call, [&call](const Subject& subject) {
    return call.give(call.desk.advise(subject, call.body));
  });
}

HttpAnswer foresee(Call& call) {
  return with_subject(call, [&call](const Subject& subject) {
    return call.give(call.desk.foresee(subject, call.body));
  });
}

HttpAnswer preview(Call& call) {
  return with_subject(call, [&call](const Subject& subject) {
    if (!wants_svg(call.request)) return call.give(call.desk.preview(subject, call.body));
    HttpAnswer answer = call.svg(call.desk.draw_preview(subject, call.body));
    if (answer.status == 200) answer.headers.emplace_back("ETag", "\"" + subject.etag + "\"");
    return answer;
  });
}

HttpAnswer apply(Call& call) {
  const auto base = if_match(call.request);
  if (!base) return call.problems(base.problems());
  return call.give(call.desk.apply(call.part(0), *base, call.body, call.key));
}

HttpAnswer restore(Call& call) {
  Base base;
  if (call.request.has_header("if-match")) {
    const auto named = if_match(call.request);
    if (!named) return call.problems(named.problems());
    base = *named;
  }
  return call.give(call.desk.restore(call.part(0), base, call.body, call.key));
}

HttpAnswer one_revision(Call& call) {
  HttpRequest as_query;
  as_query.query.emplace("revision", call.part(1));
  const auto number = query_number(as_query, "revision", 0);
  if (!number) {
    return call.problems({{"revision-unknown", "block " + call.part(0),
                           "\"" + call.part(1).substr(0, 40) + "\" is no number of a revision.",
                           "Write a whole number from 1 on."}});
  }
  return call.give(call.desk.revision(call.part(0), *number));
}

HttpAnswer check(Call& call) {
  return with_subject(
      call, [&call](const Subject& subject) { return call.give(call.desk.check(subject)); });
}

HttpAnswer draw(Call& call) {
  const auto from = query_number(call.request, "from", 0);
  const auto to = query_number(call.request, "to", 0);
  if (!from) return call.problems(from.problems());
  if (!to) return call.problems(to.problems());
  if (*from == 0 && *to == 0) {
    return with_subject(call, [&call](const Subject& subject) {
      HttpAnswer answer = call.svg(call.desk.draw(subject));
      if (answer.status == 200) answer.headers.emplace_back("ETag", "\"" + subject.etag + "\"");
      return answer;
    });
  }
  if (*from == 0 || call.request.query.count("revision") != 0) {
    return call.problems(
        {{"query-malformed", "query from", "A change is drawn from one revision to another.",
          "Give from and to (to may be left out for the latest), without revision."}});
  }
  const auto before = call.desk.subject(call.part(0), *from);
  if (!before) return call.problems(before.problems());
  const auto after = call.desk.subject(call.part(0), *to);
  if (!after) return call.problems(after.problems());
  return call.svg(call.desk.draw_change(*before, *after));
}

struct Route {
  std::string_view method;
  std::string_view path;  ///< {} stands for one part of the path
  HttpAnswer (*handle)(Call&);
  std::string_view queries;  ///< names allowed in the query, separated by spaces
};

constexpr auto kRoutes = std::to_array<Route>({
    {"GET", "/v1/health", health, ""},
    {"GET", "/v1/knowledge", knowledge_overview, ""},
    {"GET", "/v1/knowledge/{}", knowledge_section, ""},
    {"GET", "/v1/knowledge/entries/{}", knowledge_entry, ""},
    {"POST", "/v1/knowledge/reload", knowledge_reload, ""},
    {"GET", "/v1/schema/block", schema, ""},
    {"POST", "/v1/describe", describe, ""},
    {"POST", "/v1/drafts", draft, ""},
    {"GET", "/v1/blocks", blocks, ""},
    {"POST", "/v1/blocks", save, ""},
    {"GET", "/v1/blocks/{}", latest, ""},
    {"POST", "/v1/blocks/{}/advice", advise, "revision"},
    {"POST", "/v1/blocks/{}/foresight", foresee, "revision"},
    {"POST", "/v1/blocks/{}/previews", preview, "revision"},
    {"GET", "/v1/blocks/{}/revisions", history, ""},
    {"POST", "/v1/blocks/{}/revisions", apply, ""},
    {"GET", "/v1/blocks/{}/revisions/{}", one_revision, ""},
    {"POST", "/v1/blocks/{}/restore", restore, ""},
    {"GET", "/v1/blocks/{}/drawing.svg", draw, "revision from to"},
    {"GET", "/v1/blocks/{}/check", check, "revision"},
});

/// The variable parts when the path fits the pattern; false when it does not.
bool fits(std::string_view pattern, std::string_view path, std::vector<std::string>& parts) {
  parts.clear();
  while (!pattern.empty() && !path.empty()) {
    if (pattern.front() != '/' || path.front() != '/') return false;
    pattern.remove_prefix(1);
    path.remove_prefix(1);
    const std::string_view want = pattern.substr(0, pattern.find('/'));
    const std::string_view have = path.substr(0, path.find('/'));
    if (want == "{}" ? have.empty() : want != have) return false;
    if (want == "{}") parts.emplace_back(have);
    pattern.remove_prefix(want.size());
    path.remove_prefix(have.size());
  }
  return pattern.empty() && path.empty();
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

bool allowed_query(std::string_view allowed, std::string_view name) {
  while (!allowed.empty()) {
    const std::string_view word = allowed.substr(0, allowed.find(' '));
    if (word == name) return true;
    allowed.remove_prefix(std::min(allowed.size(), word.size() + 1));
  }
  return false;
}

/// Everything wrong with a request before its route is called; fills in body and key.
Problems prepare(const Route& route, Call& call) {
  Problems problems;
  for (const auto& [name, value] : call.request.query) {
    if (!allowed_query(route.queries, name)) {
      problems.push_back({"query-malformed", "query " + name.substr(0, 40),
                          "This route takes no \"" + name.substr(0, 40) + "\".",
                          route.queries.empty() ? "Leave it out."
                                                : "It takes: " + std::string(route.queries) + "."});
    }
  }
  if (route.method == "GET") return problems;
  auto key = idempotency_key(call.request);
  if (key) {
    call.key = *key;
  } else {
    problems.insert(problems.end(), key.problems().begin(), key.problems().end());
  }
  if (!is_json(call.request.header("content-type"))) {
    problems.push_back({"media-type", "header Content-Type", "The body is not said to be JSON.",
                        "Send JSON with Content-Type: application/json."});
    return problems;
  }
  auto body = parse_json(call.request.body);
  if (body) {
    call.body = std::move(body).value();
  } else {
    problems.insert(problems.end(), body.problems().begin(), body.problems().end());
  }
  return problems;
}

HttpAnswer dispatch(Desk& desk, const HttpRequest& request) {
  // HEAD is a GET whose body the server leaves out.
  const std::string method = request.method == "HEAD" ? "GET" : request.method;
  Call call{desk, request, {}, {}, {}};
  for (const Route& route : kRoutes) {
    if (route.method != method || !fits(route.path, request.path, call.parts)) continue;
    if (const Problems problems = prepare(route, call); !problems.empty()) {
      return call.problems(problems);
    }
    return route.handle(call);
  }
  const auto methods = methods_at(request.path);
  if (methods.empty()) {
    return call.problems(
        {{"route-unknown", request.path.substr(0, 200), "There is nothing at this path.",
          "All paths begin with /v1; start at /v1/knowledge or /v1/blocks."}});
  }
  HttpAnswer refused = call.problems(
      {{"method-not-allowed", request.path.substr(0, 200),
        "This path does not take " + request.method + ".", "Use " + joined(methods) + "."}});
  refused.headers.emplace_back("Allow", joined(methods));
  return refused;
}

void not_modified(const HttpRequest& request, HttpAnswer& answer) {
  if ((request.method != "GET" && request.method != "HEAD") || answer.status != 200) return;
  for (const auto& [name, value] : answer.headers) {
    if (name == "ETag" && if_none_match(request, value)) {
      answer.status = 304;
      answer.body.clear();
      answer.content_type.clear();
      return;
    }
  }
}

}  // namespace

std::vector<std::string> methods_at(const std::string& path) {
  std::vector<std::string> methods;
  std::vector<std::string> parts;
  for (const Route& route : kRoutes) {
    if (!fits(route.path, path, parts)) continue;
    methods.emplace_back(route.method);
    if (route.method == "GET") methods.emplace_back("HEAD");
  }
  std::sort(methods.begin(), methods.end());
  methods.erase(std::unique(methods.begin(), methods.end()), methods.end());
  return methods;
}

HttpAnswer internal_answer(const std::string& instance) {
  return problem_answer(
      Problem{"internal", "the service", "Something failed in the service itself.",
              "Repeat the request; if it fails again, tell whoever runs it."},
      instance);
}

HttpAnswer answer(Desk& desk, const HttpRequest& request) {
  try {
    HttpAnswer given = dispatch(desk, request);
    not_modified(request, given);
    return given;
  } catch (const std::exception& failed) {
    HttpAnswer given = internal_answer(request.path);
    given.log += std::string(failed.what()) + "\n";
    return given;
  } catch (...) {
    return internal_answer(request.path);
  }
}

}  // namespace pinwright::api
