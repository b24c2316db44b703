#pragma once
// The rows of handbook_rows.yaml, read strictly: what is not understood is a problem, never
// skipped.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "engine/base/result.h"
#include "engine/base/units.h"
#include "knowledge/advise.h"

namespace pinwright::knowledge::testing {

/// "close-wedge piece=front edge=neckline", "swing-shoulder less".
struct WantedStep {
  std::string text;
  std::string operation;
  std::vector<std::pair<std::string, std::string>> options;
  bool less = false;  ///< goes the operation's other way

  /// An option that the step does not name stands at the catalogue's first value. Which way a step
  /// goes is looked at where it has an amount; sew and choose have no way.
  bool is(const ProposedStep& step) const;
};

struct WantedAmount {
  double mm = 0.0;
  Of of = Of::whole;
};

struct HandbookRow {
  std::string id;
  int line = 0;
  int row = 0;
  std::string kind;
  std::vector<std::string> style;
  std::string signs;
  std::vector<std::string> causes;
  std::vector<WantedStep> alteration;
  std::vector<WantedStep> alternatives;
  std::optional<WantedAmount> found;
  std::optional<WantedAmount> amount;
  std::string measure;
  std::optional<double> least;  ///< bounds of |amount|
  std::optional<double> most;
};

struct HandbookRows {
  std::vector<HandbookRow> rows;
  std::vector<int> left_out;  ///< each with a reason
};

/// Problems name file and line: a key that is not known, a field missing, an operation that the
/// catalogue has not, a kind, feature or cause that the knowledge has not, a source that is neither
/// one of its publications nor "common practice" or "from memory", an id twice.
Result<HandbookRows> read_handbook_rows(const Knowledge& k, const std::string& file);

}  // namespace pinwright::knowledge::testing
