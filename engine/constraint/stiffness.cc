#include "engine/constraint/stiffness.h"

#include <algorithm>
#include <cmath>

namespace pinwright {
namespace {

constexpr double kSecond[3] = {1.0, -2.0, 1.0};

// Calls visit(i, j, value) for every entry of s D2^T D2 with j <= i; entries add up.
template <class Visit>
void each_coupling(const Variables& variables, double smoothness, const Visit& visit) {
  const auto couple = [&](const Coordinate* const(&parts)[3]) {
    for (int a = 0; a < 3; ++a) {
      for (int b = 0; b < 3; ++b) {
        for (std::size_t k = 0; k < 2; ++k) {
          for (std::size_t l = 0; l < 2; ++l) {
            const int i = parts[a]->unknown[k];
            const int j = parts[b]->unknown[l];
            if (i < 0 || j < 0 || j > i) continue;
            visit(i, j,
                  smoothness * kSecond[a] * parts[a]->factor[k] * kSecond[b] * parts[b]->factor[l]);
          }
        }
      }
    }
  };
  for (const auto& [at, controls] : variables.edges()) {
    // A straight edge's movement has no second differences.
    if (variables.follows_its_ends(at)) continue;
    for (std::size_t i = 1; i + 1 < controls.size(); ++i) {
      couple({&controls[i - 1].x, &controls[i].x, &controls[i + 1].x});
      couple({&controls[i - 1].y, &controls[i].y, &controls[i + 1].y});
    }
  }
}

}  // namespace

Stiffness::Stiffness(const Variables& variables, double smoothness) {
  const std::size_t n = static_cast<std::size_t>(variables.count());
  first_.resize(n);
  for (std::size_t i = 0; i < n; ++i) first_[i] = static_cast<int>(i);
  each_coupling(variables, smoothness, [&](int i, int j, double) {
    int& first = first_[static_cast<std::size_t>(i)];
    first = std::min(first, j);
  });
  offset_.resize(n);
  std::ptrdiff_t size = 0;
  for (std::size_t i = 0; i < n; ++i) {
    offset_[i] = size - first_[i];
    size += static_cast<std::ptrdiff_t>(i) - first_[i] + 1;
  }
  values_.assign(static_cast<std::size_t>(size), 0.0);
  for (int i = 0; i < count(); ++i) row(i)[i] = 1.0;
  each_coupling(variables, smoothness, [&](int i, int j, double v) { row(i)[j] += v; });
  for (int i = 0; i < count(); ++i) {
    double* const l = row(i);
    const int start = first_[static_cast<std::size_t>(i)];
    for (int j = start; j <= i; ++j) {
      const double* const m = row(j);
      double sum = l[j];
      for (int k = std::max(start, first_[static_cast<std::size_t>(j)]); k < j; ++k)
        sum -= l[k] * m[k];
      l[j] = j < i ? sum / m[j] : std::sqrt(sum);  // H >= I: never below one
    }
  }
}

void Stiffness::forward(Eigen::Ref<Eigen::VectorXd> b, int from) const {
  for (int i = from; i < count(); ++i) {
    const double* const l = row(i);
    double sum = b[i];
    for (int k = std::max(from, first_[static_cast<std::size_t>(i)]); k < i; ++k)
      sum -= l[k] * b[k];
    b[i] = sum / l[i];
  }
}

void Stiffness::backward(Eigen::Ref<Eigen::VectorXd> b) const {
  for (int i = count() - 1; i >= 0; --i) {
    const double* const l = row(i);
    b[i] /= l[i];
    for (int k = first_[static_cast<std::size_t>(i)]; k < i; ++k) b[k] -= l[k] * b[i];
  }
}

Eigen::MatrixXd Stiffness::dense(const Variables& variables, double smoothness) {
  const int n = variables.count();
  Eigen::MatrixXd h = Eigen::MatrixXd::Identity(n, n);
  each_coupling(variables, smoothness, [&](int i, int j, double v) {
    h(i, j) += v;
    if (i != j) h(j, i) += v;
  });
  return h;
}

}  // namespace pinwright
