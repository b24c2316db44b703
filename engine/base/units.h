#pragma once
// Lengths are millimetres and angles radians everywhere inside. What goes round the body has two
// readings, on the whole garment and on the half pattern, and mixing them is the classic error of
// the trade: they are different types here and convert only by name.

#include <compare>
#include <numbers>

namespace pinwright {

inline constexpr double kMmPerInch = 25.4;  ///< exact by definition (international inch, 1959)

constexpr double radians(double degrees) { return degrees * std::numbers::pi / 180.0; }
constexpr double degrees(double radians_value) { return radians_value * 180.0 / std::numbers::pi; }

/// An amount on the half pattern: one front, one back, one armhole.
class HalfMm;

/// An amount on the whole garment: all round, both sides together.
class WholeMm {
 public:
  constexpr explicit WholeMm(double mm) : mm_(mm) {}
  constexpr double mm() const { return mm_; }
  constexpr HalfMm half() const;
  constexpr auto operator<=>(const WholeMm&) const = default;
  friend constexpr WholeMm operator+(WholeMm a, WholeMm b) { return WholeMm(a.mm_ + b.mm_); }
  friend constexpr WholeMm operator-(WholeMm a, WholeMm b) { return WholeMm(a.mm_ - b.mm_); }

 private:
  double mm_;
};

class HalfMm {
 public:
  constexpr explicit HalfMm(double mm) : mm_(mm) {}
  constexpr double mm() const { return mm_; }
  constexpr WholeMm whole() const { return WholeMm(2.0 * mm_); }
  constexpr auto operator<=>(const HalfMm&) const = default;
  friend constexpr HalfMm operator+(HalfMm a, HalfMm b) { return HalfMm(a.mm_ + b.mm_); }
  friend constexpr HalfMm operator-(HalfMm a, HalfMm b) { return HalfMm(a.mm_ - b.mm_); }

 private:
  double mm_;
};

constexpr HalfMm WholeMm::half() const { return HalfMm(mm_ / 2.0); }

/// A length up, down or along one edge (a drop, a depth, a shoulder's length): it is the same on
/// the half pattern and on the whole garment and is never divided.
class DistanceMm {
 public:
  constexpr explicit DistanceMm(double mm) : mm_(mm) {}
  constexpr double mm() const { return mm_; }
  constexpr auto operator<=>(const DistanceMm&) const = default;

 private:
  double mm_;
};

/// How an amount that is read or written says what it counts. Distances are written `whole`.
enum class Of { whole, half };

}  // namespace pinwright
