#include "engine/draft/sewing.h"

#include <numbers>
#include <utility>

#include "engine/pattern/measures.h"

namespace pinwright::drafting {

Block begin_block(const DraftInput& input, std::string_view kind, std::string_view name,
                  const EaseMap& ease) {
  Block block;
  block.id = input.id;
  block.name = input.name.empty() ? std::string(name) : input.name;
  block.kind = kind;
  block.size = input.size;
  block.fabric = input.fabric;
  block.drafted_for = input.wearer;
  block.ease = ease;
  block.ease.erase("across-back-width");
  block.ease.erase("across-front-width");
  return block;
}

RunPart part(std::string piece, std::string edge) {
  return {std::move(piece), std::move(edge), false};
}

RunPart reversed_part(std::string piece, std::string edge) {
  return {std::move(piece), std::move(edge), true};
}

Seam plain_seam(std::string id, std::string name, std::vector<RunPart> a, std::vector<RunPart> b,
                double ease_mm) {
  return {std::move(id), std::move(name), std::move(a), std::move(b), {{"", "", ease_mm}}};
}

Join running_on(std::string id, std::string name, std::vector<CornerRef> corners) {
  return {std::move(id), std::move(name), std::move(corners), std::numbers::pi};
}

Join square_at_fold(std::string id, std::string name, CornerRef corner) {
  return {std::move(id), std::move(name), {std::move(corner)}, std::numbers::pi / 2.0};
}

void add_sleeve_seams(Block& block, double front_ease_mm, double back_ease_mm) {
  // Below the notches the cap is as long as the armhole; what it is longer is eased above them.
  block.seams.push_back({"armhole-front",
                         "Sleeve into front armhole",
                         {part("sleeve", "cap-front")},
                         {part("front", "armhole")},
                         {{"front-notch", "front-notch", 0.0}, {"", "", front_ease_mm}}});
  block.seams.push_back({"armhole-back",
                         "Sleeve into back armhole",
                         {reversed_part("sleeve", "cap-back")},
                         {part("back", "armhole")},
                         {{"back-notch-1", "back-notch-1", 0.0},
                          {"back-notch-2", "back-notch-2", 0.0},
                          {"", "", back_ease_mm}}});
  block.seams.push_back(plain_seam("underarm", "Underarm seam of the sleeve",
                                   {part("sleeve", "underarm-front")},
                                   {reversed_part("sleeve", "underarm-back")}));
  add_sleeve_joins(block);
}

void add_sleeve_joins(Block& block) {
  block.joins.push_back(running_on(
      "cap-over-underarm", "Sleeve cap over the underarm seam",
      {{"sleeve", "underarm-front", "cap-front"}, {"sleeve", "cap-back", "underarm-back"}}));
  block.joins.push_back(
      running_on("cap-crown", "Sleeve cap at the crown", {{"sleeve", "cap-front", "cap-back"}}));
  block.joins.push_back(
      running_on("sleeve-hem-over-underarm", "Sleeve hem over the underarm seam",
                 {{"sleeve", "hem", "underarm-front"}, {"sleeve", "underarm-back", "hem"}}));
}

void note_ease_as_drawn(Block& block) {
  for (const GarmentMeasure& measure : measures(block)) {
    if (!measure.body) continue;
    const auto body = block.drafted_for.body.find(*measure.body);
    if (body == block.drafted_for.body.end()) continue;
    block.ease.try_emplace(*measure.body, measure.value - body->second);
  }
}

}  // namespace pinwright::drafting
