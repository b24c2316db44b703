// pinwright knowledge check: what is unsound, what is worth a second look, what each folder adds.

#include <iostream>

#include "api/cli/commands.h"
#include "api/cli/say.h"
#include "api/cli/session.h"
#include "api/desk/knowledge_json.h"
#include "knowledge/alike.h"
#include "knowledge/load.h"

namespace pinwright::api::cli {

namespace {

/// {code, place, file, line, what, mend}; line null where the place is no line of a file.
Json line_told(const Problem& problem) {
  const std::size_t colon = problem.place.rfind(':');
  const std::string line = colon == std::string::npos ? "" : problem.place.substr(colon + 1);
  const bool is_line =
      !line.empty() && line.size() < 9 && line.find_first_not_of("0123456789") == std::string::npos;
  return {{"code", problem.code},
          {"place", problem.place},
          {"file", is_line ? problem.place.substr(0, colon) : problem.place},
          {"line", is_line ? Json(std::stoi(line)) : Json()},
          {"what", problem.what},
          {"mend", problem.mend}};
}

Json lines_told(const Problems& problems) {
  Json all = Json::array();
  for (const Problem& problem : problems) all.push_back(line_told(problem));
  return all;
}

std::string counted(std::size_t n, const char* what) {
  return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
}

}  // namespace

int run_knowledge_check(const Options& options) {
  const std::vector<std::string> folders = knowledge_folders(options, options.folders);
  const auto loaded = knowledge::load(folders);
  const Problems seconds = loaded ? knowledge::remarks(*loaded) : Problems{};
  const bool pass = loaded.ok() && (!options.strict || seconds.empty());
  if (options.json) {
    Json body = {{"sound", loaded.ok()},
                 {"folders", folders},
                 {"problems", lines_told(loaded.problems())},
                 {"remarks", lines_told(seconds)}};
    if (loaded) body.update(knowledge_counts(*loaded));
    std::cout << dump(body);
    return pass ? 0 : 2;
  }
  if (!loaded) {
    std::cerr << say_problems(loaded.problems())
              << "The knowledge is not sound: " << counted(loaded.problems().size(), "problem")
              << ".\n";
    return 2;
  }
  std::cout << "The knowledge is sound: " << counted(loaded->problems.size(), "problem") << ", "
            << counted(loaded->signs.size(), "sign") << ", "
            << counted(loaded->causes.size(), "cause") << ".\n"
            << say_layers(knowledge_counts(*loaded)["layers"]);
  if (!seconds.empty())
    std::cout << "\nWorth a second look (" << seconds.size() << "):\n" << say_remarks(seconds);
  return pass ? 0 : 2;
}

}  // namespace pinwright::api::cli
