#pragma once
// How many described try-ons are read rightly and end in a cause that an expert accepts.

#include <string>
#include <vector>

#include "engine/base/result.h"
#include "knowledge/scoring/described.h"
#include "knowledge/words/listener.h"

namespace pinwright::knowledge {

/// What became of one try-on.
struct Scored {
  std::string id;
  bool first = false;  ///< the first cause is an accepted one
  bool among_three = false;
  std::size_t wanted = 0;             ///< findings that should be read
  std::size_t read = 0;               ///< of those, read with the right state and amount
  std::size_t beside = 0;             ///< findings read that nobody told
  std::vector<std::string> missed;    ///< "sign" or "no sign", in the order wanted
  std::vector<std::string> invented;  ///< what was read beside
  std::vector<std::string> causes;    ///< the first three, by id
  std::string refused;                ///< why nothing was read at all; may be empty
};

struct Score {
  std::size_t tryons = 0;
  std::size_t first = 0;
  std::size_t among_three = 0;
  std::size_t wanted = 0;
  std::size_t read = 0;
  std::size_t beside = 0;
  double first_share() const { return share(first, tryons); }
  double three_share() const { return share(among_three, tryons); }
  /// Findings read rightly, of those told.
  double read_share() const { return share(read, wanted); }
  /// Findings that were told, of those read.
  double true_share() const { return share(read, read + beside); }

 private:
  static double share(std::size_t part, std::size_t all) {
    return all == 0 ? 0.0 : static_cast<double>(part) / static_cast<double>(all);
  }
};

/// A finding counts as read when its sign has the right state, and its amount (where one is wanted)
/// is the same cloth within 0.5 mm and counts the same. A sign of which the wanted one is a kind,
/// or which is a kind of the wanted one, counts as the same sight. What the reader supposes
/// (Finding::sure below 1) counts like any other.
/// A sight denied beside ("fine" denies several) counts only when it was told as present; what
/// tells a cause itself (told_signs.h) tells no sight. A text that hear() refuses counts as not
/// read. Errors: those of advise(), with the try-on's place before them.
Result<Scored> score_one(const Knowledge& k, const Listener& listener, const DescribedTryOn& tryon);

Score sum(const std::vector<Scored>& all);

}  // namespace pinwright::knowledge
