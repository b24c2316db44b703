#pragma once
// Try-ons as people told them, each with what an expert would find and accept: the measure of how
// well the knowledge understands.
//
//   tryons:
//     - id: b-neck-3
//       kind: knit-top
//       style: [sleeveless]              may be left out
//       words: The neck stands away about 2 cm each side, but the bust is fine.
//       findings:                        every finding that a careful reader takes from the words
//         - {sign: front-neckline-gapes, mm: 20, of: half}
//         - {sign: bust-drag-lines, absent: true}
//       causes: [hollow-chest]           each accepted as the first answer

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// One finding that should be read. `mm` is cloth taken up or a distance; absent: not asked for.
struct WantedFinding {
  std::string sign;
  bool absent = false;
  std::optional<double> mm;
  std::optional<Of> of;
  Place place;
};

struct DescribedTryOn {
  std::string id;
  std::string kind;
  std::vector<std::string> style;
  std::string words;
  std::vector<WantedFinding> findings;
  std::vector<std::string> causes;
  Place place;
};

/// Which half an id falls into: by the parity of its FNV-1a hash (32 bit; G. Fowler, L. C. Noll,
/// K.-P. Vo, 1991). True: the half that is looked at while the knowledge is written.
bool in_used_half(std::string_view id);
std::uint32_t fnv1a(std::string_view text);

/// Reads one file. Errors: those of read_yaml(), "file-unreadable", and with "file:line":
/// "tryon-unsound" (id, kind, words, findings or causes missing), "sign-unknown", "cause-unknown",
/// "kind-unknown", "feature-unknown", "id-twice".
Result<std::vector<DescribedTryOn>> read_described(const Knowledge& k, const std::string& file);

}  // namespace pinwright::knowledge
