#include "engine/geometry/offset.h"

#include <gtest/gtest.h>

#include "engine/geometry/nearest.h"
#include "engine/geometry/tolerance.h"
#include "engine/geometry/transform.h"
#include "tests/engine/geometry/shapes.h"

namespace pinwright {
namespace {

using Ring = std::vector<OffsetEdge>;

Ring polygon(const std::vector<Vec2>& p, const std::vector<double>& allowances) {
  Ring ring;
  for (std::size_t i = 0; i < p.size(); ++i) {
    ring.push_back({straight_curve(p[i], p[(i + 1) % p.size()]), allowances[i % allowances.size()],
                    AllowanceKind::plain});
  }
  return ring;
}

bool has_point(const CutLine& cut, Vec2 p, double within = 1e-9) {
  return std::any_of(cut.points.begin(), cut.points.end(),
                     [&](Vec2 q) { return distance(p, q) <= within; });
}

double area(const std::vector<Vec2>& p) {
  double sum = 0.0;
  for (std::size_t i = 0; i < p.size(); ++i) sum += cross(p[i], p[(i + 1) % p.size()]);
  return sum / 2;
}

double distance_to_line(const std::vector<Vec2>& ring, Vec2 q) {
  double least = 1e300;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], d = ring[(i + 1) % ring.size()] - a;
    const double u = std::clamp(dot(q - a, d) / dot(d, d), 0.0, 1.0);
    least = std::min(least, distance(q, a + u * d));
  }
  return least;
}

bool inside_or_on(const std::vector<Vec2>& ring, Vec2 q) {
  bool in = false;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
    if ((a.y <= q.y) != (b.y <= q.y) && q.x < a.x + (q.y - a.y) / (b.y - a.y) * (b.x - a.x)) {
      in = !in;
    }
  }
  return in || distance_to_line(ring, q) < 1e-6;
}

void expect_holds(const CutLine& cut, const Ring& ring) {
  ASSERT_EQ(cut.edge_of.size(), cut.points.size());
  ASSERT_EQ(cut.parallel.size(), cut.points.size());
  EXPECT_GT(area(cut.points), 0.0);
  for (const OffsetEdge& e : ring) {
    for (const Vec2& q : flatten(e.curve, 0.5)) {
      EXPECT_TRUE(inside_or_on(cut.points, q)) << q.x << ", " << q.y;
    }
  }
}

/// Every parallel line lies at its edge's allowance, where its middle stands over the edge itself.
void expect_widths(const CutLine& cut, const Ring& ring) {
  std::vector<int> seen(ring.size(), 0);
  for (std::size_t i = 0; i < cut.points.size(); ++i) {
    if (!cut.parallel[i]) continue;
    const Vec2 mid = lerp(cut.points[i], cut.points[(i + 1) % cut.points.size()], 0.5);
    const OffsetEdge& e = ring[cut.edge_of[i]];
    const Nearest n = nearest(e.curve, mid);
    const Vec2 across = unit(mid - n.point), along = tangent(e.curve, n.at);
    if (n.distance > 1e-9 && std::abs(dot(across, along)) > 0.01) continue;  // past an end
    EXPECT_NEAR(n.distance, e.allowance_mm, 0.02) << "edge " << cut.edge_of[i];
    ++seen[cut.edge_of[i]];
  }
  for (std::size_t e = 0; e < ring.size(); ++e) EXPECT_GT(seen[e], 0) << "edge " << e;
}

/// Half a bodice front: fold at the left, slanted shoulder, hollow neck and armhole, side, hem.
Ring bodice(double hem, AllowanceKind kind) {
  const Vec2 hem_fold{0, 0}, hem_side{250, 0}, underarm{240, 300}, tip{190, 480}, neck{80, 500},
      throat{0, 420};
  return {{straight_curve(hem_fold, hem_side), hem, kind},
          {straight_curve(hem_side, underarm), 15, AllowanceKind::plain},
          {Curve{{underarm, {180, 305}, {165, 400}, tip}}, 10, AllowanceKind::plain},
          {straight_curve(tip, neck), 15, AllowanceKind::plain},
          {Curve{{neck, {76, 450}, {45, 420}, throat}}, 6, AllowanceKind::plain},
          {straight_curve(throat, hem_fold), 0, AllowanceKind::plain}};
}

