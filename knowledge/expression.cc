#include "knowledge/expression.h"

#include <algorithm>
#include <cmath>

#include "knowledge/expression_node.h"

namespace pinwright::knowledge {
namespace {

using Kind = ExpressionNode::Kind;

Evaluated known(double value) {
  Evaluated e;
  if (std::isfinite(value)) {
    e.value = value;
  } else {
    e.not_finite = true;
  }
  return e;
}

Evaluated missing(std::string name) {
  Evaluated e;
  e.missing.push_back(std::move(name));
  return e;
}

/// Of a girth as told, the cloth it means on the whole garment or on the half pattern.
double told_as(const FoundAmount& amount, Of of) {
  const double mm = amount.cloth_mm();
  if (amount.of == of) return mm;
  return of == Of::half ? WholeMm(mm).half().mm() : HalfMm(mm).whole().mm();
}

const FoundAmount* told(const ExpressionNode& node, const Values& values) {
  if (node.name.empty()) return values.found ? &*values.found : nullptr;
  const auto it = values.found_of.find(node.name);
  return it == values.found_of.end() ? nullptr : &it->second;
}

Evaluated looked_up(const std::map<std::string, double>& in, const ExpressionNode& node) {
  const auto it = in.find(node.name);
  return it == in.end() ? missing(node.group + "." + node.name) : known(it->second);
}

Evaluated name_value(const ExpressionNode& node, const Values& values) {
  if (node.group == "found") {
    const FoundAmount* amount = told(node, values);
    if (amount == nullptr) return missing(node.name.empty() ? "found" : "found." + node.name);
    Evaluated e = known(amount->cloth_mm());
    e.used_found = true;
    return e;
  }
  if (node.group == "garment") return looked_up(values.garment, node);
  if (node.group == "body") {
    Evaluated e = looked_up(values.body, node);
    e.used_body = e.value.has_value();
    return e;
  }
  if (node.group == "ease") return looked_up(values.ease, node);
  if (!values.fabric) return missing("fabric");
  if (node.name == "stretch_across") return known(values.fabric->stretch_across);
  if (node.name == "stretch_along") return known(values.fabric->stretch_along);
  return known(values.fabric->recovery);
}

Evaluated value_of(const ExpressionNode& node, const Values& values);

/// A told girth bends with half() and whole() through products with plain numbers too.
Evaluated converted(const ExpressionNode& node, const Values& values, Of of) {
  if (node.dimension == Dimension::whole || node.dimension == Dimension::half) {
    Evaluated e = value_of(node, values);
    if (e.value && of == Of::half && node.dimension == Dimension::whole)
      e.value = WholeMm(*e.value).half().mm();
    if (e.value && of == Of::whole && node.dimension == Dimension::half)
      e.value = HalfMm(*e.value).whole().mm();
    return e;
  }
  if (node.kind == Kind::name) {
    const FoundAmount* amount = told(node, values);
    if (amount == nullptr) return name_value(node, values);
    Evaluated e = known(told_as(*amount, of));
    e.used_found = true;
    return e;
  }
  if (node.dimension != Dimension::told) return value_of(node, values);  // the plain number
  // a product, quotient or negation of one told girth
  Evaluated e;
  std::vector<double> v;
  for (const auto& part : node.parts) {
    Evaluated p = converted(part, values, of);
    e.missing.insert(e.missing.end(), p.missing.begin(), p.missing.end());
    e.used_found = e.used_found || p.used_found;
    e.used_body = e.used_body || p.used_body;
    e.not_finite = e.not_finite || p.not_finite;
    if (p.value) v.push_back(*p.value);
  }
  if (v.size() != node.parts.size()) return e;
  const double x = node.kind == Kind::negate     ? -v[0]
                   : node.kind == Kind::multiply ? v[0] * v[1]
                                                 : v[0] / v[1];
  Evaluated done = known(x);
  done.used_found = e.used_found;
  done.used_body = e.used_body;
  return done;
}

double combined(Kind kind, const std::vector<double>& v) {
  switch (kind) {
    case Kind::add:
      return v[0] + v[1];
    case Kind::subtract:
      return v[0] - v[1];
    case Kind::multiply:
      return v[0] * v[1];
    case Kind::divide:
      return v[0] / v[1];
    case Kind::negate:
      return -v[0];
    case Kind::min:
      return *std::min_element(v.begin(), v.end());
    case Kind::max:
      return *std::max_element(v.begin(), v.end());
    case Kind::clamp:
      return std::min(std::max(v[0], v[1]), v[2]);
    default:
      return v[0];
  }
}

Evaluated value_of(const ExpressionNode& node, const Values& values) {
  if (node.kind == Kind::number) return known(node.number);
  if (node.kind == Kind::name) return name_value(node, values);
  if (node.kind == Kind::half) return converted(node.parts[0], values, Of::half);
  if (node.kind == Kind::whole) return converted(node.parts[0], values, Of::whole);

  Evaluated all;
  std::vector<double> v;
  for (const auto& part : node.parts) {
    Evaluated e = value_of(part, values);
    if (node.kind == Kind::first && e.value) return e;
    all.missing.insert(all.missing.end(), e.missing.begin(), e.missing.end());
    all.not_finite = all.not_finite || e.not_finite;
    all.used_found = all.used_found || e.used_found;
    all.used_body = all.used_body || e.used_body;
    if (e.value) v.push_back(*e.value);
  }
  if (node.kind == Kind::first || v.size() != node.parts.size()) {
    all.used_found = false;
    all.used_body = false;
    return all;
  }
  Evaluated done = known(combined(node.kind, v));
  done.used_found = all.used_found;
  done.used_body = all.used_body;
  return done;
}

void collect_found(const ExpressionNode& node, std::vector<std::string>& names) {
  if (node.kind == Kind::name && node.group == "found" &&
      std::find(names.begin(), names.end(), node.name) == names.end())
    names.push_back(node.name);
  for (const auto& part : node.parts) collect_found(part, names);
}

}  // namespace

std::vector<std::string> Expression::found_names() const {
  std::vector<std::string> names;
  collect_found(*root_, names);
  return names;
}

Evaluated evaluate(const Expression& expression, const Values& values) {
  return value_of(expression.root(), values);
}

}  // namespace pinwright::knowledge
