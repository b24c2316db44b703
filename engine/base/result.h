#pragma once
// Errors as values. Two channels are kept apart: a Problem is what a caller's input or state did
// wrong and can be mended by the caller; a defect of our own is an assertion in the tests.

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace pinwright {

/// One thing that is wrong with an input, told so that it can be mended.
struct Problem {
  std::string code;   ///< stable, kebab-case, e.g. "outline-open"
  std::string place;  ///< where in the input: "piece front, edge neckline" or "/steps/0/amount_mm"
  std::string what;   ///< one sentence: what was found
  std::string mend;   ///< one sentence: what to do about it
};

using Problems = std::vector<Problem>;

/// A value, or at least one Problem: all that could be found in one pass, not only the first.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : value_(std::move(value)) {}               // NOLINT(google-explicit-constructor)
  Result(Problem problem) : problems_{std::move(problem)} {}  // NOLINT(google-explicit-constructor)
  /// REQUIRES: problems is not empty.
  Result(Problems problems) : problems_(std::move(problems)) {}  // NOLINT

  bool ok() const { return value_.has_value(); }
  explicit operator bool() const { return ok(); }

  /// REQUIRES: ok().
  const T& value() const& { return *value_; }
  T& value() & { return *value_; }
  T&& value() && { return *std::move(value_); }
  const T& operator*() const& { return *value_; }
  T& operator*() & { return *value_; }
  const T* operator->() const { return &*value_; }
  T* operator->() { return &*value_; }

  /// Empty when ok().
  const Problems& problems() const { return problems_; }

 private:
  std::optional<T> value_;
  Problems problems_;
};

/// Success without a value.
struct Done {};

}  // namespace pinwright
