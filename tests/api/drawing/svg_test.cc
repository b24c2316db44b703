#include "api/drawing/svg.h"

#include <gtest/gtest.h>

#include <limits>

namespace pinwright::api {
namespace {

TEST(Svg, NumbersAreShortAndNeverOdd) {
  EXPECT_EQ(number(0.0), "0");
  EXPECT_EQ(number(-0.0), "0");
  EXPECT_EQ(number(-0.00001), "0");
  EXPECT_EQ(number(100.0), "100");
  EXPECT_EQ(number(-12.34567), "-12.3457");
  EXPECT_EQ(number(1e7), "10000000");
  EXPECT_EQ(number(std::numeric_limits<double>::quiet_NaN()), "0");
  EXPECT_EQ(number(std::numeric_limits<double>::infinity()), "0");
  EXPECT_EQ(number(1e300).size(), 301u);
}

TEST(Svg, LengthsAreToldToATenth) {
  EXPECT_EQ(mm_text(9.0), "9 mm");
  EXPECT_EQ(mm_text(7.46), "7.5 mm");
  EXPECT_EQ(mm_text(-0.04), "0 mm");
}

TEST(Svg, TextIsEscaped) {
  EXPECT_EQ(escaped("a<b>&\"c'\x01\n"), "a&lt;b&gt;&amp;&quot;c&apos;");
  EXPECT_EQ(attribute("data-edge", "a\"b"), " data-edge=\"a&quot;b\"");
}

TEST(Svg, CurvesKeepTheirControlPoints) {
  const Curve c{{{0, 0}, {1, 2}, {3, 4}, {5, 6.25}, {7, 8}, {9, 10}, {11, 12}}};
  EXPECT_EQ(path_data(c, Frame{{100, 50}}),
            "M100,50 C101,48 103,46 105,43.75 C107,42 109,40 111,38");
}

TEST(Svg, PolylinesCloseWhenTold) {
  EXPECT_EQ(path_data({{0, 0}, {1, 0}, {1, 1}}, true), "M0,0 L1,0 L1,1 Z");
}

}  // namespace
}  // namespace pinwright::api