TEST(Offset, SquareIsMitred) {
  const Ring ring = polygon({{0, 0}, {100, 0}, {100, 50}, {0, 50}}, {10});
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  EXPECT_EQ(cut->points.size() >= 4, true);
  for (const Vec2 corner : {Vec2{-10, -10}, {110, -10}, {110, 60}, {-10, 60}}) {
    EXPECT_TRUE(has_point(*cut, corner));
  }
  EXPECT_NEAR(area(cut->points), 120 * 70, 1e-9);
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
}

TEST(Offset, DifferentAllowancesMeetExactly) {
  const Ring ring = polygon({{0, 0}, {100, 0}, {130, 80}, {0, 60}}, {10, 25, 6, 15});
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
  // corners solved by hand: the crossing of the neighbouring moved lines
  for (std::size_t i = 0; i < 4; ++i) {
    const OffsetEdge &a = ring[i], &b = ring[(i + 1) % 4];
    const Vec2 da = start_tangent(a.curve), db = start_tangent(b.curve);
    const Vec2 pa = a.curve.start() - a.allowance_mm * left_normal(da);
    const Vec2 pb = b.curve.start() - b.allowance_mm * left_normal(db);
    const Vec2 corner = pa + cross(pb - pa, db) / cross(da, db) * da;
    EXPECT_TRUE(has_point(*cut, corner, 1e-7)) << i;
  }
}

TEST(Offset, AHollowCornerIsCutBack) {
  // an L: the hollow corner at (40, 40)
  const Ring ring = polygon({{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 100}, {0, 100}},
                            {10, 10, 8, 12, 10, 10});
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  EXPECT_TRUE(has_point(*cut, {52, 48}));
  // the bounding square less what is left open of the hollow
  EXPECT_NEAR(area(cut->points), 120 * 120 - (110 - 52) * (110 - 48), 1e-9);
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
}

TEST(Offset, FoldKeepsItsPlaceWhateverTheAngle) {
  // fold on the left; its corners are wider and narrower than a right angle
  for (const double lean : {-30.0, 0.0, 30.0}) {
    const Ring ring = polygon({{0, 0}, {100, lean}, {100, 80}, {0, 60}}, {12, 12, 12, 0});
    const auto cut = offset_outline(ring);
    ASSERT_TRUE(cut.ok());
    for (const Vec2& q : cut->points) EXPECT_GE(q.x, -1e-9) << lean;
    expect_holds(*cut, ring);
    expect_widths(*cut, ring);
  }
}

TEST(Offset, LongMitresAreCutOffSquare) {
  const Ring ring = polygon({{0, 0}, {300, 0}, {0, 20}}, {10});
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  // along the spike, which halves the angle at (300, 0)
  const Vec2 out = unit(unit({300, 0}) + unit({300, -20}));
  double farthest = 0.0;
  for (const Vec2& q : cut->points) farthest = std::max(farthest, dot(q - Vec2{300, 0}, out));
  EXPECT_NEAR(farthest, 4 * 10, 1e-9);
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
}

TEST(Offset, AStepWhereEdgesRunOnSmoothly) {
  const Ring ring = polygon({{0, 0}, {50, 0}, {100, 0}, {100, 50}, {0, 50}}, {10, 20, 10, 10, 10});
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  EXPECT_TRUE(has_point(*cut, {50, -10}));
  EXPECT_TRUE(has_point(*cut, {50, -20}));
  EXPECT_NEAR(area(cut->points), 60 * 70 + 60 * 80, 1e-9);
  expect_holds(*cut, ring);
}

TEST(Offset, BodiceHasItsWidths) {
  const Ring ring = bodice(30, AllowanceKind::plain);
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
  for (const Vec2& q : cut->points) EXPECT_GE(q.x, -1e-9);
}

