// pinwright alter: preview on a block, and with --apply the new revision (or the new file).

#include <iostream>

#include "api/cli/commands.h"
#include "api/cli/requests.h"
#include "api/cli/say.h"
#include "api/cli/session.h"

namespace pinwright::api::cli {

namespace {

Problems check(const Options& options, bool file) {
  Problems problems;
  if (options.apply && options.reason.empty()) {
    problems.push_back({"field-missing", "--reason", "No reason is given.",
                        "Say in a few words why the block is changed: --reason \"...\"."});
  }
  if (options.apply && file && options.output.empty()) {
    problems.push_back({"output-missing", options.block,
                        "A file holds no revisions, so there is nowhere to apply the change.",
                        "Write the altered block with -o FILE, or first `pinwright save " +
                            options.block + "` and name the block by its id."});
  }
  if (file && options.if_revision != 0) {
    problems.push_back({"revision-of-file", options.block, "A file has no revisions.",
                        "Leave out --if-revision, or name a block of the store."});
  }
  return problems;
}

/// Writes the altered geometry where it is asked for and takes it out of the answer.
Problems write_geometry(const Options& options, Json& body) {
  if (!body.contains("geometry")) return {};
  const Json geometry = body["geometry"];
  body.erase("geometry");
  return options.output.empty() ? Problems{} : write_file(options.output, dump(geometry));
}

Problems write_drawing(Desk& desk, const Options& options, const Subject& subject,
                       const Json& request) {
  if (options.drawing.empty()) return {};
  const auto drawing = desk.draw_preview(subject, request);
  return drawing ? write_file(options.drawing, *drawing) : drawing.problems();
}

}  // namespace

int run_alter(const Options& options) {
  const bool file = is_file(options.block);
  if (const Problems problems = check(options, file); !problems.empty()) {
    return finish(options, problems);
  }
  auto request = change_request(options);
  if (!request) return finish(options, request.problems());
  if (!options.output.empty()) (*request)["geometry"] = true;
  const bool needs_knowledge = !options.proposals.empty() || options.together ||
                               !options.words.empty() || !options.answers.empty() ||
                               !options.findings.empty();
  const With with = file ? (needs_knowledge ? With::knowledge : With::nothing)
                         : (needs_knowledge ? With::both : With::store);
  auto desk = open_desk(options, with);
  if (!desk) return finish(options, desk.problems());
  const auto subject = find_subject(**desk, options);
  if (!subject) return finish(options, subject.problems());

  Json to_save = *request;
  to_save["reason"] = options.reason;
  if (!options.author.empty()) to_save["author"] = options.author;
  const bool save = options.apply && !file;
  // Without --if-revision the base is the revision that this very command has looked at.
  const Base base = options.if_revision != 0 ? Base{options.if_revision, ""}
                                             : Base{subject->revision, subject->etag};
  Outcome outcome =
      save ? (*desk)->apply(options.block, base, to_save) : (*desk)->preview(*subject, *request);
  if (!outcome.ok()) return finish(options, outcome);
  Json& body = outcome.reply().body;
  Problems problems;
  // A file is only written when the pieces still sew together.
  if (outcome.reply().pass || options.output.empty()) {
    problems = write_geometry(options, body);
  } else {
    body.erase("geometry");
    std::cerr << "pinwright: " << options.output << " is not written: the proof failed.\n";
  }
  const Problems undrawn = write_drawing(**desk, options, *subject, *request);
  problems.insert(problems.end(), undrawn.begin(), undrawn.end());
  body["drawing"] = options.drawing.empty() || !undrawn.empty() ? Json() : Json(options.drawing);
  if (options.output == "-") {
    return problems.empty() ? (outcome.reply().pass ? 0 : 1) : finish(options, problems);
  }
  const int status = finish(options, outcome, say_change);
  if (!problems.empty()) {  // what was saved is saved: told first, then what could not be written
    std::cerr << say_problems(problems);
    return 2;
  }
  if (!options.json && !options.drawing.empty())
    std::cout << "Drawing: " << options.drawing << "\n";
  if (!options.json && !options.output.empty() && status == 0) {
    std::cout << "Altered block: " << options.output << "\n";
  }
  return status;
}

}  // namespace pinwright::api::cli
