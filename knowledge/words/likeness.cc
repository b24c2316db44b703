#include "knowledge/words/likeness.h"

#include <sqlite3.h>

#include <mutex>

namespace pinwright::knowledge {

struct Likeness::Index {
  sqlite3* database = nullptr;
  sqlite3_stmt* look_up = nullptr;
  std::mutex one_at_a_time;

  Index() = default;
  Index(const Index&) = delete;
  Index& operator=(const Index&) = delete;
  ~Index() {
    sqlite3_finalize(look_up);
    sqlite3_close(database);
  }

  /// Without memory or FTS5 there is no index, and nothing is near.
  bool open() {
    return sqlite3_open_v2(":memory:", &database,
                           SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX,
                           nullptr) == SQLITE_OK &&
           sqlite3_exec(database,
                        "CREATE VIRTUAL TABLE signs USING fts5(name, phrases, zone, question, "
                        "tellings, tokenize = 'ascii'); BEGIN",
                        nullptr, nullptr, nullptr) == SQLITE_OK;
  }

  void fill(const std::vector<Profile>& profiles) {
    sqlite3_stmt* insert = nullptr;
    sqlite3_prepare_v2(database,
                       "INSERT INTO signs(rowid, name, phrases, zone, question, tellings) "
                       "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                       -1, &insert, nullptr);
    for (std::size_t s = 0; insert != nullptr && s < profiles.size(); ++s) {
      sqlite3_bind_int64(insert, 1, static_cast<sqlite3_int64>(s) + 1);
      for (int column = 0; column < 5; ++column) {
        const std::string& text = profiles[s].columns[static_cast<std::size_t>(column)];
        sqlite3_bind_text(insert, column + 2, text.data(), static_cast<int>(text.size()),
                          SQLITE_TRANSIENT);
      }
      sqlite3_step(insert);
      sqlite3_reset(insert);
    }
    sqlite3_finalize(insert);
  }

  void finish() {
    sqlite3_exec(database, "COMMIT; INSERT INTO signs(signs) VALUES ('optimize')", nullptr, nullptr,
                 nullptr);
    sqlite3_prepare_v3(database,
                       "SELECT rowid FROM signs WHERE signs MATCH ?1 "
                       "ORDER BY bm25(signs, 4.0, 3.0, 2.0, 1.0, 3.0), rowid LIMIT ?2",
                       -1, SQLITE_PREPARE_PERSISTENT, &look_up, nullptr);
  }

  /// Rows that have any of the features, best first, counted from 0.
  std::vector<std::size_t> ask(sqlite3_stmt* statement, const std::vector<FeatureId>& features,
                               std::size_t most) {
    std::vector<std::size_t> found;
    std::string query;
    for (FeatureId f : features) query += (query.empty() ? "" : " OR ") + Features::word(f);
    if (query.empty() || statement == nullptr) return found;
    const std::lock_guard lock(one_at_a_time);
    sqlite3_bind_text(statement, 1, query.data(), static_cast<int>(query.size()), SQLITE_STATIC);
    sqlite3_bind_int64(statement, 2, static_cast<sqlite3_int64>(most));
    while (sqlite3_step(statement) == SQLITE_ROW) {
      found.push_back(static_cast<std::size_t>(sqlite3_column_int64(statement, 0)) - 1);
    }
    sqlite3_reset(statement);
    sqlite3_clear_bindings(statement);
    return found;
  }
};

Likeness::Likeness(const Features& features) : index_(std::make_unique<Index>()) {
  if (!index_->open()) return;
  index_->fill(features.profiles());
  index_->finish();
}
Likeness::~Likeness() = default;
Likeness::Likeness(Likeness&&) noexcept = default;
Likeness& Likeness::operator=(Likeness&&) noexcept = default;

std::vector<std::size_t> Likeness::nearest(const std::vector<FeatureId>& features,
                                           std::size_t most) const {
  return index_->ask(index_->look_up, features, most);
}

}  // namespace pinwright::knowledge
