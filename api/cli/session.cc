#include "api/cli/session.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "api/exchange/parse.h"
#include "api/exchange/read_file.h"
#include "knowledge/load.h"

namespace pinwright::api::cli {

namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value != nullptr ? value : "";
}

/// "a:b" -> a, b.
std::vector<std::string> split_path(const std::string& text) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, ':');)
    if (!part.empty()) parts.push_back(part);
  return parts;
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

std::vector<std::string> knowledge_folders(const Options& options,
                                           const std::vector<std::string>& more) {
  std::error_code ignored;
  std::vector<std::string> named = options.knowledge;
  if (named.empty()) {
    const bool in_sources = std::filesystem::is_directory(PINWRIGHT_KNOWLEDGE_SOURCE, ignored);
    named.emplace_back(in_sources ? PINWRIGHT_KNOWLEDGE_SOURCE : PINWRIGHT_KNOWLEDGE_INSTALLED);
  }
  const std::vector<std::string> overlays =
      options.overlay.empty() ? split_path(environment("PINWRIGHT_OVERLAY")) : options.overlay;
  named.insert(named.end(), overlays.begin(), overlays.end());
  named.insert(named.end(), more.begin(), more.end());
  std::vector<std::string> folders;
  for (const std::string& folder : named) {
    const bool twice = std::any_of(folders.begin(), folders.end(), [&](const auto& before) {
      return std::filesystem::equivalent(before, folder, ignored);
    });
    if (!twice) folders.push_back(folder);
  }
  return folders;
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
