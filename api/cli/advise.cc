// Commands that need the knowledge alone: advise, describe, knowledge.

#include "api/cli/commands.h"
#include "api/cli/requests.h"
#include "api/cli/say.h"
#include "api/cli/session.h"

namespace pinwright::api::cli {

int run_advise(const Options& options) {
  const auto request = told_request(options);
  if (!request) return finish(options, request.problems());
  auto desk = open_desk(options, is_file(options.block) ? With::knowledge : With::both);
  if (!desk) return finish(options, desk.problems());
  const auto subject = find_subject(**desk, options, options.revision);
  if (!subject) return finish(options, subject.problems());
  return finish(options, (*desk)->advise(*subject, *request), say_advice);
}

int run_foresee(const Options& options) {
  const auto request = foresight_request(options);
  if (!request) return finish(options, request.problems());
  auto desk = open_desk(options, is_file(options.block) ? With::knowledge : With::both);
  if (!desk) return finish(options, desk.problems());
  const auto subject = find_subject(**desk, options, options.revision);
  if (!subject) return finish(options, subject.problems());
  return finish(options, (*desk)->foresee(*subject, *request), say_foresight);
}

int run_describe(const Options& options) {
  Json request = {{"words", options.words}};
  if (!options.kind.empty()) request["kind"] = options.kind;
  auto desk = open_desk(options, With::knowledge);
  if (!desk) return finish(options, desk.problems());
  return finish(options, (*desk)->describe(request), say_findings);
}

int run_knowledge_list(const Options& options) {
  auto desk = open_desk(options, With::knowledge);
  if (!desk) return finish(options, desk.problems());
  return finish(options, (*desk)->list_knowledge(options.section),
                options.section.empty() ? say_knowledge : say_section);
}

int run_knowledge_show(const Options& options) {
  auto desk = open_desk(options, With::knowledge);
  if (!desk) return finish(options, desk.problems());
  return finish(options, (*desk)->show_knowledge(options.id), say_entry);
}

}  // namespace pinwright::api::cli
