#pragma once
// What a command needs before it can start: knowledge, store, the block, files.

#include <memory>
#include <string>
#include <vector>

#include "api/cli/options.h"
#include "api/desk/desk.h"
#include "engine/base/result.h"

namespace pinwright::api::cli {

enum class With { nothing, knowledge, store, both };

/// --store, or $PINWRIGHT_STORE, or $XDG_DATA_HOME/pinwright/pinwright.db, or
/// ~/.local/share/pinwright/pinwright.db. "store-missing" when none of them tells a place.
Result<std::string> store_path(const Options& options);

/// --knowledge, or the folder of the source tree, or the installed one; over it --overlay, or the
/// folders of $PINWRIGHT_OVERLAY; over these `more`. A folder named twice stands where it comes
/// first.
std::vector<std::string> knowledge_folders(const Options& options,
                                           const std::vector<std::string>& more = {});

Result<std::unique_ptr<Desk>> open_desk(const Options& options, With with);

/// True when BLOCK is a path: it has a slash, ends in .json, or such a file is there.
bool is_file(const std::string& block);

/// The block of --BLOCK: from its file, or from the store (revision `number`, 0 for the latest).
/// "revision-of-file" when a revision is asked of a file.
Result<Subject> find_subject(Desk& desk, const Options& options, int number = 0);

Result<Json> read_json_file(const std::string& path);
/// Written beside and then moved into place, so that a file is whole or as it was; "-" is standard
/// output. "file-not-written".
Problems write_file(const std::string& path, const std::string& text);

}  // namespace pinwright::api::cli