TEST(Offset, HemEndsMirrorTheirNeighbours) {
  const Ring ring = bodice(30, AllowanceKind::hem);
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
  // turned up at the hem edge, the hem lies on the piece edge to edge: what is below the fold
  // mirrors into a line of the part above it
  for (const Vec2& q : cut->points) {
    if (q.y > -1e-6 || q.y < -30 + 1e-6) continue;
    EXPECT_LT(distance_to_line(cut->points, {q.x, -q.y}), 1e-6);
  }
  // the side leans inward going up, so the turned-back end leans inward going down
  const double at_fold = 250 + 15 * std::sqrt(1 + 1.0 / 900);
  EXPECT_TRUE(has_point(*cut, {at_fold, 0}, 1e-7));
  EXPECT_TRUE(has_point(*cut, {at_fold - 1, -30}, 1e-7));  // 10 in 300, over 30
  EXPECT_TRUE(has_point(*cut, {0, -30}, 1e-7));
}

TEST(Offset, HemEndsMirrorCurvedNeighbours) {
  // a skirt whose sides curve right up to the hem
  const Vec2 a{0, 0}, b{200, 0}, c{170, 300}, d{30, 300};
  const Ring ring{{straight_curve(a, b), 40, AllowanceKind::hem},
                  {Curve{{b, {215, 40}, {200, 200}, c}}, 10, AllowanceKind::plain},
                  {straight_curve(c, d), 10, AllowanceKind::plain},
                  {Curve{{d, {0, 200}, {-15, 40}, a}}, 10, AllowanceKind::plain}};
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
  int below = 0, left = 0;
  for (const Vec2& q : cut->points) {
    if (q.y > -1e-6 || q.y < -40 + 1e-6) continue;
    EXPECT_LT(distance_to_line(cut->points, {q.x, -q.y}), 1e-6);
    ++below;
    left += q.x < 100 ? 1 : 0;
  }
  EXPECT_GT(left, 2);
  EXPECT_EQ(below, 2 * left);  // the skirt is symmetric, so is the hem
}

TEST(Offset, SlightlyCurvedHem) {
  const Vec2 a{0, 0}, b{200, 0}, c{180, 300}, d{20, 300};
  const Ring ring{{Curve{{a, {60, -12}, {140, -12}, b}}, 25, AllowanceKind::hem},
                  {straight_curve(b, c), 10, AllowanceKind::plain},
                  {straight_curve(c, d), 10, AllowanceKind::plain},
                  {straight_curve(d, a), 10, AllowanceKind::plain}};
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
}

TEST(Offset, TightHollowLosesItsLoop) {
  // a hollow of radius 5 in an edge with 12 mm allowance
  const Curve hollow = arc({50, 60}, 5, kPi, kPi, 2);  // from (45, 60) below to (55, 60)
  Ring ring{{straight_curve({0, 0}, {100, 0}), 12, AllowanceKind::plain},
            {straight_curve({100, 0}, {100, 100}), 12, AllowanceKind::plain},
            {chain({straight({100, 100}, {55, 100}), straight({55, 100}, {55, 60}),
                    reversed(hollow).segment(0), reversed(hollow).segment(1),
                    straight({45, 60}, {45, 100}), straight({45, 100}, {0, 100})}),
             12, AllowanceKind::plain},
            {straight_curve({0, 100}, {0, 0}), 12, AllowanceKind::plain}};
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok()) << cut.problems()[0].what;
  expect_holds(*cut, ring);
  // both allowances fill the slit
  EXPECT_NEAR(area(cut->points), 124 * 124, 1e-6);

  // a wide V with a round bottom: only a small loop to lose
  const Ring v{{straight_curve({0, 0}, {300, 0}), 12, AllowanceKind::plain},
               {straight_curve({300, 0}, {300, 200}), 12, AllowanceKind::plain},
               {Curve{{{300, 200}, {152, 60}, {148, 60}, {0, 200}}}, 12, AllowanceKind::plain},
               {straight_curve({0, 200}, {0, 0}), 12, AllowanceKind::plain}};
  const auto cut_v = offset_outline(v);
  ASSERT_TRUE(cut_v.ok());
  expect_holds(*cut_v, v);
  expect_widths(*cut_v, v);
  // no point of the line lies nearer to the curve than its allowance
  for (const Vec2& q : cut_v->points) {
    if (q.x > 20 && q.x < 280 && q.y > 20) {
      EXPECT_GT(nearest(v[2].curve, q).distance, 12 - 0.02);
    }
  }
}

