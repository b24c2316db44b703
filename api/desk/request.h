#pragma once
// The requests as they come in JSON, read in one pass with all their faults.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "api/exchange/json.h"
#include "engine/alteration/step.h"
#include "engine/pattern/tryon.h"
#include "knowledge/joint.h"
#include "knowledge/model.h"
#include "knowledge/understand.h"
#include "knowledge/words/listener.h"

namespace pinwright::api {

class ObjectReader;

/// What was seen and asked at a try-on: {"words", "findings", "answers": {sign: "present" |
/// "absent" | "unknown"}, "wearer", "fabric", "style": [feature], "asked": [sign]}; all of it
/// optional.
struct Told {
  std::string words;
  std::vector<Finding> findings;
  std::vector<std::pair<std::string, FindingState>> answers;  ///< in the order given
  std::optional<Wearer> wearer;
  std::optional<Fabric> fabric;
  std::vector<std::string> style;  ///< what the garment has beside its block: "sleeveless"
  std::vector<std::string> asked;  ///< signs asked about before, answered or not
  bool empty() const { return words.empty() && findings.empty() && answers.empty(); }
};

/// Findings may be those of an answer of ours: its null amounts and `takes_up_mm` are passed over.
/// A fabric is an object or the id of a cloth that is known (fabrics.h).
Told read_told(ObjectReader& in, Problems& problems);

/// "together": true, or {"proposals": [ids]?, "body": true?}: proposals of the advice on what was
/// told, sized together (knowledge/joint.h). Nothing when it is absent or false.
std::optional<knowledge::JointWish> read_together(ObjectReader& in, Problems& problems);

/// A change of a block: what was told, and either steps, or a proposal of the advice on it, or
/// several of its proposals sized together ("together", with ...told...).
/// {"steps": [...]} or {"proposal": id, ...told..., "amounts": [null | "12 mm half" | {"amount_mm":
/// 12, "of": "half"}, ...]} (the k-th for the k-th step that has an amount; null or a shorter list
/// leaves the amount as proposed); "geometry": true asks for the altered block in the answer.
struct ChangeRequest {
  std::vector<Step> steps;
  std::string proposal;
  struct Amount {
    double amount = 0.0;   ///< mm, or a plain number for a ratio
    std::optional<Of> of;  ///< not said: as proposed
    std::string place;
    bool plain = false;  ///< a number without unit: only right for a ratio
  };
  std::vector<std::optional<Amount>> amounts;
  std::optional<knowledge::JointWish> together;
  Told told;
  bool geometry = false;
  std::string author;
  std::string reason;
};

/// With `to_be_saved`, "reason" is required and "author" allowed. Steps of an answer of ours may be
/// sent back as they are: `text`, `limit`, `assumed`, `worth_making`, what a joint sizing says of a
/// step, and nulls are passed over.
ChangeRequest read_change(const Json& body, bool to_be_saved, Problems& problems);

/// "field-missing" for a reason that is empty or blank.
std::string read_reason(ObjectReader& in);

/// The try-on on a block of this kind: findings from words, from the list and from the answers;
/// each checked against the knowledge. An answer to a sign that the words or the list already tell
/// the other way is refused ("answer-contradicts"); told the same way it changes nothing. What the
/// words left less than sure is settled by an answer, one way or the other. The style is that of
/// the words and of the list ("feature-unknown"). What was asked is what the list says and every
/// sign that is answered.
struct Heard {
  TryOn tryon;
  /// What the words told besides; its findings are those of the try-on, which begin with them.
  knowledge::Understood remarks;
};
Result<Heard> hear(const knowledge::Knowledge& k, const knowledge::Listener& listener,
                   const std::string& kind, const Told& told);

}  // namespace pinwright::api
