#include "skerry_blocks.h"

#include <gtest/gtest.h>

#include "engine/draft/draft.h"

namespace pinwright {
namespace {

Block drafted(const std::string& kind, const std::string& wearer, Fabric fabric) {
  const Measurements body = {
      {"bust-girth", 920},         {"waist-girth", 740},
      {"hip-girth", 980},          {"neck-base-girth", 370},
      {"head-girth", 545},         {"hand-girth", 190},
      {"upper-arm-girth", 290},    {"shoulder-length", 125},
      {"across-back-width", 350},  {"across-front-width", 330},
      {"bust-point-width", 190},   {"neck-shoulder-point-to-bust-point", 265},
      {"front-waist-length", 448}, {"back-waist-length", 405},
      {"scye-depth", 200},         {"arm-length", 580}};
  DraftInput input;
  input.id = kind;
  input.name = kind;
  input.size = "38";
  input.wearer.id = wearer;
  for (const std::string_view id : required_measurements(kind))
    input.wearer.body[std::string(id)] = body.at(std::string(id));
  input.fabric = std::move(fabric);
  Result<Block> block = draft(kind, input);
  if (!block) throw std::runtime_error(block.problems().front().what);
  return *block;
}

}  // namespace

const Block& knit_top() {
  static const Block block =
      drafted("knit-top", "deckhand-3",
              {"mid-weight-jersey", "mid-weight cotton jersey", FabricKind::knit, 0.49, 0.2, 0.9});
  return block;
}

const Block& woven_bodice() {
  static const Block block =
      drafted("woven-bodice", "purser-1", {"poplin", "poplin", FabricKind::woven, 0.0, 0.0, 1.0});
  return block;
}

double garment(const Block& block, const std::string& id) {
  const std::vector<GarmentMeasure> all = measures(block);
  const GarmentMeasure* found = find_measure(all, id);
  if (found == nullptr) {
    ADD_FAILURE() << "no measure " << id;
    return 0.0;
  }
  return found->value;
}

Step step(const std::string& operation, double amount, std::map<std::string, std::string> options,
          Of of) {
  Step s;
  s.operation = operation;
  s.amount = amount;
  s.options = std::move(options);
  s.of = of;
  return s;
}

Block altered(const Block& block, const std::vector<Step>& steps) {
  Result<Altered> result = alter(block, steps);
  if (!result) {
    ADD_FAILURE() << result.problems().front().place << ": " << result.problems().front().what;
    return block;
  }
  const Proof proof = prove(result->block, &block);
  for (const Problem& p : proof.failures) ADD_FAILURE() << p.place << ": " << p.what;
  EXPECT_TRUE(proof.pass);
  return std::move(result->block);
}

bool same_bits(const Block& before, const Block& after, const std::string& piece,
               const std::string& edge) {
  return find_edge(*find_piece(before, piece), edge)->curve ==
         find_edge(*find_piece(after, piece), edge)->curve;
}

}  // namespace pinwright
