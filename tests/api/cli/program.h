#pragma once
// The built program, run as a user runs it: exit status, standard output and standard error.

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

#include "api/cli/table.h"
#include "api/exchange/json.h"
#include "tests/api/store/scratch.h"

namespace pinwright::api {

inline void expect_80_columns(const std::string& text) {
  std::istringstream lines(text);
  std::string line;
  while (std::getline(lines, line)) EXPECT_LE(cli::width(line), cli::kColumns) << line;
}

struct Ran {
  int status = -1;
  std::string out;
  std::string err;
  Json json() const { return Json::parse(out, nullptr, false); }
};

inline std::string slurp(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

class Program {
 public:
  std::string file(const std::string& name) const { return scratch_.file(name); }
  std::string write(const std::string& name, const std::string& text) const {
    std::ofstream(file(name), std::ios::binary) << text;
    return file(name);
  }
  std::string store() const { return file("store.db"); }

  /// Starts it; output goes to files. The caller waits for it.
  pid_t start(const std::vector<std::string>& arguments, const std::string& input = {}) const {
    std::vector<std::string> words = {PINWRIGHT_BINARY};
    words.insert(words.end(), arguments.begin(), arguments.end());
    const pid_t child = fork();
    if (child != 0) return child;
    std::vector<char*> raw;
    for (std::string& word : words) raw.push_back(word.data());
    raw.push_back(nullptr);
    setenv("PINWRIGHT_STORE", store().c_str(), 1);
    if (!input.empty() && std::freopen(input.c_str(), "r", stdin) == nullptr) _exit(126);
    if (std::freopen(file("out").c_str(), "w", stdout) == nullptr ||
        std::freopen(file("err").c_str(), "w", stderr) == nullptr) {
      _exit(126);
    }
    execv(PINWRIGHT_BINARY, raw.data());
    _exit(127);
  }
  Ran operator()(const std::vector<std::string>& arguments) const {
    return wait_for(start(arguments));
  }
  /// With this on standard input.
  Ran piped(const std::string& input, const std::vector<std::string>& arguments) const {
    return wait_for(start(arguments, write("in", input)));
  }
  Ran wait_for(pid_t child) const {
    int status = 0;
    waitpid(child, &status, 0);
    Ran run;
    run.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    run.out = slurp(file("out"));
    run.err = slurp(file("err"));
    return run;
  }

  /// Deckhand 3's knit top, saved as deck-top.
  void save_top() const {
    const Ran drafted = (*this)(draft({"--id", "deck-top", "--save", "--author", "fitter 1"}));
    ASSERT_EQ(drafted.status, 0) << drafted.err;
  }
  static std::vector<std::string> draft(const std::vector<std::string>& more) {
    std::vector<std::string> words = {"draft", "knit-top"};
    for (const char* measure :
         {"bust-girth=96cm", "waist-girth=820mm", "hip-girth=101 cm", "neck-base-girth=39cm",
          "head-girth=57cm", "shoulder-length=12.6cm", "across-back-width=35.6 cm",
          "across-front-width=33 cm", "back-waist-length=40.8cm", "front-waist-length=43.2cm",
          "scye-depth=20.6cm", "upper-arm-girth=30.2cm"}) {
      words.insert(words.end(), {"--measure", measure});
    }
    words.insert(words.end(), more.begin(), more.end());
    return words;
  }

 private:
  Scratch scratch_;
};

/// Exit status, and on standard error the place and the mend.
inline void expect_refused(const Ran& run, int status, const std::string& place,
                           const std::string& mend) {
  EXPECT_EQ(run.status, status) << run.err << run.out;
  EXPECT_NE(run.err.find(place), std::string::npos) << "no place " << place << " in " << run.err;
  EXPECT_NE(run.err.find("mend: "), std::string::npos) << run.err;
  EXPECT_NE(run.err.find(mend), std::string::npos) << "no mend " << mend << " in " << run.err;
  EXPECT_TRUE(run.out.empty()) << run.out;
}

}  // namespace pinwright::api
