#pragma once
// What an observation says about one sign.
//
//                  sign there        sign not there
//   present            1                  0
//   absent             0                  1
//   unknown            1                  1          nobody looked
//   hedged, sure p  p + (1 - p) u     (1 - p) u      "maybe it gapes a little"; u = kUsual
//   measured        as the knowledge states it       a garment 4 cm narrower than the body
//
// Only the ratio of the two matters to the causes; a common factor goes into P(evidence). This is
// Pearl's virtual evidence (Probabilistic Reasoning in Intelligent Systems, 1988, 2.2.2).

namespace pinwright {

/// What was seen of a sign by somebody who looked for certain.
enum class Seen : unsigned char { unknown, present, absent };

struct Likelihood {
  double if_seen = 1.0;    ///< P(what was observed | the sign is there), finite, >= 0
  double if_unseen = 1.0;  ///< P(what was observed | the sign is not there), finite, >= 0

  constexpr Likelihood() = default;
  constexpr Likelihood(double seen, double unseen) : if_seen(seen), if_unseen(unseen) {}
  constexpr Likelihood(Seen seen)  // NOLINT(google-explicit-constructor): certain evidence is usual
      : if_seen(seen == Seen::absent ? 0.0 : 1.0), if_unseen(seen == Seen::present ? 0.0 : 1.0) {}

  friend constexpr bool operator==(const Likelihood&, const Likelihood&) = default;

  /// Two observations of one sign that do not depend on each other.
  friend constexpr Likelihood operator*(const Likelihood& a, const Likelihood& b) {
    return {a.if_seen * b.if_seen, a.if_unseen * b.if_unseen};
  }

  bool certain() const { return if_seen == 0.0 || if_unseen == 0.0; }
  /// Which way it speaks; unknown when it says nothing.
  Seen leans() const {
    if (if_seen == if_unseen) return Seen::unknown;
    return if_seen > if_unseen ? Seen::present : Seen::absent;
  }
};

/// How often a sign is there on a garment that is tried on, before anything was said (judged).
inline constexpr double kUsual = 0.1;

/// A statement that was meant with probability `sure`, and else says nothing of the sign (a guess,
/// a slip, words that were about something else), which then is there as usual:
///   P(there | said so) = sure + (1 - sure) kUsual
/// As a likelihood, for a sign said to be there and for one said not to be, with u = kUsual:
///   P(said | there) : P(said | not there) = sure + (1 - sure) u : (1 - sure) u
///   P(said | there) : P(said | not there) = (1 - sure) (1 - u) : sure + (1 - sure) (1 - u)
/// "There" moves the odds of the sign 11 times for 0.5, 41 times for 0.8, 191 times for 0.95; "not
/// there", which is usual anyway, 2.1, 5.4 and 22 times. 1 is certain, 0 says nothing; what lies
/// outside [0, 1], or is no number, counts as the nearer end or 0.
constexpr Likelihood stated(Seen seen, double sure) {
  if (seen == Seen::unknown || !(sure > 0.0)) return Seen::unknown;
  if (sure >= 1.0) return seen;
  const double there = (1.0 - sure) * kUsual;
  const double not_there = (1.0 - sure) * (1.0 - kUsual);
  return seen == Seen::present ? Likelihood{sure + there, there}
                               : Likelihood{not_there, sure + not_there};
}

}  // namespace pinwright
