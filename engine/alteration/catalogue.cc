#include "engine/alteration/catalogue.h"

#include <cmath>
#include <cstdio>
#include <string>

#include "engine/base/nearest_word.h"

namespace pinwright {
namespace {

// No line drawn can show less; a dart of less has legs that lie on each other.
constexpr double kNothingMm = 1e-4;

// Smallest amounts: 3 mm (1/8 in) woven, 6 mm (1/4 in) knit are common practice; the woven one
// stands here, since a sum of several steps may be worth making where one alone is not.
// Largest amounts: common practice, 1/2 in on a side edge (2 in in all), 3/4 in on a shoulder's
// slope, 3/4 in a side at a neck edge, 1 1/2 in on the half front for a full bust; 1/2 in on a knit
// cap's ease, 5/8 in on a cap's height, 3/4 in along the armhole, 1 in at the elbow, 3/8 in on a
// curve.
const std::vector<OperationInfo>& table() {
  static const std::vector<OperationInfo> operations = {
      {"close-wedge",
       "Close a wedge",
       "Cut from the edge to the hinge and overlap at the edge. At the bust point the bust dart "
       "takes up what the wedge gives, in a dartless knit the eased side length does; at the "
       "armhole the shoulder turns; at the hem the piece also loses a little width. The strip or "
       "the sleeve follows the edge.",
       AmountKind::half,
       "closes the wedge; negative opens it",
       3.0,
       20.0,
       {{"piece", {"front", "back"}, false},
        {"edge", {"neckline", "armhole"}, true},
        {"hinge", {"bust-point", "shoulder-blade-point", "armhole", "hem"}, true}}},
      {"lower-neckline",
       "Lower the neckline",
       "Redraw the neckline lower at the centre, running out to nothing at the neck point; the "
       "strip follows.",
       AmountKind::distance,
       "lowers; negative raises",
       3.0,
       40.0,
       {{"piece", {"front", "back"}, false}}},
      {"widen-neckline",
       "Widen the neckline",
       "Move the neck point out along the shoulder on front and back alike and redraw both "
       "necklines; the strip follows.",
       AmountKind::distance,
       "widens; negative fills in",
       3.0,
       30.0,
       {}},
      {"swing-shoulder",
       "Swing the shoulder",
       "Lower the shoulder point of front and back, running out to nothing at the neck point. When "
       "the armhole follows, its base is lowered by the same and the sleeve fits as before.",
       AmountKind::distance,
       "lowers the shoulder point; negative raises it",
       3.0,
       19.0,
       {{"armhole", {"follows", "stays"}, false}}},
      {"move-shoulder-tip",
       "Recut the armhole at the shoulder",
       "Shorten the shoulder at its outer end on front and back and run the armhole out to nothing "
       "toward the notches; the sleeve cap follows.",
       AmountKind::distance,
       "shortens the shoulder; negative lengthens it",
       3.0,
       25.0,
       {}},
      // 1/4 to 1/2 in is usual, 3/4 in much: common practice.
      {"shift-shoulder-seam",
       "Shift the shoulder seam",
       "Lower the shoulder tip of the front and raise that of the back by the same, running out to "
       "nothing at the neck point, or shift the whole seam parallel. The cloth as sewn stays the "
       "same; the top of the sleeve goes with the seam.",
       AmountKind::distance,
       "shifts the seam forward; negative backward",
       3.0,
       19.0,
       {{"from", {"tip", "whole"}, false}}},
      // 1/4 to 3/4 in: common practice.
      {"shorten-chest",
       "Fold out the upper chest",
       "Cut the front across above the bust from the centre to the armhole notch and overlap at "
       "the "
       "centre; the centre front is drawn straight again, neckline, shoulder and armhole keep "
       "their "
       "lengths.",
       AmountKind::distance,
       "shortens the centre front above the bust; negative spreads",
       3.0,
       19.0,
       {}},
      // Hertz adds 1/2 in for a stooping back; up to 3/4 in common practice.
      {"lengthen-upper-back",
       "Lengthen the upper back",
       "Cut the back across the blades from the centre to the armhole notch and spread at the "
       "centre, which stays on the fold. The shoulder dart takes up what shoulder and neck would "
       "gain; without a dart the shoulder turns about its tip, or gets longer and is eased in.",
       AmountKind::distance,
       "lengthens the centre back; negative folds out",
       3.0,
       19.0,
       {{"surplus", {"taken-up", "eased"}, false}}},
      // The back neck is some 20 mm deep: up to 1/2 in, common practice.
      {"raise-back-neck",
       "Raise the back neck",
       "Lift the back neckline at the centre with its shape and length kept; what the shoulder "
       "gains "
       "goes into its dart, or is eased in.",
       AmountKind::distance,
       "raises; negative lowers",
       3.0,
       12.7,
       {}},
      // 1/4 in is enough for an extreme stoop: Hertz, pp. 49 and 88-89 (men's garments).
      {"move-armhole-forward",
       "Move the armhole forward",
       "Scoop the front armhole half way up and fill the back armhole by the same; it is moved, "
       "not "
       "enlarged. Shoulder and side seam stay; the sleeve cap follows.",
       AmountKind::distance,
       "forward; negative backward",
       3.0,
       6.35,
       {}},
      // 1/2 in on an edge (1 in across in all): common practice.
      {"widen-back",
       "Widen across the back",
       "Move the back armhole out half way up, running out to underarm and shoulder, or add a "
       "strip "
       "from shoulder to hem. A longer back shoulder is eased in or goes into its dart; the sleeve "
       "cap follows.",
       AmountKind::half,
       "widens; negative narrows",
       3.0,
       12.7,
       {{"way", {"armhole", "whole"}, false}}},
      {"widen-chest",
       "Widen across the chest",
       "Move the front armhole out half way up, running out to underarm and shoulder, or add a "
       "strip "
       "from shoulder to hem; the sleeve cap follows.",
       AmountKind::half,
       "widens; negative narrows",
       3.0,
       12.7,
       {{"way", {"armhole", "whole"}, false}}},
      // The shoulder dart of a block takes up some 12 mm; up to 3/8 in more, common practice.
      {"deepen-blade-dart",
       "Deepen the shoulder dart",
       "Cut the back from the shoulder dart through the blade to the hinge and turn the outer part "
       "until the dart takes up more; the sewn shoulder keeps its length. A back without a dart "
       "gets "
       "a longer shoulder that is eased in.",
       AmountKind::half,
       "takes up more; negative less",
       3.0,
       9.5,
       {{"hinge", {"armhole", "waist"}, false}}},
      // Up to 1 in, beyond that a waist seam or a centre back seam: common practice.
      {"tuck-back-waist",
       "Tuck the back at the waist",
       "Fold out at the centre back waist, running out to nothing at the side seam, which stays; "
       "the "
       "centre back is drawn straight again. The amount is what was pinned, never halved.",
       AmountKind::distance,
       "folds out; negative lets out",
       3.0,
       25.4,
       {}},
      // 1/8 to 1/4 in at a time (FB1964, part 5); up to 3/4 in at a neck edge, common practice.
      {"resize-neckline",
       "Make the whole neckline larger",
       "Redraw the neckline parallel to itself on front and back alike: down at the centres, out "
       "along the shoulders; the strip follows.",
       AmountKind::distance,
       "enlarges; negative makes smaller",
       3.0,
       19.0,
       {}},
      // Common practice, as for the shoulder seam.
      {"move-neck-forward",
       "Move the neck forward",
       "Lower the front neckline and raise the back neckline by the same at centre and neck point; "
       "the shoulder seam turns about its tip, all lengths are kept.",
       AmountKind::distance,
       "forward; negative backward",
       3.0,
       12.7,
       {}},
      {"lower-underarm",
       "Lower the underarm",
       "Lower the base of the armhole on front, back and sleeve alike and redraw the curves.",
       AmountKind::distance,
       "lowers; negative raises",
       3.0,
       25.0,
       {}},
      {"let-out-side",
       "Let out the side seam",
       "Move the side edges of front and back out, each by half of the amount, at one level "
       "(running out to nothing at the others) or at all; the sleeve follows at the underarm.",
       AmountKind::half,
       "lets out; negative takes in",
       3.0,
       25.4,
       {{"level", {"all", "bust", "waist", "hem"}, false}}},
      {"full-bust",
       "Spread over the bust",
       "Cut the half front through the bust point and swing the side part out; the bust dart, or "
       "in a dartless knit the eased side length, takes up the length that opens; a front without "
       "a dart gets one at the side when asked for. The back stays.",
       AmountKind::half,
       "spreads; negative overlaps for a small bust",
       3.0,
       38.0,
       {{"takes-up", {"as-drawn", "new-dart"}, false}}},
      {"lengthen-over-bust",
       "Lengthen over the bust",
       "Cut the front across at the bust level, hinged at the back edge of the side seam, and "
       "spread at the centre front; the bust dart or the eased side length takes it up.",
       AmountKind::distance,
       "lengthens; negative shortens",
       3.0,
       25.4,
       {}},
      {"lengthen",
       "Lengthen on the line",
       "Cut across on the lengthening line and spread parallel; the side seams are trued.",
       AmountKind::distance,
       "lengthens; negative shortens",
       3.0,
       100.0,
       {{"piece", {"body", "sleeve"}, false}}},
      {"widen-upper-arm",
       "Spread the sleeve at the upper arm",
       "Cut the sleeve lengthwise and across at the upper arm and spread; the cap sinks and is "
       "redrawn to the length that the armhole asks for.",
       AmountKind::whole,
       "widens; negative narrows",
       3.0,
       50.0,
       {}},
      {"raise-cap",
       "Raise the sleeve cap",
       "Move the crown up. The cap keeps its length and the sleeve gets narrower at the upper arm, "
       "or the upper arm keeps its width and the cap gets more ease. Front and back stay.",
       AmountKind::distance,
       "raises; negative lowers",
       3.0,
       16.0,
       {{"gives", {"upper-arm", "ease"}, false}}},
      {"ease-cap",
       "Ease the sleeve cap",
       "Lengthen the cap above its notches, a little more at the back than at the front, and draw "
       "the crown to it; what it is longer is eased into the armhole.",
       AmountKind::whole,
       "adds ease; negative takes ease out",
       3.0,
       12.7,
       {}},
      {"turn-sleeve",
       "Turn the sleeve in the armhole",
       "Shift the cap along the armhole so that the sleeve hangs further forward, its underarm "
       "seam "
       "swinging with it; or leave the underarm and shift the crown alone. Both halves of the cap "
       "stay as long as their armholes.",
       AmountKind::distance,
       "turns forward; negative turns backward",
       3.0,
       20.0,
       {{"underarm", {"follows", "stays"}, false}}},
      {"widen-sleeve-hem",
       "Widen the sleeve at its hem",
       "Swing the underarm seams out at the hem, running out to nothing at the underarm; the cap "
       "keeps height, width and length.",
       AmountKind::whole,
       "widens; negative narrows",
       3.0,
       60.0,
       {}},
      {"ease-elbow",
       "Give room at the elbow",
       "Cut the back half of a long sleeve across at the elbow and spread it at the back seam, "
       "which is eased in between two notches.",
       AmountKind::distance,
       "adds ease at the elbow; negative takes it out",
       3.0,
       25.4,
       {}},
      {"flare-hem",
       "Flare the hem",
       "Move the side edges of front and back out below the waist, each by half of the amount at "
       "the hem, running out to nothing at the waist.",
       AmountKind::half,
       "flares; negative pegs",
       3.0,
       32.0,
       {}},
      {"scoop-edge",
       "Hollow an edge",
       "Move the armhole at its notch, or the neckline half way, into the cloth, running out to "
       "nothing at both ends; sleeve or strip follow.",
       AmountKind::distance,
       "hollows; negative fills",
       3.0,
       9.5,
       {{"piece", {"front", "back"}, false}, {"edge", {"armhole", "neckline"}, true}}},
      {"let-out-dart",
       "Let out the waist dart",
       "Sew the waist dart of one piece shallower; the waist gets wider by the amount.",
       AmountKind::half,
       "lets out; negative takes in",
       3.0,
       12.7,
       {{"piece", {"front", "back"}, false}}},
      {"move-bust-point",
       "Move the bust point",
       "Move the bust point and its darts up or down, or sideways; a dart's mouth slides along its "
       "seam, an eased side moves its bust notches. Back and sleeve keep their lines.",
       AmountKind::distance,
       "up, or outward; negative down, or inward",
       3.0,
       25.4,
       {{"direction", {"up-down", "sideways"}, false}}},
      {"rotate-dart",
       "Move a dart to another seam",
       "Turn the cloth between two darts about the point of the first: it closes, wholly or by a "
       "share of its angle, and the other opens by the same angle; where the other seam has no "
       "dart "
       "one is made.",
       AmountKind::ratio,
       "share of the dart, 1 for all of it",
       0.1,
       1.0,
       {{"piece", {"front", "back"}, false},
        {"from", {"side", "shoulder", "waist"}, true},
        {"to", {"side", "shoulder", "waist"}, true}}},
      {"divide-dart",
       "Divide a dart in two",
       "Open a second dart in the same seam, so far from the first, and give it half of the first "
       "one's angle.",
       AmountKind::distance,
       "divides; negative joins the two again",
       15.0,
       38.0,
       {{"piece", {"front", "back"}, false}, {"seam", {"side", "shoulder", "waist"}, false}}},
      {"ease-dart",
       "Let a dart go into ease",
       "Sew a dart shallower and ease the width that it gives into its seam; a dart that gives all "
       "is taken out and its seam drawn in one line.",
       AmountKind::distance,
       "lets the dart go; negative takes ease up into a dart",
       3.0,
       12.7,
       {{"piece", {"front", "back"}, false}, {"seam", {"side", "shoulder"}, false}}},
      {"lengthen-dart",
       "Lengthen a dart",
       "Move the dart's point nearer to the bust point or the shoulder blade, its mouth stays as "
       "wide.",
       AmountKind::distance,
       "lengthens; negative shortens",
       3.0,
       25.4,
       {{"piece", {"front", "back"}, false}, {"seam", {"side", "shoulder", "waist"}, false}}},
      {"set-binding-ratio",
       "Cut the strip to another ratio",
       "The strip's length becomes ratio times the opening on the stitching line; cut from the "
       "rib, "
       "its own stretch is not held against the head.",
       AmountKind::ratio,
       "strip : opening",
       0.5,
       1.2,
       {{"binding", {"neck-binding"}, false}, {"cloth", {"as-is", "shell", "rib"}, false}}},
      {"sew",
       "Change the sewing or pressing",
       "No line of the pattern moves.",
       AmountKind::none,
       "a length to note",
       0.0,
       0.0,
       {}},
      {"choose",
       "Choose another size or cloth",
       "No line of the pattern moves.",
       AmountKind::none,
       "a length to note",
       0.0,
       0.0,
       {}},
  };
  return operations;
}

void check_options(const OperationInfo& info, const Step& step, const std::string& prefix,
                   Problems& problems) {
  for (const auto& [key, value] : step.options) {
    const OptionInfo* option = nullptr;
    std::vector<std::string_view> keys;
    for (const OptionInfo& o : info.options) {
      keys.push_back(o.key);
      if (o.key == key) option = &o;
    }
    if (option == nullptr) {
      problems.push_back({"option-unknown", prefix + "/" + key,
                          "'" + std::string(info.id) + "' has no option '" + key + "'",
                          keys.empty() ? "leave it out: this operation takes no options"
                                       : "did you mean '" + nearest_word(key, keys) + "'?"});
      continue;
    }
    bool known = false;
    std::string all;
    for (const std::string_view v : option->values) {
      known = known || v == value;
      all += (all.empty() ? "" : ", ") + std::string(v);
    }
    if (!known) {
      problems.push_back({"option-value", prefix + "/" + key,
                          "'" + value + "' is no " + key + " of '" + std::string(info.id) + "'",
                          "use one of: " + all});
    }
  }
  for (const OptionInfo& o : info.options) {
    if (o.required && !step.options.contains(std::string(o.key))) {
      std::string all;
      for (const std::string_view v : o.values) all += (all.empty() ? "" : ", ") + std::string(v);
      problems.push_back({"option-missing", prefix + "/" + std::string(o.key),
                          "'" + std::string(info.id) + "' needs '" + std::string(o.key) + "'",
                          "give one of: " + all});
    }
  }
}

void check_amount(const OperationInfo& info, const Step& step, const std::string& prefix,
                  Problems& problems) {
  if (info.amount == AmountKind::ratio) {
    if (!std::isfinite(step.amount) || step.amount < info.least || step.amount > info.most) {
      char range[64];
      std::snprintf(range, sizeof range, "%.2g and %.2g", info.least, info.most);
      problems.push_back({"amount-range", prefix + "/amount",
                          std::to_string(step.amount) + " can not be meant here (" +
                              std::string(info.positive) + ")",
                          "give a plain number between " + std::string(range)});
    }
    return;
  }
  const std::string place = prefix + "/amount_mm";
  if (!std::isfinite(step.amount)) {
    problems.push_back({"amount-not-a-number", place, "the amount is not a number",
                        "give a length in millimetres, e.g. 9"});
    return;
  }
  if (info.amount == AmountKind::none) return;
  const bool halved = info.amount == AmountKind::half && step.of == Of::whole;
  const double amount = halved ? WholeMm(step.amount).half().mm() : step.amount;
  const double limit = 4.0 * info.most;
  if (std::abs(amount) > limit) {
    const auto whole_mm = [](double mm) { return std::to_string(std::lround(mm)) + " mm"; };
    problems.push_back({"amount-range", place,
                        whole_mm(step.amount) + " is more than '" + std::string(info.id) +
                            "' can be meant to do (" + whole_mm(halved ? 2.0 * limit : limit) +
                            " at the very most)",
                        "check the unit, or choose another size of the block"});
  } else if (std::abs(amount) < kNothingMm) {
    problems.push_back({"amount-range", place, "an amount of 0 changes nothing",
                        "give the length by which the line is to move, or leave the step out"});
  }
}

}  // namespace

std::span<const OperationInfo> operation_catalogue() { return table(); }

const OperationInfo* find_operation(std::string_view id) {
  for (const OperationInfo& info : table())
    if (info.id == id) return &info;
  return nullptr;
}

Problems check_step(const Step& step, std::string_view prefix) {
  Problems problems;
  const std::string at(prefix);
  const OperationInfo* info = find_operation(step.operation);
  if (info == nullptr) {
    std::vector<std::string_view> ids;
    for (const OperationInfo& o : table()) ids.push_back(o.id);
    return {{"operation-unknown", at + "/operation",
             "there is no operation '" + step.operation.substr(0, 80) + "'",
             "did you mean '" + nearest_word(step.operation, ids) + "'?"}};
  }
  check_options(*info, step, at, problems);
  check_amount(*info, step, at, problems);
  return problems;
}

}  // namespace pinwright
