// The joins of both bodies: lines that run on over seams and darts, and are square to the fold.
#include "engine/draft/knit_body.h"
#include "engine/draft/sewing.h"
#include "engine/draft/woven.h"

namespace pinwright::drafting {

std::vector<Join> knit_body_joins() {
  return {running_on("neckline-over-shoulder", "Neckline over the shoulder seam",
                     {{"front", "shoulder", "neckline"}, {"back", "shoulder", "neckline"}}),
          running_on("armhole-over-shoulder", "Armhole over the shoulder seam",
                     {{"front", "armhole", "shoulder"}, {"back", "armhole", "shoulder"}}),
          running_on("armhole-over-side", "Armhole over the side seam",
                     {{"front", "side", "armhole"}, {"back", "side", "armhole"}}),
          running_on("hem-over-side", "Hem over the side seam",
                     {{"front", "hem", "side"}, {"back", "hem", "side"}}),
          square_at_fold("neckline-at-centre-front", "Neckline at the centre front",
                         {"front", "neckline", "centre-front"}),
          square_at_fold("neckline-at-centre-back", "Neckline at the centre back",
                         {"back", "neckline", "centre-back"}),
          square_at_fold("hem-at-centre-front", "Hem at the centre front",
                         {"front", "centre-front", "hem"}),
          square_at_fold("hem-at-centre-back", "Hem at the centre back",
                         {"back", "centre-back", "hem"})};
}

std::vector<Join> woven_body_joins() {
  return {running_on("neckline-over-shoulder", "Neckline over the shoulder seam",
                     {{"front", "shoulder", "neckline"}, {"back", "shoulder-inner", "neckline"}}),
          running_on("armhole-over-shoulder", "Armhole over the shoulder seam",
                     {{"front", "armhole", "shoulder"}, {"back", "armhole", "shoulder-outer"}}),
          running_on("armhole-over-side", "Armhole over the side seam",
                     {{"front", "side-upper", "armhole"}, {"back", "side", "armhole"}}),
          running_on("waist-over-side", "Waist over the side seam",
                     {{"front", "waist-outer", "side-lower"}, {"back", "waist-outer", "side"}}),
          running_on(
              "side-over-bust-dart", "Side over the bust dart",
              {{"front", "side-lower", "bust-dart-in"}, {"front", "bust-dart-out", "side-upper"}}),
          running_on("waist-over-front-dart", "Waist over the front's waist dart",
                     {{"front", "waist-inner", "waist-dart-in"},
                      {"front", "waist-dart-out", "waist-outer"}}),
          running_on("waist-over-back-dart", "Waist over the back's waist dart",
                     {{"back", "waist-inner", "waist-dart-in"},
                      {"back", "waist-dart-out", "waist-outer"}}),
          running_on("shoulder-over-dart", "Shoulder over the shoulder dart",
                     {{"back", "shoulder-outer", "shoulder-dart-in"},
                      {"back", "shoulder-dart-out", "shoulder-inner"}}),
          square_at_fold("neckline-at-centre-front", "Neckline at the centre front",
                         {"front", "neckline", "centre-front"}),
          square_at_fold("neckline-at-centre-back", "Neckline at the centre back",
                         {"back", "neckline", "centre-back"}),
          square_at_fold("waist-at-centre-front", "Waist at the centre front",
                         {"front", "centre-front", "waist-inner"}),
          square_at_fold("waist-at-centre-back", "Waist at the centre back",
                         {"back", "centre-back", "waist-inner"})};
}

}  // namespace pinwright::drafting
