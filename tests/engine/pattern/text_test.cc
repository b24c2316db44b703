// Words of the trade and back.
#include <gtest/gtest.h>

#include "engine/pattern/fabric.h"
#include "engine/pattern/piece.h"
#include "engine/pattern/tryon.h"

namespace pinwright {
namespace {

template <class Value, class Parse>
void expect_round_trip(std::initializer_list<Value> all, Parse parse) {
  for (const Value value : all) {
    EXPECT_FALSE(to_text(value).empty());
    EXPECT_EQ(parse(to_text(value)), value) << to_text(value);
    EXPECT_EQ(to_text(value).find('_'), std::string_view::npos);
  }
  EXPECT_FALSE(parse("").has_value());
  EXPECT_FALSE(parse("Left ").has_value());
}

TEST(Text, RolesOfEdges) {
  using enum EdgeRole;
  expect_round_trip({neckline, shoulder, armhole, EdgeRole::side, waist, hem, centre_front,
                     centre_back, dart_leg, cap, underarm, sleeve_hem, opening, folded, join},
                    edge_role);
  EXPECT_EQ(to_text(centre_front), "centre-front");
  EXPECT_EQ(edge_role("sleeve-hem"), sleeve_hem);
}

TEST(Text, TryOns) {
  expect_round_trip({Side::both, Side::left, Side::right}, side);
  expect_round_trip({FindingState::present, FindingState::absent, FindingState::not_looked_at},
                    finding_state);
  expect_round_trip(
      {Taken::unsaid, Taken::fold_depth, Taken::cloth, Taken::gap, Taken::let_out, Taken::distance},
      taken);
  expect_round_trip({Of::whole, Of::half}, of);
  EXPECT_EQ(to_text(FindingState::not_looked_at), "not-looked-at");
}

TEST(Text, Fabrics) { expect_round_trip({FabricKind::woven, FabricKind::knit}, fabric_kind); }

TEST(FoundAmount, AFoldTakesUpTwiceItsDepth) {
  EXPECT_DOUBLE_EQ((FoundAmount{9.0, Of::half, Taken::fold_depth}.cloth_mm()), 18.0);
  EXPECT_DOUBLE_EQ((FoundAmount{9.0, Of::half, Taken::gap}.cloth_mm()), 9.0);
}

}  // namespace
}  // namespace pinwright
