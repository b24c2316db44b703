#pragma once
// One function a command. Each gives the exit status: 0 done and the proof passes, 1 the proof
// failed, 2 bad input, 3 refused for another reason (stale revision, exists already, store).

#include "api/cli/options.h"

namespace pinwright::api::cli {

int run_draft(const Options& options);
int run_foresee(const Options& options);
int run_describe(const Options& options);
int run_advise(const Options& options);
/// Asks on standard output, reads answers from standard input, ends with the advice.
int run_consult(const Options& options);
int run_alter(const Options& options);
int run_check(const Options& options);
int run_draw(const Options& options);
int run_history(const Options& options);
int run_restore(const Options& options);
int run_save(const Options& options);
int run_blocks(const Options& options);
int run_bodies(const Options& options);
int run_knowledge_list(const Options& options);
int run_knowledge_show(const Options& options);
int run_knowledge_check(const Options& options);
int run_knowledge_score(const Options& options);
/// Until SIGINT or SIGTERM; SIGHUP loads the knowledge anew.
int run_serve(const Options& options);

}  // namespace pinwright::api::cli
