#pragma once
// What the terminal shows. Every text is made from the very object that --json prints.

#include <string>

#include "api/cli/options.h"
#include "api/desk/outcome.h"

namespace pinwright::api::cli {

std::string say_advice(const Json& advice);
/// What is to be expected before sewing: findings with amounts and cures, measures, proposals.
std::string say_foresight(const Json& foresight);
std::string say_proposals(const Json& proposals);
std::string say_findings(const Json& described);
/// Seams, bindings, joins, outlines, what moved, measures, failures.
std::string say_proof(const Json& proof);
/// What was sized together: steps with their amounts, measures with the part of each step, what
/// stayed where it was, what cannot be had.
std::string say_together(const Json& together);
/// What was sized together, notes and proof of a preview or of a new revision.
std::string say_change(const Json& change);
std::string say_check(const Json& check);
std::string say_history(const Json& history);
std::string say_saved(const Json& revision);
std::string say_knowledge(const Json& overview);
std::string say_section(const Json& section);
/// What each folder adds to the one before and what it replaces; of the first, only its name.
std::string say_layers(const Json& layers);
std::string say_entry(const Json& entry);

/// Shares a file, and with `wrong` listed: what was missed, read beside, answered.
std::string say_score(const Json& score);

/// "pinwright: place: what" and the mend, for standard error.
std::string say_problems(const Problems& problems);
/// The same for what is no fault: "place: what" and the mend.
std::string say_remarks(const Problems& remarks);

/// 9.04 -> "9.0 mm"; never "-0.0".
std::string mm(double value);
/// The same in centimetres: 924 -> "92.4 cm".
std::string cm(double value_mm);

/// Prints the reply (through `say`, or as JSON) or the refusal, and gives the exit status.
int finish(const Options& options, const Outcome& outcome,
           std::string (*say)(const Json&) = nullptr);
int finish(const Options& options, const Problems& problems);

}  // namespace pinwright::api::cli
