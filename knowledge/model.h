#pragma once
// What a fitter knows, as loaded from YAML. Plain data; loading and checking: load.h.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "engine/alteration/catalogue.h"
#include "engine/diagnosis/network.h"
#include "engine/pattern/tryon.h"

namespace pinwright::knowledge {

/// Where something stands in the files, for errors.
struct Place {
  std::string file;
  int line = 0;  ///< 1-based, of the entry
  /// Line of each field of the entry: "zone", "phrases/2" (the third), "prior_by_kind/knit-top".
  std::map<std::string, int> fields = {};

  /// The place of the very field; of the entry where the field has no line of its own.
  Place of(const std::string& field) const {
    const auto it = fields.find(field);
    return {file, it == fields.end() ? line : it->second};
  }
};

/// Ground of a statement: a publication (key into sources.yaml), "common practice" or
/// "from memory".
struct Source {
  std::string key;
  std::string where;  ///< page, section; may be empty
};

struct Zone {
  std::string id;  ///< front-neckline, bust, front-armhole, shoulder, upper-arm, hem, ...
  std::string name;
  std::vector<std::string> kinds;     ///< block kinds that have it; empty: all
  std::vector<std::string> features;  ///< features that a garment must have to have it
  Place place = {};
};

/// What a garment has or is, beside its block kind: sleeve, sleeveless, bound-neckline, lined, ...
/// Known from the block, or told in words (class style-<id> of the words).
struct Feature {
  std::string id;
  std::string name;
  std::vector<std::string> with;     ///< features that it brings: long-sleeve brings sleeve
  std::vector<std::string> without;  ///< features that it rules out: sleeveless rules out sleeve
  Place place = {};
};

/// What an amount told with a sign counts.
enum class Counts { girth, distance, none };

struct Sign {
  std::string id;
  std::string name;  ///< one plain line: "Front neckline stands off the chest"
  std::string zone;
  Counts counts = Counts::none;
  Of default_of = Of::whole;  ///< when the words do not say each side or all together
  bool sided = false;         ///< left/right can differ
  /// A plainer sign that is seen whenever this one is ("crosswise folds at the waist", tension not
  /// told, of "slack crosswise folds at the waist"); empty: none. What makes this makes that.
  std::string kind_of;
  double leak = 0.02;
  std::string ask;    ///< the question that looks for it; empty: never asked
  double cost = 1.0;  ///< of asking: 1 a look, 2 a pinch or a tape, 5 unpicking a seam
  std::vector<std::string> phrases;  ///< in the knowledge's own words; grammar: words/phrases.h
  /// Phrases that say it is not so without a "not" ("fine at the bust"): found, the sign is absent.
  std::vector<std::string> denied_by;
  std::vector<Source> sources;
  Place place = {};
};

struct Makes {
  std::string sign;
  double strength = 0.5;  ///< P(seen | only this cause)
  std::string ground;     ///< where the figure comes from ("judged from memory", a source)
  Place place = {};
};

/// One step of a remedy; the amount is an expression (expression.h) over what was found.
struct RemedyStep {
  std::string operation;
  std::map<std::string, std::string> options;
  std::string amount;    ///< source text; empty for sew / choose without a length
  std::optional<Of> of;  ///< what the expression yields, where it matters
  std::string text;      ///< what to do, one sentence, {amount} is filled in
  Place place = {};
};

struct Remedy {
  std::string id;  ///< proposal id
  std::string name;
  std::vector<std::string> kinds;  ///< block kinds it suits; empty: all
  std::string suits;               ///< the case it suits, where remedies stand side by side
  std::vector<RemedyStep> steps;
  std::optional<double>
      usual_mm;             ///< taken for the finding's amount when none was told (marked so)
  Of usual_of = Of::whole;  ///< what usual_mm counts; no matter for a length
  std::optional<double> smallest_mm;  ///< smallest amount worth making, as the first step takes it
  std::optional<double> largest_mm;   ///< beyond it another way is better
  std::string beyond;                 ///< that other way, in words
  std::vector<std::string> follow;  ///< what follows, in words: "neck binding shorter by the same"
  std::vector<Source> sources;
  Place place = {};
};

/// The prior where a garment has all of these features (block kinds count as features).
struct PriorWhen {
  std::vector<std::string> features;
  double prior = 0.05;  ///< 0 where the cause cannot hold
  Place place = {};
};

struct Cause {
  std::string id;
  std::string name;
  CauseKind kind = CauseKind::body;
  std::string what;  ///< what the body, the pattern, the sewing or the cloth does
  double prior = 0.05;
  std::map<std::string, double> prior_by_kind;  ///< by block kind
  std::vector<PriorWhen> prior_when;            ///< the first that applies wins over all others
  std::vector<Makes> makes;
  /// Phrases that tell the cause itself ("I have square shoulders", "the edge was pulled in
  /// sewing"). They become the sign said-<id>, which only this cause makes; see told_signs.h.
  std::vector<std::string> told_by;
  std::string check;  ///< how to tell it from its rivals
  std::vector<Remedy> remedies;
  std::vector<Source> sources;
  Place place = {};
};

/// One of the published problems: what ties signs and rival causes together for a reader.
struct FitProblem {
  std::string id;
  std::string name;
  std::string sign;                 ///< leading sign
  std::vector<std::string> causes;  ///< rivals, at least two
  std::vector<std::string> kinds;
  Place place = {};
};

/// A garment-minus-body measure that speaks for a sign (measured.h). All three amounts are
/// expressions (expression.h) of one dimension: a length, or of the whole or of the half.
struct Measured {
  std::string id;
  std::string sign;
  std::vector<std::string> kinds;  ///< block kinds it is read on; empty: all
  std::string amount;              ///< over garment., body., ease., fabric.
  std::string from;                ///< up to it the amount says nothing
  std::string sure;                ///< from it on it says all it can
  double surest = 0.9;             ///< how sure that is
  std::string text;                ///< in plain words, {amount} is filled in
  std::vector<Source> sources;
  Place place = {};
};

/// Posture notes by their words, and the cause that they speak of.
struct PostureNote {
  std::string id;
  std::string cause;
  std::vector<std::string> words;
  double prior = 0.5;  ///< of the cause where it is noted
  std::vector<Source> sources;
  Place place = {};
};

/// A set of words that mean the same; referred to in phrases as <id>.
struct WordClass {
  std::string id;
  std::vector<std::string> words;  ///< single words or short runs of words
  Place place = {};
};

/// How different people told one sign, or one cause itself, in their own words: whole sentences,
/// which the reader goes by where no phrase fits. They stand apart from the entry, in files of
/// their own.
struct Telling {
  std::string about;  ///< id of a sign, or of a cause that can be told by itself (told_by)
  std::vector<std::string> said;
  Place place = {};
};

struct Publication {
  std::string key;
  std::string title;  ///< as a reader would look it up
  Place place = {};
};

/// An entry that stood in an earlier folder and was replaced by one of a later folder.
struct Replaced {
  std::string sort;  ///< "sign", "cause", ... as in entries
  std::string id;
  Place was = {};
  Place is = {};
};

struct Knowledge {
  std::vector<std::string> folders;  ///< it was loaded from, later ones laid over earlier ones
  std::vector<Replaced> replaced;    ///< in the order of the folders
  std::vector<std::string> kinds;  ///< block kinds this knowledge speaks of: knit-top, woven-bodice
  std::vector<Feature> features;
  std::vector<Zone> zones;
  std::vector<Sign> signs;
  std::vector<Cause> causes;
  std::vector<FitProblem> problems;
  std::vector<Measured> measured;
  std::vector<PostureNote> postures;
  std::vector<WordClass> words;
  std::vector<Telling> tellings;
  std::vector<Publication> publications;
};

const Sign* find_sign(const Knowledge& k, const std::string& id);
const Cause* find_cause(const Knowledge& k, const std::string& id);
const Zone* find_zone(const Knowledge& k, const std::string& id);

}  // namespace pinwright::knowledge
