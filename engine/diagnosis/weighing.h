#pragma once
// One evidence weighed, and others that differ from it a little, on plans made once.

#include <vector>

#include "engine/diagnosis/eliminate.h"

namespace pinwright {

class Weighing {
 public:
  /// REQUIRES: check(network, evidence) is empty; the network must outlive this.
  /// Errors: "evidence-impossible", "evidence-too-wide".
  static Result<Weighing> make(const Network& network, const Evidence& evidence);

  const Marginals& marginals() const { return base_; }
  /// Of summing all parts once (Plan::work).
  double work() const;

  /// For an evidence that differs from the one given by findings taken back, made softer or harder,
  /// or by more signs surely absent. Only parts whose weights have changed are summed again.
  /// Nothing when that evidence is impossible. A sign that was unknown may become anything else
  /// only in a Weighing of its own.
  std::optional<Marginals> with(const Evidence& other);
  /// ln P(other) alone; minus infinity when it is impossible.
  double log_evidence(const Evidence& other);

 private:
  struct Tied {
    Part part;
    Plan plan;
    double log_sum = 0.0;
  };

  explicit Weighing(const Network& network) : network_(&network) {}
  bool same(const Tied& tied, const Folded& other) const;
  /// fold(network, other, shape), from the one at hand where only one sign has become absent.
  Folded folded_with(const Evidence& other) const;

  const Network* network_;
  Evidence evidence_;
  std::vector<std::vector<Link>> of_sign_;
  Shape shape_;
  std::vector<Tied> parts_;
  Folded folded_;
  Marginals base_;
  Store store_;
};

}  // namespace pinwright
