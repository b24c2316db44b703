#pragma once
// Blocks of the invented Skerry Wardrobe, drafted for its numbered wearers. All figures invented.

#include <string_view>

#include "engine/draft/draft.h"

namespace pinwright::knowledge::testing {

inline DraftInput skerry_input(std::string_view kind) {
  DraftInput in;
  in.wearer.id = "deckhand-3";
  in.wearer.body = {{"bust-girth", 920.0},        {"waist-girth", 740.0},
                    {"hip-girth", 980.0},         {"neck-base-girth", 370.0},
                    {"head-girth", 560.0},        {"shoulder-length", 125.0},
                    {"across-back-width", 350.0}, {"across-front-width", 330.0},
                    {"back-waist-length", 410.0}, {"front-waist-length", 440.0},
                    {"scye-depth", 205.0},        {"upper-arm-girth", 290.0},
                    {"bust-point-width", 185.0},  {"neck-shoulder-point-to-bust-point", 270.0},
                    {"arm-length", 580.0},        {"hand-girth", 200.0}};
  in.fabric.id = kind == "knit-top" ? "jersey" : "poplin";
  in.fabric.name = in.fabric.id;
  if (kind == "knit-top") {
    in.fabric.kind = FabricKind::knit;
    in.fabric.stretch_across = 0.3;
    in.fabric.stretch_along = 0.15;
    in.fabric.recovery = 0.95;
  }
  return in;
}

inline const Block& drafted(std::string_view kind) {
  static const Block knit = *draft("knit-top", skerry_input("knit-top"));
  static const Block woven = *draft("woven-bodice", skerry_input("woven-bodice"));
  return kind == "knit-top" ? knit : woven;
}
inline const Block& knit_top() { return drafted("knit-top"); }
inline const Block& woven_bodice() { return drafted("woven-bodice"); }

}  // namespace pinwright::knowledge::testing
