#pragma once
// A small knowledge by hand, so that the reading of words is tested apart from the real content.

#include <array>
#include <cstdio>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "knowledge/model.h"
#include "knowledge/understand.h"
#include "knowledge/words/dictionary.h"

namespace pinwright::knowledge::test {

inline Sign make_sign(std::string id, std::string zone, Counts counts, Of of, bool sided,
                      std::vector<std::string> phrases, std::vector<std::string> denied_by = {}) {
  Sign sign;
  sign.id = std::move(id);
  sign.name = sign.id;
  sign.zone = std::move(zone);
  sign.counts = counts;
  sign.default_of = of;
  sign.sided = sided;
  sign.phrases = std::move(phrases);
  sign.denied_by = std::move(denied_by);
  return sign;
}

inline Knowledge small_knowledge() {
  Knowledge k;
  for (const auto& [id, name] :
       std::vector<std::pair<std::string, std::string>>{{"front-neckline", "Front neckline"},
                                                        {"back-neckline", "Back neckline"},
                                                        {"bust", "Bust"},
                                                        {"front-armhole", "Front armhole"},
                                                        {"armhole", "Armhole"},
                                                        {"shoulder", "Shoulder"},
                                                        {"upper-arm", "Upper arm"},
                                                        {"length", "Whole length"}}) {
    k.zones.push_back({id, name, {}, {}, {}});
  }
  k.zones.push_back({"sleeve-cap", "Sleeve cap", {"woven-bodice"}, {}, {}});

  k.words = {{"neckline", {"neckline", "neck", "neck edge", "collar line"}, {}},
             {"front", {"front", "in front"}, {}},
             {"back", {"back"}, {}},
             {"bust", {"bust", "chest", "bosom"}, {}},
             {"armhole", {"armhole", "armpit seam"}, {}},
             {"shoulder", {"shoulder", "shoulder seam"}, {}},
             {"upper-arm", {"upper arm", "biceps", "sleeve"}, {}},
             {"length", {"top", "hem"}, {}},
             {"gape", {"gape", "stand off", "stand away", "bag", "flap"}, {}},
             {"tight", {"tight", "snug", "bind", "pull"}, {}},
             {"loose", {"loose", "baggy"}, {}},
             {"fine", {"fine", "ok", "okay", "good", "fits well", "right"}, {}},
             {"drag-line", {"drag line", "pull line", "wrinkle"}, {}},
             {"noise", {"blouse", "jersey", "dress"}, {}},
             {"posture-hands-on-hips", {"hands on hips"}, {}}};

  k.signs = {
      make_sign("front-neckline-gapes", "front-neckline", Counts::girth, Of::whole, true,
                {"<neckline> <gape>", "<front> <neckline> <gape>", "<neckline> (too) <loose>"},
                {"<neckline> <fine>", "<front> <neckline> <fine>"}),
      make_sign("back-neckline-gapes", "back-neckline", Counts::girth, Of::whole, false,
                {"<back> <neckline> <gape>"}),
      make_sign("neckline-too-tight", "front-neckline", Counts::girth, Of::whole, false,
                {"<neckline> (too) <tight>", "= <neckline> ... chokes"}, {"<neckline> <fine>"}),
      make_sign("neckline-too-low", "front-neckline", Counts::distance, Of::whole, false,
                {"<neckline> too low"}),
      make_sign("bust-too-tight", "bust", Counts::girth, Of::whole, false,
                {"<bust> (too) <tight>", "not enough room <bust>", "will not close <bust>"},
                {"<bust> <fine>"}),
      make_sign("bust-too-loose", "bust", Counts::girth, Of::whole, false, {"<bust> (too) <loose>"},
                {"<bust> <fine>"}),
      make_sign("drag-lines-to-bust", "bust", Counts::none, Of::whole, true,
                {"<drag-line> <bust>", "<drag-line> <bust> armhole"}),
      make_sign("front-armhole-gapes", "front-armhole", Counts::girth, Of::half, true,
                {"<armhole> <gape>", "<front> <armhole> <gape>"}),
      make_sign("armhole-too-low", "armhole", Counts::distance, Of::whole, true,
                {"<armhole> (too) (far) low"}),
      make_sign("armhole-too-tight", "armhole", Counts::girth, Of::half, true,
                {"<armhole> (too) <tight>", "<armhole> too high"}),
      make_sign("shoulder-too-wide", "shoulder", Counts::distance, Of::whole, true,
                {"<shoulder> too wide", "<shoulder> too long", "= fall off the <shoulder>"}),
      make_sign("folds-between-neck-and-shoulder", "shoulder", Counts::none, Of::whole, true,
                {"fold <neckline> <shoulder>"}),
      make_sign("upper-arm-too-tight", "upper-arm", Counts::girth, Of::half, true,
                {"<upper-arm> (too) <tight>"}),
      make_sign("top-too-long", "length", Counts::distance, Of::whole, false,
                {"<length> too long"}),
      make_sign("top-too-short", "length", Counts::distance, Of::whole, false,
                {"<length> too short", "<length> not long enough", "<length> ride up"}),
      make_sign("cap-puckers", "sleeve-cap", Counts::none, Of::whole, true, {"cap pucker"}),
  };
  return k;
}

/// One for all listeners of the tests.
inline std::shared_ptr<const Dictionary> dictionary() {
  static const auto shared = std::make_shared<const Dictionary>();
  return shared;
}

/// One line a finding: sign, "not" when absent, side, amount, '~' when it is less than sure,
/// posture, and the words in quotes.
inline std::string told(const Finding& finding) {
  std::string line = finding.sign;
  if (finding.state == FindingState::absent) line += " not";
  if (finding.side == Side::left) line += " left";
  if (finding.side == Side::right) line += " right";
  if (finding.amount) {
    std::array<char, 32> mm{};
    std::snprintf(mm.data(), mm.size(), " %.6g", finding.amount->mm);
    line += mm.data();
    line += finding.amount->of == Of::half ? " half" : " whole";
    switch (finding.amount->taken) {
      case Taken::unsaid:
        break;
      case Taken::fold_depth:
        line += " fold";
        break;
      case Taken::cloth:
        line += " cloth";
        break;
      case Taken::gap:
        line += " gap";
        break;
      case Taken::let_out:
        line += " let-out";
        break;
      case Taken::distance:
        line += " distance";
        break;
    }
  }
  if (finding.sure < 1.0) line += " ~";
  if (!finding.posture.empty()) line += " @" + finding.posture;
  return line + " \"" + finding.words + "\"";
}

inline std::vector<std::string> told(const Understood& understood) {
  std::vector<std::string> lines;
  for (const Finding& finding : understood.findings) lines.push_back(told(finding));
  for (const NotUnderstood& item : understood.not_understood) lines.push_back("? " + item.words);
  return lines;
}

}  // namespace pinwright::knowledge::test