TEST(Offset, CornersInsideAnEdgeAreMitredToo) {
  Ring ring{{chain({straight({0, 0}, {100, 0}), straight({100, 0}, {100, 50}),
                    straight({100, 50}, {0, 50}), straight({0, 50}, {0, 0})}),
             10, AllowanceKind::plain}};
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  EXPECT_NEAR(area(cut->points), 120 * 70, 1e-9);
}

TEST(Offset, AClosedSmoothEdge) {
  const Ring ring{{arc({0, 0}, 60, 0, 2 * kPi, 4), 15, AllowanceKind::plain}};
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  for (const Vec2& q : cut->points) EXPECT_NEAR(norm(q), 75, 0.02);
  expect_holds(*cut, ring);
  expect_widths(*cut, ring);
}

TEST(Offset, NoAllowanceGivesTheOutline) {
  Ring ring = bodice(0, AllowanceKind::hem);
  for (OffsetEdge& e : ring) e.allowance_mm = 0;
  const auto cut = offset_outline(ring);
  ASSERT_TRUE(cut.ok());
  for (const OffsetEdge& e : ring) EXPECT_TRUE(has_point(*cut, e.curve.start(), 0.0));
  for (std::size_t i = 0; i < cut->points.size(); ++i) {
    EXPECT_LT(nearest(ring[cut->edge_of[i]].curve, cut->points[i]).distance, 1e-9);
  }
}

TEST(Offset, RandomStarsKeepTheirWidths) {
  Chance chance(65);
  for (int i = 0; i < 150; ++i) {
    std::vector<Vec2> p;
    std::vector<double> allowances;
    const int n = 4 + i % 7;
    for (int k = 0; k < n; ++k) {
      const double a = 2 * kPi * (k + chance.number(-0.3, 0.3)) / n, r = chance.number(60, 200);
      p.push_back({r * std::cos(a), r * std::sin(a)});
      allowances.push_back(k % 3 == 0 ? 0.0 : chance.number(3, 20));
    }
    const Ring ring = polygon(p, allowances);
    const auto cut = offset_outline(ring);
    ASSERT_TRUE(cut.ok()) << "case " << i << ": " << cut.problems()[0].what;
    SCOPED_TRACE(i);
    expect_holds(*cut, ring);
    // turning the whole ring turns the answer
    Ring turned = ring;
    const Affine m = rotation_about({10, 20}, 1.0);
    for (OffsetEdge& e : turned) e.curve = apply(m, e.curve);
    const auto other = offset_outline(turned);
    ASSERT_TRUE(other.ok());
    EXPECT_NEAR(area(other->points), area(cut->points), 1e-5 * area(cut->points));
  }
}

TEST(Offset, TellsEveryProblem) {
  Ring ring = polygon({{0, 0}, {100, 0}, {100, 50}, {0, 50}}, {10});
  ring[0].allowance_mm = -1;
  ring[1].allowance_mm = NAN;
  ring[2].allowance_mm = 201;
  ring[3].curve.points.pop_back(), ring[3].curve.points.push_back({0, 1});
  const auto bad = offset_outline(ring);
  ASSERT_FALSE(bad.ok());
  ASSERT_EQ(bad.problems().size(), 4u);
  EXPECT_EQ(bad.problems()[0].code, "allowance-range");
  EXPECT_EQ(bad.problems()[3].code, "outline-open");
  EXPECT_EQ(bad.problems()[3].place, "edge 3");

  EXPECT_EQ(offset_outline({}).problems().at(0).code, "outline-open");
  const auto eight = offset_outline(polygon({{0, 0}, {100, 50}, {100, 0}, {0, 50}}, {10}));
  ASSERT_FALSE(eight.ok());
  EXPECT_EQ(eight.problems()[0].code, "outline-crosses");
  const auto clockwise = offset_outline(polygon({{0, 0}, {0, 50}, {100, 50}, {100, 0}}, {10}));
  ASSERT_FALSE(clockwise.ok());
  EXPECT_EQ(clockwise.problems()[0].code, "outline-clockwise");
  Ring broken = polygon({{0, 0}, {100, 0}, {100, 50}, {0, 50}}, {10});
  broken[1].curve.points[1].x = INFINITY;
  EXPECT_EQ(offset_outline(broken).problems().at(0).code, "outline-points");
}

}  // namespace
}  // namespace pinwright
