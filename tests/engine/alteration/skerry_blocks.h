#pragma once
// The two blocks of Skerry Wardrobe that the alteration tests work on.

#include <string>

#include "engine/alteration/alter.h"
#include "engine/pattern/block.h"
#include "engine/proof/proof.h"

namespace pinwright {

/// Deckhand 3's knit top and purser 1's woven bodice, drafted from their measurements.
const Block& knit_top();
const Block& woven_bodice();

/// Measure of a garment by id; fails the test when there is none.
double garment(const Block& block, const std::string& id);
/// One step with its options.
Step step(const std::string& operation, double amount,
          std::map<std::string, std::string> options = {}, Of of = Of::half);
/// Alters and expects success and a passing proof.
Block altered(const Block& block, const std::vector<Step>& steps);
/// Edges of `after` that are the same bit for bit, as "piece.edge".
bool same_bits(const Block& before, const Block& after, const std::string& piece,
               const std::string& edge);

}  // namespace pinwright
