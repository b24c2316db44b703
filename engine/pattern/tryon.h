#pragma once
// What was seen at a try-on.

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/units.h"
#include "engine/pattern/fabric.h"
#include "engine/pattern/side.h"
#include "engine/pattern/wearer.h"

namespace pinwright {

enum class FindingState { present, absent, not_looked_at };
/// How an amount was taken. A pinned fold of depth d takes up 2 d of cloth.
enum class Taken { unsaid, fold_depth, cloth, gap, let_out, distance };

std::string_view to_text(FindingState state);
std::string_view to_text(Taken taken);
std::string_view to_text(Of of);
std::optional<FindingState> finding_state(std::string_view text);
std::optional<Taken> taken(std::string_view text);
std::optional<Of> of(std::string_view text);

/// An amount as it was said: a number that names what it counts.
struct FoundAmount {
  double mm = 0.0;
  Of of = Of::whole;
  Taken taken = Taken::unsaid;
  /// The cloth too much or lacking: twice the depth of a pinned fold, else mm itself.
  double cloth_mm() const { return taken == Taken::fold_depth ? 2.0 * mm : mm; }
  bool operator==(const FoundAmount&) const = default;
};

struct Finding {
  std::string sign;  ///< id of a sign of the knowledge
  std::string zone;  ///< front-neckline, bust, front-armhole, ...
  Side side = Side::both;
  std::optional<FoundAmount> amount;
  FindingState state = FindingState::present;
  std::string posture;  ///< as seen when: "standing", "leaning forward", "arm raised"; may be empty
  std::string words;    ///< the very words it came from; empty when picked from a list
  /// Where the words stand in the text, in bytes [begin, end); end is 0 without a text.
  std::size_t begin = 0;
  std::size_t end = 0;
  /// How sure it is that this was meant, in (0, 1]: 1 as told or picked, less when the words were
  /// hedged ("maybe") or the sign was supposed from words like its own. Soft evidence.
  double sure = 1.0;
  bool operator==(const Finding&) const = default;
};

struct TryOn {
  std::string block;
  int revision = 0;
  std::optional<Wearer> wearer;
  std::optional<Fabric> fabric;
  std::vector<Finding> findings;
  /// What the garment tried on is or has beside its block, as told: ids of features, "sleeveless".
  std::vector<std::string> style;
  /// Signs asked about so far, in order; they are not asked about again.
  std::vector<std::string> asked;
  bool operator==(const TryOn&) const = default;
};

}  // namespace pinwright
