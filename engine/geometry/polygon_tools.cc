#include "engine/geometry/polygon_tools.h"

#include <geos_c.h>

#include <algorithm>
#include <limits>
#include <memory>

namespace pinwright {
namespace {

class Geos {
 public:
  Geos() : h_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(h_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;
  operator GEOSContextHandle_t() const { return h_; }  // NOLINT(google-explicit-constructor)

 private:
  GEOSContextHandle_t h_;
};

struct Destroy {
  GEOSContextHandle_t h;
  void operator()(GEOSGeometry* g) const { GEOSGeom_destroy_r(h, g); }
};
/// Null when GEOS failed; every function below passes null on.
using Shape = std::unique_ptr<GEOSGeometry, Destroy>;

Shape own(const Geos& geos, GEOSGeometry* g) { return Shape(g, Destroy{geos}); }

GEOSCoordSequence* sequence(const Geos& geos, const std::vector<Vec2>& ring) {
  std::vector<double> xy;
  xy.reserve(2 * ring.size() + 2);
  for (const Vec2& p : ring) xy.push_back(p.x), xy.push_back(p.y);
  xy.push_back(ring.front().x), xy.push_back(ring.front().y);
  return GEOSCoordSeq_copyFromBuffer_r(geos, xy.data(), static_cast<unsigned>(ring.size() + 1), 0,
                                       0);
}

Shape polygon(const Geos& geos, const std::vector<Vec2>& ring) {
  if (ring.size() < 3) return own(geos, nullptr);
  GEOSGeometry* shell = GEOSGeom_createLinearRing_r(geos, sequence(geos, ring));
  return own(geos, shell ? GEOSGeom_createPolygon_r(geos, shell, nullptr, 0) : nullptr);
}

double area(const Geos& geos, const GEOSGeometry* g) {
  double a = 0.0;
  return g && GEOSArea_r(geos, g, &a) ? a : std::numeric_limits<double>::infinity();
}

std::vector<Vec2> outer_ring(const Geos& geos, const GEOSGeometry* polygon_shape) {
  const GEOSGeometry* shell = GEOSGetExteriorRing_r(geos, polygon_shape);
  const GEOSCoordSequence* s = shell ? GEOSGeom_getCoordSeq_r(geos, shell) : nullptr;
  unsigned n = 0;
  std::vector<Vec2> ring;
  if (!s || !GEOSCoordSeq_getSize_r(geos, s, &n) || n < 4) return ring;
  for (unsigned i = 0; i + 1 < n; ++i) {
    Vec2 p;
    GEOSCoordSeq_getXY_r(geos, s, i, &p.x, &p.y);
    ring.push_back(p);
  }
  if (twice_area(ring) < 0.0) std::reverse(ring.begin(), ring.end());
  return ring;
}

/// Faces into which the line cuts the plane, as a collection.
Shape faces(const Geos& geos, const std::vector<Vec2>& line) {
  const Shape path = own(geos, GEOSGeom_createLineString_r(geos, sequence(geos, line)));
  // the union of one line with itself puts a node at each of its crossings
  const Shape noded = own(geos, path ? GEOSUnaryUnion_r(geos, path.get()) : nullptr);
  const GEOSGeometry* list[] = {noded.get()};
  return own(geos, noded ? GEOSPolygonize_r(geos, list, 1) : nullptr);
}

bool wound(const Geos& geos, const GEOSGeometry* face, const std::vector<Vec2>& line) {
  const Shape spot = own(geos, GEOSPointOnSurface_r(geos, face));
  Vec2 q;
  return spot && GEOSGeomGetX_r(geos, spot.get(), &q.x) && GEOSGeomGetY_r(geos, spot.get(), &q.y) &&
         winding(line, q) > 0;
}

}  // namespace

double twice_area(const std::vector<Vec2>& ring) {
  double sum = 0.0;
  for (std::size_t i = 1; i + 1 < ring.size(); ++i) {
    sum += cross(ring[i] - ring[0], ring[i + 1] - ring[0]);
  }
  return sum;
}

int winding(const std::vector<Vec2>& ring, Vec2 q) {
  int count = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
    if ((a.y <= q.y) == (b.y <= q.y)) continue;
    const double side = cross(b - a, q - a);
    if (a.y <= q.y && side > 0.0) ++count;
    if (a.y > q.y && side < 0.0) --count;
  }
  return count;
}

std::optional<Vec2> invalid_at(const std::vector<Vec2>& ring) {
  const Geos geos;
  const Shape p = polygon(geos, ring);
  if (!p) return ring.empty() ? Vec2{} : ring.front();
  char* reason = nullptr;
  GEOSGeometry* where = nullptr;
  const char valid = GEOSisValidDetail_r(geos, p.get(), 0, &reason, &where);
  const Shape spot = own(geos, where);
  if (reason) GEOSFree_r(geos, reason);
  if (valid == 1) return std::nullopt;
  Vec2 q = ring.front();
  if (spot) {
    GEOSGeomGetX_r(geos, spot.get(), &q.x);
    GEOSGeomGetY_r(geos, spot.get(), &q.y);
  }
  return q;
}

double area_outside(const std::vector<Vec2>& inner, const std::vector<Vec2>& outer) {
  const Geos geos;
  const Shape a = polygon(geos, inner), b = polygon(geos, outer);
  const Shape rest = own(geos, a && b ? GEOSDifference_r(geos, a.get(), b.get()) : nullptr);
  return area(geos, rest.get());
}

std::vector<Vec2> wound_together(const std::vector<Vec2>& line, const std::vector<Vec2>& kept) {
  const Geos geos;
  if (line.size() < 3) return {};
  const Shape cut = faces(geos, line);
  Shape base = polygon(geos, kept);
  if (!cut || !base) return {};
  std::vector<GEOSGeometry*> parts{base.release()};
  const int n = GEOSGetNumGeometries_r(geos, cut.get());
  for (int i = 0; i < n; ++i) {
    const GEOSGeometry* face = GEOSGetGeometryN_r(geos, cut.get(), i);
    if (wound(geos, face, line)) parts.push_back(GEOSGeom_clone_r(geos, face));
  }
  const Shape all = own(geos, GEOSGeom_createCollection_r(geos, GEOS_MULTIPOLYGON, parts.data(),
                                                          static_cast<unsigned>(parts.size())));
  const Shape joined = own(geos, all ? GEOSUnaryUnion_r(geos, all.get()) : nullptr);
  if (!joined) return {};
  const GEOSGeometry* largest = nullptr;
  for (int i = 0; i < GEOSGetNumGeometries_r(geos, joined.get()); ++i) {
    const GEOSGeometry* g = GEOSGetGeometryN_r(geos, joined.get(), i);
    if (GEOSGeomTypeId_r(geos, g) != GEOS_POLYGON) continue;
    if (!largest || area(geos, g) > area(geos, largest)) largest = g;
  }
  return largest ? outer_ring(geos, largest) : std::vector<Vec2>{};
}

}  // namespace pinwright
