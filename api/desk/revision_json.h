#pragma once
#include "api/exchange/json.h"
#include "api/store/revision.h"

namespace pinwright::api {

/// {block, revision, etag, parent, restores, author, reason, time, name, kind, size}; parent and
/// restores are null where there is none.
Json revision_line_to_json(const RevisionLine& line);

/// The line with try-on, steps, notes, proof and the block itself. The texts in the store are our
/// own; one that does not parse is written as null.
Json revision_to_json(const Revision& revision);

}  // namespace pinwright::api
