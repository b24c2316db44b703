#pragma once
// A folder of its own for each test, and revisions to put into a store there.

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <memory>
#include <string>

#include "api/store/store.h"

namespace pinwright::api {

class Scratch {
 public:
  Scratch() {
    std::string pattern = (std::filesystem::temp_directory_path() / "pinwright-XXXXXX").string();
    folder_ = mkdtemp(pattern.data());
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  std::string file(const std::string& name) const { return (folder_ / name).string(); }
  std::string folder() const { return folder_.string(); }

 private:
  std::filesystem::path folder_;
};

inline std::unique_ptr<Store> open_store(const std::string& path, int busy_ms = 5000) {
  auto store = Store::open(path, {busy_ms});
  EXPECT_TRUE(store.ok()) << (store.ok() ? "" : store.problems().front().what);
  return store.ok() ? std::move(store).value() : nullptr;
}

/// A revision whose geometry tells `mark`.
inline NewRevision revision(const std::string& mark, const std::string& reason = "cut anew") {
  NewRevision fresh{"fitter 1", reason, "Deck top", "knit-top", "M", {}};
  fresh.body.geometry = R"({"mark":")" + mark + R"("})";
  return fresh;
}

inline std::string code(const Written& written) {
  return written.problems.empty() ? "" : written.problems.front().code;
}

template <class T>
std::string code(const Result<T>& result) {
  return result.ok() ? "" : result.problems().front().code;
}

}  // namespace pinwright::api
