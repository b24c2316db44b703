#include "api/cli/session.h"

#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>

#include "api/exchange/parse.h"
#include "api/exchange/read_file.h"
#include "knowledge/load.h"

namespace pinwright::api::cli {

namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value != nullptr ? value : "";
}

}  // namespace

Result<std::string> store_path(const Options& options) {
  if (!options.store.empty()) return options.store;
  if (const std::string named = environment("PINWRIGHT_STORE"); !named.empty()) return named;
  if (const std::string data = environment("XDG_DATA_HOME"); !data.empty()) {
    return data + "/pinwright/pinwright.db";
  }
  if (const std::string home = environment("HOME"); !home.empty()) {
    return home + "/.local/share/pinwright/pinwright.db";
  }
  return Problem{"store-missing", "--store", "No place for the store is known.",
                 "Name a file with --store or PINWRIGHT_STORE."};
}

std::vector<std::string> knowledge_folders(const Options& options) {
  if (!options.knowledge.empty()) return options.knowledge;
  std::error_code ignored;
  if (std::filesystem::is_directory(PINWRIGHT_KNOWLEDGE_SOURCE, ignored)) {
    return {PINWRIGHT_KNOWLEDGE_SOURCE};
  }
  return {PINWRIGHT_KNOWLEDGE_INSTALLED};
}

Result<std::unique_ptr<Desk>> open_desk(const Options& options, With with) {
  Problems problems;
  knowledge::Knowledge knowledge;
  std::unique_ptr<Store> store;
  if (with == With::knowledge || with == With::both) {
    auto loaded = knowledge::load(knowledge_folders(options));
    problems = loaded.problems();
    if (loaded) knowledge = std::move(loaded).value();
  }
  if (with == With::store || with == With::both) {
    const auto path = store_path(options);
    problems.insert(problems.end(), path.problems().begin(), path.problems().end());
    if (path) {
      auto opened = Store::open(*path);
      problems.insert(problems.end(), opened.problems().begin(), opened.problems().end());
      if (opened) store = std::move(opened).value();
    }
  }
  if (!problems.empty()) return problems;
  return std::make_unique<Desk>(std::move(knowledge), std::move(store));
}

bool is_file(const std::string& block) {
  std::error_code ignored;
  return block.find('/') != std::string::npos || block.ends_with(".json") ||
         std::filesystem::exists(block, ignored);
}

Result<Subject> find_subject(Desk& desk, const Options& options, int number) {
  if (!is_file(options.block)) return desk.subject(options.block, number);
  if (number != 0) {
    return Problem{"revision-of-file", options.block, "A file has no revisions.",
                   "Save it with `pinwright save " + options.block + "` and name it by its id."};
  }
  const auto json = read_json_file(options.block);
  if (!json) return json.problems();
  auto subject = Desk::subject_from(*json);
  if (subject) return subject;
  Problems problems = subject.problems();
  for (Problem& problem : problems) problem.place = options.block + ": " + problem.place;
  return problems;
}

Result<Json> read_json_file(const std::string& path) {
  const auto text = read_file_limited(path, kMostBytes);
  if (!text) return text.problems();
  auto json = parse_json(*text);
  if (json) return json;
  Problems problems = json.problems();
  for (Problem& problem : problems) problem.place = path + ": " + problem.place;
  return problems;
}

Problems write_file(const std::string& path, const std::string& text) {
  if (path == "-") {
    std::cout << text;
    return {};
  }
  const std::string beside = path + ".part" + std::to_string(getpid());
  std::error_code failed;
  {
    std::ofstream file(beside, std::ios::binary);
    file << text;
    file.close();
    if (!file) failed = std::error_code(errno, std::generic_category());
  }
  if (!failed) std::filesystem::rename(beside, path, failed);
  if (!failed) return {};
  std::error_code ignored;
  std::filesystem::remove(beside, ignored);
  return {{"file-not-written", path, "The file cannot be written (" + failed.message() + ").",
           "Name a file in a folder that exists and may be written."}};
}

}  // namespace pinwright::api::cli
