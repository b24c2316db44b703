#include "api/store/rows.h"

#include <string_view>

namespace pinwright::api {

namespace {

// Both statements name these columns first and in this order.
RevisionLine read_line(const Query& row) {
  RevisionLine line;
  line.block = row.text(0);
  line.number = static_cast<int>(row.number(1));
  if (const auto parent = row.maybe_number(2)) line.parent = static_cast<int>(*parent);
  if (const auto restores = row.maybe_number(3)) line.restores = static_cast<int>(*restores);
  line.author = row.text(4);
  line.reason = row.text(5);
  line.time = row.text(6);
  line.name = row.text(7);
  line.kind = row.text(8);
  line.size = row.text(9);
  line.hash = row.text(10);
  return line;
}

std::optional<std::int64_t> maybe(const std::optional<int>& number) {
  if (!number) return std::nullopt;
  return *number;
}

}  // namespace

std::optional<RevisionLine> latest_line(Database& db, const std::string& block) {
  Query query = db.query(
      "SELECT block, number, parent, restores, author, reason, time, name, kind, size, hash "
      "FROM revisions WHERE block = ? ORDER BY number DESC LIMIT 1");
  query.bind(block);
  if (!query.step()) return std::nullopt;
  return read_line(query);
}

std::optional<Revision> find_revision(Database& db, const std::string& block, int number) {
  Query query = db.query(
      "SELECT block, number, parent, restores, author, reason, time, name, kind, size, hash, "
      "tryon, steps, notes, proof, geometry FROM revisions WHERE block = ? AND number = ?");
  query.bind(block).bind(std::int64_t{number});
  if (!query.step()) return std::nullopt;
  return Revision{read_line(query),
                  {query.text(11), query.text(12), query.text(13), query.text(14), query.text(15)}};
}

std::vector<RevisionLine> block_lines(Database& db) {
  // The latest revision of each block is sought by the index on (block, number).
  Query query = db.query(
      "SELECT r.block, r.number, r.parent, r.restores, r.author, r.reason, r.time, r.name, r.kind, "
      "r.size, r.hash FROM blocks AS b JOIN revisions AS r ON r.block = b.id AND r.number = "
      "(SELECT max(number) FROM revisions WHERE block = b.id) ORDER BY b.id");
  std::vector<RevisionLine> lines;
  while (query.step()) lines.push_back(read_line(query));
  return lines;
}

std::vector<RevisionLine> revision_lines(Database& db, const std::string& block) {
  Query query = db.query(
      "SELECT block, number, parent, restores, author, reason, time, name, kind, size, hash "
      "FROM revisions WHERE block = ? ORDER BY number");
  query.bind(block);
  std::vector<RevisionLine> lines;
  while (query.step()) lines.push_back(read_line(query));
  return lines;
}

void insert_block(Database& db, const std::string& id, const std::string& time) {
  Query query = db.query("INSERT INTO blocks (id, created) VALUES (?, ?)");
  query.bind(id).bind(time).run();
}

void insert_revision(Database& db, const Revision& revision) {
  Query query = db.query(
      "INSERT INTO revisions (block, number, parent, restores, author, reason, time, name, kind, "
      "size, hash, tryon, steps, notes, proof, geometry) "
      "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  const RevisionLine& line = revision.line;
  const RevisionBody& body = revision.body;
  query.bind(line.block)
      .bind(std::int64_t{line.number})
      .bind(maybe(line.parent))
      .bind(maybe(line.restores))
      .bind(line.author)
      .bind(line.reason)
      .bind(line.time)
      .bind(line.name)
      .bind(line.kind)
      .bind(line.size)
      .bind(line.hash)
      .bind(body.tryon)
      .bind(body.steps)
      .bind(body.notes)
      .bind(body.proof)
      .bind(body.geometry)
      .run();
}

std::optional<Answered> find_answered(Database& db, const std::string& key) {
  Query query = db.query("SELECT hash, block, number FROM requests WHERE key = ?");
  query.bind(key);
  if (!query.step()) return std::nullopt;
  return Answered{query.text(0), query.text(1), static_cast<int>(query.number(2))};
}

void insert_answered(Database& db, const std::string& key, const Answered& answered,
                     const std::string& time) {
  Query query =
      db.query("INSERT INTO requests (key, hash, block, number, time) VALUES (?, ?, ?, ?, ?)");
  query.bind(key)
      .bind(answered.hash)
      .bind(answered.block)
      .bind(std::int64_t{answered.number})
      .bind(time)
      .run();
}

void forget_answered(Database& db, const std::string& time) {
  Query query = db.query("DELETE FROM requests WHERE time < ?");
  query.bind(time).run();
}

}  // namespace pinwright::api
