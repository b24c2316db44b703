#pragma once
// What became of the steps of a run, so that a refusal of something that should succeed is seen.

#include <map>
#include <string>

#include "engine/base/result.h"

namespace pinwright {

class RefusalTable {
 public:
  void sequence(bool all_done, bool any_done);
  /// `first`: on the block as drafted, by a plausible amount: "full-bust takes-up=as-drawn +".
  /// `problem`: without a code when it was done.
  void step(const std::string& operation, const Problem& problem, const std::string& first);
  /// The slowest alter(), CPU seconds, and what it did.
  void took(double seconds, const std::string& step);
  int sequences() const { return sequences_; }
  /// Share of plausible first steps done, those left out that the block has no place for.
  double first_done() const;
  /// Operations that the block has a place for and that were never done.
  std::string never_done() const;
  void print(const std::string& title) const;

 private:
  using Counts = std::map<std::string, int>;  ///< by code, "" = done
  int sequences_ = 0;
  int all_done_ = 0;
  int some_done_ = 0;
  double slowest_ = 0.0;
  std::string slowest_step_;
  std::map<std::string, Counts> steps_;
  std::map<std::string, Counts> firsts_;
  std::map<std::string, std::map<std::string, int>> why_;  ///< of the firsts: in words, numbers out
};

}  // namespace pinwright
