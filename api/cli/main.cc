// pinwright: from a try-on told in words to an altered, proved and saved block.

#include <CLI/CLI.hpp>
#include <exception>
#include <iostream>
#include <new>

#include "api/cli/commands.h"
#include "api/cli/say.h"

namespace pinwright::api::cli {

namespace {

constexpr const char* kAbout =
    "From a try-on told in words to an altered, proved and saved block.\n"
    "BLOCK is the id of a saved block, or the path of a block's JSON file.\n"
    "Exit status: 0 done, 1 the proof failed, 2 bad input, 3 refused otherwise\n"
    "(stale revision, exists already, store).";

struct Command {
  CLI::App* app;
  int (*run)(const Options&);
};

void add_block(CLI::App& app, Options& o) {
  app.add_option("BLOCK", o.block, "Id of a saved block, or a block's JSON file")->required();
}

void add_told(CLI::App& app, Options& o, bool required) {
  auto* words = app.add_option("WORDS", o.words,
                               "What was seen: \"front neckline gapes, pinned out 2 cm in all\"");
  app.add_option("--answer", o.answers, "SIGN=present, absent or unknown; repeatable")
      ->allow_extra_args(false);
  auto* findings = app.add_option("--findings", o.findings, "JSON file with a list of findings");
  app.add_option("--wearer", o.wearer, "JSON file: {\"id\", \"body\": {measurements}}");
  app.add_option("--fabric", o.fabric, "JSON file of the cloth, or the id of a known one");
  app.add_option("--style", o.style,
                 "What the garment is beside its block: sleeveless, v-neck, lined; repeatable")
      ->allow_extra_args(false);
  (void)required;
  (void)words;
  (void)findings;
}

void add_together(CLI::App& app, Options& o) {
  app.add_flag("--together", o.together,
               "Size the proposals together: one set of amounts that meets all findings. Without "
               "--proposal: for each finding the first proposal on the pattern");
  app.add_flag("--body", o.body, "With --together: also bring the garment to body + ease");
}

void add_signed(CLI::App& app, Options& o) {
  app.add_option("--reason", o.reason, "Why, in a few words; kept with the revision");
  app.add_option("--author", o.author, "Who; kept with the revision");
}

Command draft(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("draft", "Draft a block from body measurements");
  app->add_option("KIND", o.kind, "knit-top or woven-bodice")->required();
  app->add_option("--measure", o.measures, "NAME=VALUE with a unit: bust-girth=92cm; repeatable")
      ->allow_extra_args(false);
  app->add_option("--measurements", o.measurements,
                  "JSON file: {name: mm or \"92 cm\"}, or a wearer");
  app->add_option("--fabric", o.fabric, "JSON file of the cloth, or the id of a known one");
  app->add_option("--ease", o.ease, "NAME=VALUE with a unit, whole garment; repeatable")
      ->allow_extra_args(false);
  app->add_option("--id", o.id, "Id of the block (default: KIND)");
  app->add_option("--name", o.name, "Name as written on the paper");
  app->add_option("--size", o.size, "Label of the size");
  app->add_option("-o,--output", o.output, "Write the block's JSON here; - for standard output");
  app->add_flag("--save", o.save, "Keep it in the store as revision 1");
  add_signed(*app, o);
  return {app, run_draft};
}

Command advise(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("advise", "Causes, the next question, and proposals");
  add_block(*app, o);
  add_told(*app, o, true);
  add_together(*app, o);
  app->add_option("--proposal", o.proposals, "With --together: only these proposals; repeatable")
      ->allow_extra_args(false);
  app->add_option("--revision", o.revision, "Revision of the block (default: the latest)")
      ->check(CLI::Range(1, 1000000));
  return {app, run_advise};
}

Command consult(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand(
      "consult", "Ask up to five questions, then advise; answers are read from standard input");
  add_block(*app, o);
  add_told(*app, o, false);
  app->add_option("--revision", o.revision, "Revision of the block (default: the latest)")
      ->check(CLI::Range(1, 1000000));
  return {app, run_consult};
}

Command foresee(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand(
      "foresee", "What a toile would show on this body, with amounts and cures, before it is sewn");
  add_block(*app, o);
  app->add_option("--wearer", o.wearer,
                  "JSON file: {\"id\", \"body\": {measurements}, \"posture\": [notes]} (default: "
                  "whom the block was drafted for)");
  app->add_option("--fabric", o.fabric, "JSON file of the cloth, or the id of a known one");
  app->add_option("--revision", o.revision, "Revision of the block (default: the latest)")
      ->check(CLI::Range(1, 1000000));
  return {app, run_foresee};
}

Command describe(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("describe", "What is understood of words, without a block");
  app->add_option("WORDS", o.words, "What was seen")->required();
  app->add_option("--kind", o.kind, "knit-top or woven-bodice");
  return {app, run_describe};
}

Command alter(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("alter", "Preview a change with its proof; --apply keeps it");
  add_block(*app, o);
  add_told(*app, o, false);
  app->add_option("--proposal", o.proposals,
                  "Id of a proposal of the advice on WORDS; several with --together")
      ->allow_extra_args(false);
  add_together(*app, o);
  app->add_option("--amount", o.amounts,
                  "Amount for the proposal's steps in their order: \"12 mm half\"; - as proposed")
      ->allow_extra_args(false);
  app->add_option("--steps", o.steps, "JSON file with a list of steps");
  app->add_option("--step", o.step,
                  "\"close-wedge piece=front edge=neckline hinge=bust-point amount=9mm of=half\"; "
                  "repeatable")
      ->allow_extra_args(false);
  app->add_flag("--apply", o.apply, "Keep the change as a new revision");
  add_signed(*app, o);
  app->add_option("--if-revision", o.if_revision, "Only if this revision is still the current one")
      ->check(CLI::Range(1, 1000000));
  app->add_option("--drawing", o.drawing, "Write the drawing before and after here (SVG)");
  app->add_option("-o,--output", o.output, "Write the altered block's JSON here");
  return {app, run_alter};
}

Command check(CLI::App& root, Options& o) {
  auto* app =
      root.add_subcommand("check", "Walk every seam and prove that the pieces sew together");
  add_block(*app, o);
  app->add_option("--revision", o.revision, "Revision (default: the latest)")
      ->check(CLI::Range(1, 1000000));
  return {app, run_check};
}

Command draw(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("draw", "Draw a block, or a change between two revisions (SVG)");
  add_block(*app, o);
  auto* from = app->add_option("--from", o.from, "Revision before")->check(CLI::Range(1, 1000000));
  auto* revision = app->add_option("--revision", o.revision, "Revision (default: the latest)")
                       ->check(CLI::Range(1, 1000000));
  app->add_option("--to", o.to, "Revision after (default: the latest)")
      ->check(CLI::Range(1, 1000000))
      ->needs(from);
  from->excludes(revision);
  app->add_option("-o,--output", o.output, "SVG file; - for standard output")->required();
  return {app, run_draw};
}

Command history(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("history", "Revisions of a saved block");
  app->add_option("BLOCK", o.block, "Id of a saved block")->required();
  return {app, run_history};
}

Command blocks(CLI::App& root, Options&) {
  return {root.add_subcommand("blocks", "Saved blocks"), run_blocks};
}

Command restore(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("restore", "A new revision equal to an older one");
  app->add_option("BLOCK", o.block, "Id of a saved block")->required();
  app->add_option("N", o.revision, "Revision to put back")
      ->required()
      ->check(CLI::Range(1, 1000000));
  add_signed(*app, o);
  app->get_option("--reason")->required();
  app->add_option("--if-revision", o.if_revision, "Only if this revision is the current one")
      ->check(CLI::Range(1, 1000000));
  return {app, run_restore};
}

Command bodies(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand(
      "bodies", "Fit many measured bodies: the share within 3 mm, before and after cure");
  app->add_option("PATH", o.block, "Table of a body survey (CSV with the columns of ANSUR II)")
      ->required();
  app->add_option("--kind", o.kind, "knit-top (default) or woven-bodice")
      ->check(CLI::IsMember({"knit-top", "woven-bodice"}));
  app->add_option("--fabric", o.fabric, "Id of a known cloth (default: the kind's usual one)");
  app->add_flag("--list", o.list, "Every body too, and how the columns are read");
  return {app, run_bodies};
}

Command save(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("save", "Keep a block's JSON file in the store as revision 1");
  app->add_option("FILE", o.block, "A block's JSON file")->required();
  add_signed(*app, o);
  return {app, run_save};
}

std::vector<Command> knowledge(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand("knowledge", "What is known of fit: signs, causes, remedies");
  app->require_subcommand(0, 1);
  auto* list = app->add_subcommand("list", "All ids, or one section with names");
  list->add_option("SECTION", o.section,
                   "problems, signs, causes, zones, operations or layers (which folder told what)");
  auto* show = app->add_subcommand("show", "One entry with its phrases and sources");
  show->add_option("ID", o.id, "Id of a problem, sign, cause, remedy, zone or operation")
      ->required();
  auto* checked = app->add_subcommand(
      "check", "Prove sound; tell file and line of what is not, and what each folder adds");
  checked->add_option("FOLDER", o.folders, "Folders (or files) of YAML laid over the knowledge");
  checked->add_flag("--strict", o.strict, "Remarks count as faults too");
  auto* scored = app->add_subcommand(
      "score", "How well described try-ons are read, and whether an accepted cause comes first");
  scored->add_option("FILE", o.tryons, "YAML files of try-ons with their findings and causes")
      ->required();
  scored->add_flag("--show", o.show, "Also list every try-on that is not read or answered rightly");
  // The inner ones come first: with none of them the list is meant.
  return {{list, run_knowledge_list},
          {show, run_knowledge_show},
          {checked, run_knowledge_check},
          {scored, run_knowledge_score},
          {app, run_knowledge_list}};
}

Command serve(CLI::App& root, Options& o) {
  auto* app = root.add_subcommand(
      "serve", "Answer over HTTP until SIGINT or SIGTERM; SIGHUP loads the knowledge anew");
  app->add_option("--port", o.port, "Port; 0 for any free one")->capture_default_str();
  app->add_option("--address", o.address, "Address to listen on")->capture_default_str();
  app->add_option("--token-file", o.token_file,
                  "File with the token that requests must bear; needed beyond this machine");
  return {app, run_serve};
}

int refuse_line(const CLI::App& root, const Options& options, const CLI::ParseError& error) {
  if (error.get_exit_code() == 0) return root.exit(error);  // --help, --version
  const std::string name =
      root.get_subcommands().empty() ? "" : " " + root.get_subcommands().front()->get_name();
  return finish(options, Problems{{"command-line", "command line", std::string(error.what()) + ".",
                                   "See `pinwright" + name + " --help`."}});
}

int run(int argc, char** argv) {
  Options options;
  CLI::App root(kAbout, "pinwright");
  root.set_version_flag("--version", "pinwright " PINWRIGHT_VERSION);
  root.require_subcommand(1);
  root.fallthrough();
  root.get_formatter()->column_width(26);
  root.add_flag("--json", options.json, "Print the same object that the HTTP service answers with");
  root.add_option("--store", options.store,
                  "Database file (default: $PINWRIGHT_STORE, or pinwright/pinwright.db below "
                  "$XDG_DATA_HOME or ~/.local/share)");
  root.add_option("--knowledge", options.knowledge,
                  "Folder of knowledge (YAML) instead of the built-in one; repeatable")
      ->allow_extra_args(false);
  root.add_option("--overlay", options.overlay,
                  "Folder (or one file) of your own, laid over the knowledge: an entry with the "
                  "same id replaces; repeatable (default: $PINWRIGHT_OVERLAY, folders between :)")
      ->allow_extra_args(false);
  std::vector<Command> commands = {
      draft(root, options),   advise(root, options),   consult(root, options),
      foresee(root, options), describe(root, options), alter(root, options),
      check(root, options),   draw(root, options),     history(root, options),
      blocks(root, options),  restore(root, options),  save(root, options),
      bodies(root, options)};
  for (const Command& command : knowledge(root, options)) commands.push_back(command);
  commands.push_back(serve(root, options));
  // --json must be known even when the rest of the line cannot be read.
  for (int i = 1; i < argc; ++i) options.json = options.json || std::string(argv[i]) == "--json";
  try {
    root.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return refuse_line(root, options, error);
  }
  for (const Command& command : commands) {
    if (command.app->parsed()) return command.run(options);
  }
  return 2;
}

}  // namespace

}  // namespace pinwright::api::cli

int main(int argc, char** argv) {
  try {
    return pinwright::api::cli::run(argc, argv);
  } catch (const std::bad_alloc&) {
    std::cerr << "pinwright: out of memory; nothing was changed by this command.\n";
  } catch (const std::exception& failed) {
    std::cerr << "pinwright: something failed in the program itself: " << failed.what() << "\n";
  }
  return 3;
}
