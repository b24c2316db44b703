#include "knowledge/load.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "knowledge/read_entries.h"
#include "knowledge/schema_check.h"
#include "knowledge/soundness.h"
#include "knowledge/told_signs.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge {
namespace {

namespace fs = std::filesystem;
constexpr std::size_t kMostProblems = 500;  ///< told of one load: more help nobody

void append(Problems& to, const Problems& more) { to.insert(to.end(), more.begin(), more.end()); }

std::vector<fs::path> yaml_files(const std::string& folder, Problems& problems) {
  std::vector<fs::path> files;
  std::error_code error;
  if (fs::is_regular_file(folder, error)) return {folder};
  fs::directory_iterator it(folder, error);
  if (error) {
    problems.push_back({"folder-unreadable", folder,
                        "the folder cannot be read: " + error.message(),
                        "name a folder of knowledge, e.g. knowledge/data"});
    return files;
  }
  for (; it != fs::directory_iterator(); it.increment(error)) {
    if (error) break;
    if (it->path().extension() == ".yaml" && it->is_regular_file(error))
      files.push_back(it->path());
  }
  std::sort(files.begin(), files.end());
  if (files.empty())
    problems.push_back({"folder-empty", folder, "the folder holds no .yaml file",
                        "name a folder of knowledge, e.g. knowledge/data"});
  return files;
}

Knowledge read_file(const fs::path& path, Problems& problems) {
  const std::string file = path.string();
  std::error_code error;
  const auto size = fs::file_size(path, error);
  if (error || size > kMostFileBytes) {
    problems.push_back({error ? "file-unreadable" : "file-too-large", file,
                        error ? "the file cannot be read" : "the file is over 2 MB",
                        "check the file"});
    return {};
  }
  std::ifstream in(path, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  if (!in.good() && !in.eof()) {
    problems.push_back({"file-unreadable", file, "the file cannot be read", "check the file"});
    return {};
  }
  const auto tree = read_yaml(text, file);
  if (!tree) {
    append(problems, tree.problems());
    return {};
  }
  append(problems, check_schema(*tree, file));
  return read_entries(*tree, file);
}

template <class T>
void join(std::vector<T>& all, std::vector<T> more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

void join(Knowledge& all, Knowledge more) {
  join(all.kinds, std::move(more.kinds));
  join(all.features, std::move(more.features));
  join(all.zones, std::move(more.zones));
  join(all.signs, std::move(more.signs));
  join(all.causes, std::move(more.causes));
  join(all.problems, std::move(more.problems));
  join(all.measured, std::move(more.measured));
  join(all.postures, std::move(more.postures));
  join(all.words, std::move(more.words));
  join(all.tellings, std::move(more.tellings));
  join(all.publications, std::move(more.publications));
}

/// An entry of a later folder takes the place of the one with its id; new ones are added. Twins
/// within `more` both come in, so that the proof finds them.
template <class T, class Id>
void lay_over(std::vector<T>& all, std::vector<T> more, const char* sort, Id id,
              std::vector<Replaced>& replacements) {
  const std::size_t before = all.size();
  std::vector<bool> replaced(before, false);
  for (auto& one : more) {
    std::size_t i = 0;
    while (i < before && (replaced[i] || id(all[i]) != id(one))) ++i;
    if (i < before) {
      replaced[i] = true;
      replacements.push_back({sort, id(one), all[i].place, one.place});
      all[i] = std::move(one);
    } else {
      all.push_back(std::move(one));
    }
  }
}

void lay_over(Knowledge& all, Knowledge more) {
  const auto id = [](const auto& one) { return one.id; };
  const auto key = [](const Publication& p) { return p.key; };
  auto& replaced = all.replaced;
  for (auto& kind : more.kinds)
    if (std::find(all.kinds.begin(), all.kinds.end(), kind) == all.kinds.end())
      all.kinds.push_back(std::move(kind));
  lay_over(all.features, std::move(more.features), "feature", id, replaced);
  lay_over(all.zones, std::move(more.zones), "zone", id, replaced);
  lay_over(all.signs, std::move(more.signs), "sign", id, replaced);
  lay_over(all.causes, std::move(more.causes), "cause", id, replaced);
  lay_over(all.problems, std::move(more.problems), "problem", id, replaced);
  lay_over(all.measured, std::move(more.measured), "measured", id, replaced);
  lay_over(all.postures, std::move(more.postures), "posture", id, replaced);
  lay_over(all.words, std::move(more.words), "words", id, replaced);
  join(all.tellings, std::move(more.tellings));
  lay_over(all.publications, std::move(more.publications), "publication", key, replaced);
}

}  // namespace

Result<Knowledge> load(const std::vector<std::string>& folders) {
  Problems problems;
  Knowledge all;
  if (folders.empty())
    problems.push_back(
        {"folder-missing", "", "no folder of knowledge is named", "name one, e.g. knowledge/data"});
  bool all_read = true;
  for (const auto& folder : folders) {
    Knowledge here;
    for (const auto& path : yaml_files(folder, problems)) {
      const std::size_t before = problems.size();
      join(here, read_file(path, problems));
      all_read = all_read && (problems.size() == before || problems[before].code == "schema");
    }
    lay_over(all, std::move(here));
    all.folders.push_back(folder);
  }
  // A file that could not be read at all would be missed by every other: only its own problem
  // counts.
  add_told_signs(all);
  if (all_read && !folders.empty()) {
    // A field that the schema refuses was read as its default: what follows from that is no news.
    std::set<std::string> told;
    for (const auto& p : problems) told.insert(p.place);
    for (auto& p : prove_sound(all))
      if (!told.contains(p.place)) problems.push_back(std::move(p));
  }
  if (problems.size() > kMostProblems) {
    problems.resize(kMostProblems);
    problems.push_back(
        {"more", "", "there are more problems than are told here", "mend these first"});
  }
  if (!problems.empty()) return problems;
  return all;
}

}  // namespace pinwright::knowledge
