#include "knowledge/measured.h"

#include <algorithm>
#include <cmath>

#include "knowledge/network_of.h"
#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

std::optional<double> number(const std::string& text, const Values& values) {
  const auto e = parse_expression(text, {}, "");
  return e ? evaluate(*e, values).value : std::nullopt;
}

std::optional<MeasuredFound> found(const Measured& m, const Values& values) {
  const auto e = parse_expression(m.amount, {}, "");
  if (!e) return std::nullopt;  // load() has refused it
  const auto amount = evaluate(*e, values).value;
  const auto from = number(m.from, values);
  const auto sure = number(m.sure, values);
  if (!amount || !from || !sure || !std::isfinite(*amount)) return std::nullopt;
  MeasuredFound f;
  f.entry = &m;
  f.sure = sureness(*amount, *from, *sure, m.surest);
  if (f.sure <= 0.0) return std::nullopt;
  f.of_girth = e->dimension() == Dimension::whole || e->dimension() == Dimension::half;
  f.amount = {*amount, e->dimension() == Dimension::half ? Of::half : Of::whole,
              f.of_girth ? Taken::cloth : Taken::distance};
  f.text = filled(m.text, said_length(*amount), said_length(*amount / 2.0));
  return f;
}

}  // namespace

double sureness(double amount, double from, double sure, double surest) {
  if (!(amount > from)) return 0.0;
  if (amount >= sure) return surest;
  return surest * (amount - from) / (sure - from);
}

std::vector<MeasuredFound> measured_on(const Knowledge& k, const std::string& kind,
                                       const Values& values) {
  std::vector<MeasuredFound> all;
  for (const auto& m : k.measured) {
    if (!has_kind(m.kinds, kind)) continue;
    const auto f = found(m, values);
    if (!f) continue;
    const auto same = std::find_if(all.begin(), all.end(), [&](const MeasuredFound& other) {
      return other.entry->sign == m.sign;
    });
    if (same == all.end())
      all.push_back(*f);
    else if (f->sure > same->sure)
      *same = *f;
  }
  return all;
}

std::vector<Finding> as_findings(const Knowledge& k, const std::vector<MeasuredFound>& measured) {
  std::vector<Finding> all;
  for (const auto& m : measured) {
    const Sign* sign = find_sign(k, m.entry->sign);
    if (sign == nullptr) continue;
    Finding f;
    f.sign = sign->id;
    f.zone = sign->zone;
    if (sign->counts == (m.of_girth ? Counts::girth : Counts::distance)) f.amount = m.amount;
    all.push_back(std::move(f));
  }
  return all;
}

bool is_told(const Knowledge& k, const std::string& sign, const std::vector<Finding>& findings) {
  const Sign* mine = find_sign(k, sign);
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
    if (f.state == FindingState::not_looked_at) return false;
    if (f.sign == sign || (mine != nullptr && mine->kind_of == f.sign)) return true;
    const Sign* told = find_sign(k, f.sign);
    return told != nullptr && told->kind_of == sign;
  });
}

}  // namespace pinwright::knowledge
