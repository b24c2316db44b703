#include "refusal_table.h"

#include <cstdio>

namespace pinwright {
namespace {

constexpr const char* kNotHere = "operation-not-here";

int total(const std::map<std::string, int>& counts) {
  int sum = 0;
  for (const auto& [code, count] : counts) sum += count;
  return sum;
}

int of(const std::map<std::string, int>& counts, const char* code) {
  const auto at = counts.find(code);
  return at == counts.end() ? 0 : at->second;
}

std::string without_numbers(const std::string& text) {
  std::string kept;
  for (const char c : text) {
    const bool digit = (c >= '0' && c <= '9') || c == '.';
    if (!digit) kept += c;
    if (digit && (kept.empty() || kept.back() != '#')) kept += '#';
  }
  return kept.substr(0, 150);
}

double percent(int part, int whole) { return whole == 0 ? 0.0 : 100.0 * part / whole; }

void print_row(const std::string& name, const std::map<std::string, int>& counts) {
  std::printf("  %-52s %6d  done %5.1f %%", name.c_str(), total(counts),
              percent(of(counts, ""), total(counts)));
  for (const auto& [code, count] : counts)
    if (!code.empty()) std::printf("  %s %d", code.c_str(), count);
  std::printf("\n");
}

}  // namespace

void RefusalTable::sequence(bool all_done, bool any_done) {
  ++sequences_;
  all_done_ += all_done ? 1 : 0;
  some_done_ += any_done && !all_done ? 1 : 0;
}

void RefusalTable::step(const std::string& operation, const Problem& problem,
                        const std::string& first) {
  ++steps_[operation][problem.code];
  if (first.empty()) return;
  ++firsts_[first][problem.code];
  if (!problem.code.empty() && problem.code != kNotHere)
    ++why_[first][without_numbers(problem.what)];
}

void RefusalTable::took(double seconds, const std::string& step) {
  if (seconds > slowest_) slowest_ = seconds, slowest_step_ = step;
}

double RefusalTable::first_done() const {
  int done = 0;
  int asked = 0;
  for (const auto& [name, counts] : firsts_) {
    done += of(counts, "");
    asked += total(counts) - of(counts, kNotHere);
  }
  return asked == 0 ? 0.0 : static_cast<double>(done) / asked;
}

std::string RefusalTable::never_done() const {
  std::string names;
  for (const auto& [name, counts] : steps_) {
    int elsewhere = 0;
    for (const char* code : {kNotHere, "operation-unknown"}) elsewhere += of(counts, code);
    if (of(counts, "") == 0 && total(counts) >= 20 && 2 * elsewhere < total(counts))
      names += " " + name;
  }
  return names;
}

void RefusalTable::print(const std::string& title) const {
  int steps = 0;
  int done = 0;
  std::map<std::string, int> codes;
  for (const auto& [name, counts] : steps_) {
    steps += total(counts);
    done += of(counts, "");
    for (const auto& [code, count] : counts) codes[code] += count;
  }
  std::printf("\n%s: %d sequences, %.1f %% done whole, %.1f %% in part; %d steps, %.1f %% done\n",
              title.c_str(), sequences_, percent(all_done_, sequences_),
              percent(some_done_, sequences_), steps, percent(done, steps));
  std::printf("slowest step %.3f s: %s\n", slowest_, slowest_step_.c_str());
  print_row("all", codes);
  for (const auto& [name, counts] : steps_) print_row(name, counts);
  std::printf(
      "first steps by plausible amounts: %.1f %% done where there is a place for them; "
      "those under 95 %%:\n",
      100.0 * first_done());
  for (const auto& [name, counts] : firsts_) {
    const int here = total(counts) - of(counts, kNotHere);
    if (here == 0 || of(counts, "") >= 0.95 * here) continue;
    print_row(name, counts);
    const auto why = why_.find(name);
    if (why == why_.end()) continue;
    for (const auto& [what, count] : why->second)
      std::printf("      %4d x %s\n", count, what.c_str());
  }
}

}  // namespace pinwright
