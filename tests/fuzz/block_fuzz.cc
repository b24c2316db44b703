// Any bytes as a block: refused with problems, or a block that can be proved, altered and written
// back to itself.
#include <cstdlib>

#include "api/exchange/exchange.h"
#include "engine/alteration/alter.h"
#include "engine/proof/proof.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace pinwright;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const Result<Block> block = api::read_block(text);
  if (!block) {
    if (block.problems().empty()) std::abort();
    return 0;
  }
  const Result<Block> again = api::read_block(api::write_block(*block));
  if (!again || !(*again == *block)) std::abort();
  (void)prove(*block);
  Step step;
  step.operation = "lower-neckline";
  step.amount = 5.0;
  (void)alter(*block, {step});
  return 0;
}
