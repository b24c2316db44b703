#pragma once
// The sewing room of the tests: the shipped knowledge, a store in a scratch folder, deckhand 3 and
// a knit top drafted for her.

#include <gtest/gtest.h>

#include <memory>
#include <string>

#include "api/desk/desk.h"
#include "knowledge/load.h"
#include "tests/api/store/scratch.h"

namespace pinwright::api {

/// Body measurements of deckhand 3, mm; invented.
inline Json deckhand_3() {
  return {{"bust-girth", 960},
          {"waist-girth", 820},
          {"hip-girth", 1010},
          {"neck-base-girth", 390},
          {"head-girth", 570},
          {"shoulder-length", 126},
          {"across-back-width", 356},
          {"across-front-width", 330},
          {"back-waist-length", 408},
          {"front-waist-length", 446},
          {"scye-depth", 206},
          {"upper-arm-girth", 302},
          {"neck-shoulder-point-to-bust-point", 268},
          {"bust-point-width", 192},
          {"arm-length", 585},
          {"hand-girth", 205}};
}

inline Json draft_request(const std::string& kind = "knit-top",
                          const std::string& id = "deck-top") {
  return {{"kind", kind},
          {"id", id},
          {"name", "Deck top"},
          {"size", "M"},
          {"measurements", deckhand_3()},
          {"save", true},
          {"author", "fitter 1"}};
}

inline const knowledge::Knowledge& shipped_knowledge() {
  static const knowledge::Knowledge kLoaded = [] {
    auto loaded = knowledge::load({PINWRIGHT_SOURCE_DIR "/knowledge/data"});
    for (const Problem& problem : loaded.problems()) {
      ADD_FAILURE() << problem.place << ": " << problem.what;
    }
    return loaded.ok() ? std::move(loaded).value() : knowledge::Knowledge{};
  }();
  return kLoaded;
}

inline std::unique_ptr<Desk> open_desk(const std::string& store_file) {
  return std::make_unique<Desk>(shipped_knowledge(), open_store(store_file));
}

/// All problems of a refusal, for messages and for looking for one.
inline std::string told(const Outcome& outcome) {
  if (outcome.ok()) return "";
  std::string all;
  for (const Problem& problem : outcome.refusal().problems) {
    all += problem.code + " @ " + problem.place + ": " + problem.what + "\n";
  }
  return all;
}

inline bool tells(const Outcome& outcome, const std::string& code, const std::string& place) {
  if (outcome.ok()) return false;
  for (const Problem& problem : outcome.refusal().problems) {
    if (problem.code == code && problem.place == place && !problem.mend.empty()) return true;
  }
  return false;
}

/// A change that every knit top can bear: the body 20 mm longer.
inline Json longer_body(double mm = 20.0) {
  return {{"steps", {{{"operation", "lengthen"}, {"piece", "body"}, {"amount_mm", mm}}}}};
}

inline Json with_reason(Json change, const std::string& reason = "too short on deckhand 3") {
  change["reason"] = reason;
  change["author"] = "fitter 1";
  return change;
}

}  // namespace pinwright::api
