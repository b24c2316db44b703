#include "api/desk/revision_json.h"

namespace pinwright::api {

namespace {

Json number_or_null(const std::optional<int>& number) { return number ? Json(*number) : Json(); }

Json stored(const std::string& text) {
  Json value = Json::parse(text, nullptr, false);
  return value.is_discarded() ? Json() : value;
}

}  // namespace

Json revision_line_to_json(const RevisionLine& line) {
  return {{"block", line.block},
          {"revision", line.number},
          {"etag", line.etag()},
          {"parent", number_or_null(line.parent)},
          {"restores", number_or_null(line.restores)},
          {"author", line.author},
          {"reason", line.reason},
          {"time", line.time},
          {"name", line.name},
          {"kind", line.kind},
          {"size", line.size}};
}

Json revision_to_json(const Revision& revision) {
  Json out = revision_line_to_json(revision.line);
  out["tryon"] = stored(revision.body.tryon);
  out["steps"] = stored(revision.body.steps);
  out["notes"] = stored(revision.body.notes);
  out["proof"] = stored(revision.body.proof);
  out["geometry"] = stored(revision.body.geometry);
  return out;
}

}  // namespace pinwright::api
