#pragma once
// Signs by the likeness of their words: SQLite's full-text index (FTS5), in memory.

#include <memory>
#include <string>
#include <vector>

#include "knowledge/words/features.h"

namespace pinwright::knowledge {

class Likeness {
 public:
  /// A row a sign with the columns of its profile; nothing refers to the features afterwards.
  explicit Likeness(const Features& features);
  ~Likeness();
  Likeness(Likeness&&) noexcept;
  Likeness& operator=(Likeness&&) noexcept;

  /// The signs that have any of the features, best first by BM25 (S. Robertson, K. Spärck Jones;
  /// as FTS5 computes it) with weights 4, 3, 2, 1, 3 for name, phrases, zone, question and
  /// tellings. One thread
  /// at a time looks up; the others wait.
  std::vector<std::size_t> nearest(const std::vector<FeatureId>& features, std::size_t most) const;

 private:
  struct Index;
  std::unique_ptr<Index> index_;
};

}  // namespace pinwright::knowledge
