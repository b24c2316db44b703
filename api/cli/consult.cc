// A session of questions at the terminal, or with the answers piped in.

#include <algorithm>
#include <cctype>
#include <iostream>

#include "api/cli/commands.h"
#include "api/cli/requests.h"
#include "api/cli/say.h"
#include "api/cli/session.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

enum class Answer { present, absent, unknown, stop, words };

/// Small letters without what stands at the ends or in between beside letters: "Don't know!" ->
/// "dont know".
std::string plain(const std::string& line) {
  std::string out;
  for (const char c : line) {
    const auto letter = static_cast<unsigned char>(c);
    if (std::isalpha(letter)) out += static_cast<char>(std::tolower(letter));
    if (std::isspace(letter) && !out.empty() && out.back() != ' ') out += ' ';
    if (c == '?' && out.empty()) out = "?";
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

Answer answer_of(const std::string& line) {
  const std::string said = plain(line);
  const auto one_of = [&](std::initializer_list<const char*> all) {
    return std::any_of(all.begin(), all.end(), [&](const char* word) { return said == word; });
  };
  if (one_of({"y", "yes", "yeah", "yep", "it does", "it is", "present"})) return Answer::present;
  if (one_of({"n", "no", "nope", "not", "it does not", "it doesnt", "absent"})) {
    return Answer::absent;
  }
  if (one_of({"", "?", "dont know", "i dont know", "do not know", "i do not know", "cannot tell",
              "cant tell", "i cant tell", "not sure", "im not sure", "unsure", "unknown", "skip",
              "dunno", "pass"})) {
    return Answer::unknown;
  }
  if (one_of({"q", "quit", "stop", "end", "enough"})) return Answer::stop;
  return Answer::words;
}

const char* state_of(Answer answer) {
  if (answer == Answer::present) return "present";
  return answer == Answer::absent ? "absent" : "unknown";
}

class Consultation {
 public:
  /// What is said on the way goes to standard error where standard output is to be JSON.
  Consultation(const Desk& desk, const Subject& subject, Json request, bool json)
      : desk_(desk),
        subject_(subject),
        request_(std::move(request)),
        out_(json ? std::cerr : std::cout) {}

  Outcome run() {
    if (!told() && !ask_first()) return desk_.advise(subject_, request_);
    Outcome outcome = desk_.advise(subject_, request_);
    while (const Json* question = question_in(outcome)) {
      const Json asked = *question;
      std::string line;
      if (!ask(asked["asks"].get<std::string>(), line)) break;
      const Answer answer = answer_of(line);
      if (answer == Answer::stop) break;
      take(asked["sign"].get<std::string>(), asked, answer, line, outcome);
    }
    if (outcome.ok()) outcome.reply().body["session"] = session_;
    return outcome;
  }

 private:
  bool told() const {
    return request_.contains("words") || request_.contains("findings") ||
           request_.contains("answers");
  }

  bool ask(const std::string& question, std::string& line) {
    out_ << paragraph("? ", question) << "> " << std::flush;
    const bool read = static_cast<bool>(std::getline(std::cin, line));
    out_ << "\n";
    return read;
  }

  /// Nothing was told on the command line: the first line tells it.
  bool ask_first() {
    std::string line;
    while (ask("What was seen at the try-on?", line)) {
      Json trial = request_;
      trial["words"] = line;
      if (plain(line).empty() || refused(desk_.advise(subject_, trial))) continue;
      request_ = std::move(trial);
      return true;
    }
    return false;
  }

  static const Json* question_in(const Outcome& outcome) {
    if (!outcome.ok() || !outcome.reply().body["question"].is_object()) return nullptr;
    return &outcome.reply().body["question"];
  }

  /// Tells why an answer cannot be taken.
  bool refused(const Outcome& outcome) {
    if (!outcome.ok()) out_ << say_problems(outcome.refusal().problems);
    return !outcome.ok();
  }

  /// An answer that cannot be taken changes nothing; the question comes again.
  void take(const std::string& sign, const Json& question, Answer answer, const std::string& line,
            Outcome& outcome) {
    Json trial = request_;
    trial["asked"].push_back(sign);
    if (answer == Answer::words) {
      const std::string before = trial.value("words", "");
      trial["words"] = before.empty() ? line : before + "\n" + line;
    } else {
      trial["answers"][sign] = state_of(answer);
    }
    Outcome next = desk_.advise(subject_, trial);
    if (refused(next)) return;
    request_ = std::move(trial);
    outcome = std::move(next);
    session_.push_back({{"sign", sign}, {"asks", question["asks"]}, {"answer", line}});
  }

  const Desk& desk_;
  const Subject& subject_;
  Json request_;
  std::ostream& out_;
  Json session_ = Json::array();
};

}  // namespace

int run_consult(const Options& options) {
  const auto request = told_request(options);
  if (!request) return finish(options, request.problems());
  auto desk = open_desk(options, is_file(options.block) ? With::knowledge : With::both);
  if (!desk) return finish(options, desk.problems());
  const auto subject = find_subject(**desk, options, options.revision);
  if (!subject) return finish(options, subject.problems());
  return finish(options, Consultation(**desk, *subject, *request, options.json).run(), say_advice);
}

}  // namespace pinwright::api::cli
