#include "api/cli/say.h"

#include <fmt/format.h>

#include <cmath>
#include <iostream>

#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

/// Rounds first, so that no minus stands before a zero.
double tenth(double value) {
  const double rounded = std::round(value * 10.0) / 10.0;
  return rounded == 0.0 ? 0.0 : rounded;
}

}  // namespace

std::string mm(double value) { return fmt::format("{:.1f} mm", tenth(value)); }
std::string cm(double value_mm) { return fmt::format("{:.1f} cm", tenth(value_mm / 10.0)); }

std::string say_problems(const Problems& problems) {
  std::string out;
  for (const Problem& problem : problems) {
    out += "pinwright: ";
    if (!problem.place.empty()) out += problem.place + ": ";
    out += problem.what + "\n";
    if (!problem.mend.empty()) out += paragraph("  mend: ", problem.mend);
  }
  return out;
}

std::string say_remarks(const Problems& remarks) {
  std::string out;
  for (const Problem& remark : remarks) {
    out += paragraph("  ", remark.place + ": " + remark.what);
    out += paragraph("      ", remark.mend);
  }
  return out;
}

int finish(const Options& options, const Outcome& outcome, std::string (*say)(const Json&)) {
  if (outcome.ok()) {
    const Reply& reply = outcome.reply();
    std::cout << (options.json || say == nullptr ? dump(reply.body) : say(reply.body));
    return reply.pass ? 0 : 1;
  }
  const Refusal& refusal = outcome.refusal();
  if (options.json) {
    std::cout << dump(problem_details(refusal));
  } else {
    std::cerr << say_problems(refusal.problems);
  }
  return exit_status(refusal.fault);
}

int finish(const Options& options, const Problems& problems) {
  return finish(options, refuse(problems));
}

}  // namespace pinwright::api::cli
