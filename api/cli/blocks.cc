// Commands on blocks and their revisions: draft, save, check, draw, history, restore, blocks.

#include <iostream>

#include "api/cli/commands.h"
#include "api/cli/requests.h"
#include "api/cli/say.h"
#include "api/cli/session.h"
#include "api/cli/table.h"

namespace pinwright::api::cli {

namespace {

std::string say_draft(const Json& draft) {
  const Json& block = draft["block"];
  return "Drafted: " + block.value("id", "") + " (" + block.value("kind", "") + "), " +
         std::to_string(block["pieces"].size()) + " pieces\n\n" + say_proof(draft["proof"]);
}

std::string say_blocks(const Json& list) {
  Table table({{"block"}, {"rev", Table::Align::right}, {"kind"}, {"size"}, {"name"}, {"reason"}});
  for (const Json& line : list["blocks"]) {
    table.add({line.value("block", ""), std::to_string(line.value("revision", 0)),
               line.value("kind", ""), line.value("size", ""), line.value("name", ""),
               line.value("reason", "")});
  }
  return table.empty() ? "No blocks are saved.\n" : table.text();
}

With with_store(const Options& options) {
  return is_file(options.block) ? With::nothing : With::store;
}

}  // namespace

int run_draft(const Options& options) {
  const auto request = draft_request(options);
  if (!request) return finish(options, request.problems());
  auto desk = open_desk(options, options.save ? With::store : With::nothing);
  if (!desk) return finish(options, desk.problems());
  const Outcome outcome = (*desk)->draft(*request);
  if (!outcome.ok() || options.save) return finish(options, outcome, say_saved);
  if (!options.output.empty() && outcome.reply().pass) {
    const Problems problems = write_file(options.output, dump(outcome.reply().body["block"]));
    if (!problems.empty()) return finish(options, problems);
    if (options.output == "-") return 0;
  }
  const int status = finish(options, outcome, say_draft);
  if (!options.json && status == 0) {
    std::cout << (options.output.empty()
                      ? "Nothing is kept: write it with -o FILE, or keep it with --save.\n"
                      : "Block: " + options.output + "\n");
  }
  return status;
}

int run_save(const Options& options) {
  auto block = read_json_file(options.block);
  if (!block) return finish(options, block.problems());
  Json request = {{"block", std::move(block).value()}};
  if (!options.author.empty()) request["author"] = options.author;
  if (!options.reason.empty()) request["reason"] = options.reason;
  auto desk = open_desk(options, With::store);
  if (!desk) return finish(options, desk.problems());
  return finish(options, (*desk)->save(request), say_saved);
}

int run_check(const Options& options) {
  auto desk = open_desk(options, with_store(options));
  if (!desk) return finish(options, desk.problems());
  const auto subject = find_subject(**desk, options, options.revision);
  if (!subject) return finish(options, subject.problems());
  return finish(options, (*desk)->check(*subject), say_check);
}

int run_draw(const Options& options) {
  auto desk = open_desk(options, with_store(options));
  if (!desk) return finish(options, desk.problems());
  const bool change = options.from != 0;
  const auto subject = find_subject(**desk, options, change ? options.to : options.revision);
  if (!subject) return finish(options, subject.problems());
  Result<std::string> drawing = Problem{};
  if (change) {
    const auto before = find_subject(**desk, options, options.from);
    if (!before) return finish(options, before.problems());
    drawing = (*desk)->draw_change(*before, *subject);
  } else {
    drawing = (*desk)->draw(*subject);
  }
  if (!drawing) return finish(options, drawing.problems());
  const Problems problems = write_file(options.output, *drawing);
  if (!problems.empty()) return finish(options, problems);
  if (options.output == "-") return 0;
  Reply reply;
  reply.body = {{"drawing", options.output}};
  return finish(options, reply,
                [](const Json& done) { return "Drawing: " + done.value("drawing", "") + "\n"; });
}

int run_history(const Options& options) {
  auto desk = open_desk(options, With::store);
  if (!desk) return finish(options, desk.problems());
  return finish(options, (*desk)->revisions(options.block), say_history);
}

int run_blocks(const Options& options) {
  auto desk = open_desk(options, With::store);
  if (!desk) return finish(options, desk.problems());
  return finish(options, (*desk)->blocks(), say_blocks);
}

int run_restore(const Options& options) {
  Json request = {{"revision", options.revision}, {"reason", options.reason}};
  if (!options.author.empty()) request["author"] = options.author;
  auto desk = open_desk(options, With::store);
  if (!desk) return finish(options, desk.problems());
  const Base base{options.if_revision, ""};
  return finish(options, (*desk)->restore(options.block, base, request), say_saved);
}

}  // namespace pinwright::api::cli
