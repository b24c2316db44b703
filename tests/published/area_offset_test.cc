// Area and cutting line against GEOS, an independent library of plane geometry (libgeos.org), on
// the same outlines flattened to polygons: GEOSArea, GEOSBufferWithStyle with mitred joins,
// GEOSHausdorffDistanceDensify.
#include <geos_c.h>
#include <gtest/gtest.h>

#include <cmath>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/area.h"
#include "engine/geometry/offset.h"

namespace pinwright {
namespace {

/// mm. Fine, because the mitre of a flattened curve follows its last chord and not its tangent: the
/// two differ by some sqrt(2 kFlat / radius) radians, which the allowance multiplies.
constexpr double kFlat = 4e-5;

class PublishedAreaOffset : public ::testing::Test {
 protected:
  void SetUp() override { geos_ = GEOS_init_r(); }
  void TearDown() override {
    for (GEOSGeometry* g : made_) GEOSGeom_destroy_r(geos_, g);
    GEOS_finish_r(geos_);
  }

  GEOSGeometry* keep(GEOSGeometry* g) {
    if (g) made_.push_back(g);
    return g;
  }
  GEOSGeometry* polygon(std::vector<Vec2> p) {
    p.push_back(p.front());
    GEOSCoordSequence* s = GEOSCoordSeq_create_r(geos_, static_cast<unsigned>(p.size()), 2);
    for (unsigned i = 0; i < p.size(); ++i) GEOSCoordSeq_setXY_r(geos_, s, i, p[i].x, p[i].y);
    return keep(GEOSGeom_createPolygon_r(geos_, GEOSGeom_createLinearRing_r(geos_, s), nullptr, 0));
  }
  GEOSGeometry* flat(const std::vector<Curve>& ring) {
    std::vector<Vec2> p;
    for (const Curve& c : ring) {
      const std::vector<Vec2> line = flatten(c, kFlat);
      p.insert(p.end(), line.begin(), line.end() - 1);
    }
    return polygon(p);
  }
  double area(const GEOSGeometry* g) {
    double a = 0.0;
    EXPECT_EQ(GEOSArea_r(geos_, g, &a), 1);
    return a;
  }
  double perimeter(const std::vector<Curve>& ring) {
    double sum = 0.0;
    for (const Curve& c : ring) sum += length(c);
    return sum;
  }

  /// `near` mm: how far the two cutting lines may lie apart anywhere.
  void compare(const std::vector<Curve>& ring, double allowance, double near) {
    SCOPED_TRACE(allowance);
    std::vector<OffsetEdge> edges;
    for (const Curve& c : ring) edges.push_back({c, allowance, AllowanceKind::plain});
    const Result<CutLine> cut = offset_outline(edges);
    ASSERT_TRUE(cut.ok());
    const GEOSGeometry* ours = polygon(cut->points);
    // mitres up to four allowances, as ours; no corner of these outlines needs more
    const GEOSGeometry* theirs = keep(GEOSBufferWithStyle_r(
        geos_, flat(ring), allowance, 8, GEOSBUF_CAP_ROUND, GEOSBUF_JOIN_MITRE, 4.0));
    ASSERT_NE(theirs, nullptr);
    double apart = 1e300;
    // between polygons: GEOS measures to their boundary (and nothing to a bare linear ring)
    ASSERT_EQ(GEOSHausdorffDistanceDensify_r(geos_, ours, theirs, 0.25, &apart), 1);
    EXPECT_LT(apart, near);
    EXPECT_NEAR(area(ours), area(theirs), near * (perimeter(ring) + 8 * allowance));
    EXPECT_NEAR(area(ours) / area(theirs), 1.0, 2e-4);
    // it is not the outline again
    EXPECT_GT(area(ours), signed_area(ring) + 0.9 * allowance * perimeter(ring));
  }

  GEOSContextHandle_t geos_ = nullptr;
  std::vector<GEOSGeometry*> made_;
};

/// A convex piece such as a yoke with a bowed lower edge.
std::vector<Curve> convex() {
  const Vec2 a{0, 0}, b{220, 10}, c{200, 140}, d{20, 130};
  return {Curve{{a, {60, -25}, {150, -25}, b}}, straight_curve(b, c),
          Curve{{c, {150, 165}, {80, 165}, d}}, straight_curve(d, a)};
}

/// A half front: hollow armhole and neckline.
std::vector<Curve> hollow() {
  const Vec2 hem_fold{0, 0}, hem_side{250, 0}, underarm{240, 300}, tip{190, 480}, neck{80, 500},
      throat{0, 420};
  return {straight_curve(hem_fold, hem_side),
          straight_curve(hem_side, underarm),
          Curve{{underarm, {180, 305}, {165, 400}, tip}},
          straight_curve(tip, neck),
          Curve{{neck, {76, 450}, {45, 420}, throat}},
          straight_curve(throat, hem_fold)};
}

TEST_F(PublishedAreaOffset, AreaOfFlattenedOutlines) {
  for (const std::vector<Curve>& ring : {convex(), hollow()}) {
    // a polygon within kFlat of the curve differs by less than kFlat times the perimeter
    EXPECT_NEAR(signed_area(ring), area(flat(ring)), kFlat * perimeter(ring));
  }
}

TEST_F(PublishedAreaOffset, ConvexOutlineAgainstMitredBuffer) {
  for (const double allowance : {6.0, 10.0, 15.0, 25.0}) compare(convex(), allowance, 0.02);
}

TEST_F(PublishedAreaOffset, HollowOutlineAgainstMitredBuffer) {
  // GEOS straightens hollows by up to a hundredth of the distance before it buffers
  // (BufferParameters, simplify factor 0.01), so that much may lie between the two
  for (const double allowance : {6.0, 10.0, 15.0, 25.0}) {
    compare(hollow(), allowance, 0.02 + 0.01 * allowance);
  }
}

}  // namespace
}  // namespace pinwright
