#pragma once
// What the store keeps: a block's revisions, each written once and never changed.

#include <optional>
#include <string>

namespace pinwright::api {

/// Where a revision comes from and what it is called, without its contents.
struct RevisionLine {
  std::string block;
  int number = 0;               ///< 1, 2, 3, ...
  std::optional<int> parent;    ///< the revision that was current before; none for the first
  std::optional<int> restores;  ///< the revision whose geometry was put back
  std::string author;
  std::string reason;
  std::string time;  ///< UTC, ISO 8601 with milliseconds: 2031-04-05T06:07:08.090Z
  std::string name;  ///< the block's name, kind and size as of this revision
  std::string kind;
  std::string size;
  std::string hash;  ///< SHA-256 of the geometry's text, hexadecimal

  /// Names this revision and its contents: "<number>-<first 16 digits of the hash>". Two revisions
  /// of a block never share it, even when one restores the other. Without quotes.
  std::string etag() const { return std::to_string(number) + "-" + hash.substr(0, 16); }
};

/// The contents; all of them JSON texts, kept byte for byte.
struct RevisionBody {
  std::string tryon = "null";
  std::string steps = "[]";
  std::string notes = "[]";  ///< what each step did, in words
  std::string proof = "null";
  std::string geometry = "{}";
};

struct Revision {
  RevisionLine line;
  RevisionBody body;
};

/// A revision to be written; the store adds number, parent, time and hash.
struct NewRevision {
  std::string author;
  std::string reason;
  std::string name;
  std::string kind;
  std::string size;
  RevisionBody body;
};

}  // namespace pinwright::api
