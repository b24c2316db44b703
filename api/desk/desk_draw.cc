// Drawings of blocks and of changes.

#include "api/desk/changed.h"
#include "api/desk/desk.h"
#include "api/desk/request.h"
#include "api/drawing/draw.h"

namespace pinwright::api {

namespace {

DrawOptions options_for(const Subject& subject) {
  DrawOptions options;
  if (subject.revision != 0) options.revision = subject.revision;
  return options;
}

/// What one revision did, as far as it was written down.
void add_notes(const Revision& revision, std::vector<StepNote>& notes) {
  if (revision.line.restores) {
    notes.push_back({0, "put back revision " + std::to_string(*revision.line.restores), {}, {}});
    return;
  }
  const Json stored = Json::parse(revision.body.notes, nullptr, false);
  if (!stored.is_array()) return;
  for (const Json& note : stored) {
    if (!note.is_object()) continue;
    StepNote out;
    out.step = notes.size();
    out.text = note.value("text", "");
    out.pieces = note.value("pieces", std::vector<std::string>());
    out.follow = note.value("follow", std::vector<std::string>());
    notes.push_back(std::move(out));
  }
}

}  // namespace

Result<std::string> Desk::draw(const Subject& subject) const {
  return draw_svg(*subject.block, options_for(subject));
}

Result<std::string> Desk::draw_change(const Subject& before, const Subject& after) const {
  std::vector<StepNote> notes;
  // What was done is known going forward only, from revision to revision of the store.
  for (int n = before.revision + 1; before.revision != 0 && n <= after.revision; ++n) {
    const auto revision = store_->read(after.block->id, n);
    if (!revision) return revision.problems();
    add_notes(*revision, notes);
  }
  const Proof proof = prove(*after.block, before.block.get());
  return draw_change_svg(*before.block, *after.block, notes, &proof, options_for(after));
}

Result<std::string> Desk::draw_preview(const Subject& subject, const Json& request) const {
  Problems problems;
  const ChangeRequest read = read_change(request, false, problems);
  if (!problems.empty()) return problems;
  const auto changed = change(subject, read);
  if (!changed) return changed.problems();
  return draw_change_svg(*subject.block, changed->altered.block, changed->altered.notes,
                         &changed->proof, options_for(subject));
}

}  // namespace pinwright::api
