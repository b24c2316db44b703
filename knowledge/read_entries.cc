#include "knowledge/read_entries.h"

#include <charconv>

namespace pinwright::knowledge {
namespace {

class Reader {
 public:
  explicit Reader(const std::string& file) : file_(file) {}

  Zone zone(const YamlNode& n) const {
    return {text(n, "id"), text(n, "name"), texts(n, "kinds"), texts(n, "features"), place(n)};
  }

  Feature feature(const YamlNode& n) const {
    return {text(n, "id"), text(n, "name"), texts(n, "with"), texts(n, "without"), place(n)};
  }

  Telling telling(const YamlNode& n) const {
    return {text(n, "about"), texts(n, "said"), place(n)};
  }

  Publication publication(const YamlNode& n) const {
    return {text(n, "key"), text(n, "title"), place(n)};
  }

  WordClass word_class(const YamlNode& n) const {
    return {text(n, "id"), texts(n, "words"), place(n)};
  }

  Sign sign(const YamlNode& n) const {
    Sign s;
    s.id = text(n, "id");
    s.name = text(n, "name");
    s.zone = text(n, "zone");
    const std::string counts = text(n, "counts");
    s.counts = counts == "girth"      ? Counts::girth
               : counts == "distance" ? Counts::distance
                                      : Counts::none;
    s.default_of = of_in(n, "told_as").value_or(Of::whole);
    s.sided = text(n, "sided") == "true";
    s.kind_of = text(n, "kind_of");
    s.leak = number(n, "leak").value_or(s.leak);
    s.ask = text(n, "ask");
    s.cost = number(n, "cost").value_or(s.cost);
    s.phrases = texts(n, "phrases");
    s.denied_by = texts(n, "denied_by");
    s.sources = sources(n);
    s.place = place(n);
    return s;
  }

  Cause cause(const YamlNode& n) const {
    Cause c;
    c.id = text(n, "id");
    c.name = text(n, "name");
    const std::string kind = text(n, "kind");
    c.kind = kind == "block"    ? CauseKind::block
             : kind == "sewing" ? CauseKind::sewing
             : kind == "fabric" ? CauseKind::fabric
                                : CauseKind::body;
    c.what = text(n, "what");
    c.prior = number(n, "prior").value_or(c.prior);
    if (const YamlNode* by = n.find("prior_by_kind"))
      for (const auto& [key, value] : by->entries)
        if (const auto p = number_of(value)) c.prior_by_kind[key] = *p;
    for (const YamlNode* when : maps(n, "prior_when"))
      c.prior_when.push_back(
          {texts(*when, "features"), number(*when, "prior").value_or(c.prior), place(*when)});
    const std::string ground = text(n, "ground");
    for (const YamlNode* m : maps(n, "makes")) {
      const std::string own = text(*m, "ground");
      c.makes.push_back({text(*m, "sign"), number(*m, "strength").value_or(0.5),
                         own.empty() ? ground : own, place(*m)});
    }
    c.told_by = texts(n, "told_by");
    c.check = text(n, "check");
    for (const YamlNode* r : maps(n, "remedies")) c.remedies.push_back(remedy(*r));
    c.sources = sources(n);
    c.place = place(n);
    return c;
  }

  Measured measured(const YamlNode& n) const {
    return {text(n, "id"),
            text(n, "sign"),
            texts(n, "kinds"),
            text(n, "amount"),
            text(n, "from"),
            text(n, "sure"),
            number(n, "surest").value_or(0.9),
            text(n, "text"),
            sources(n),
            place(n)};
  }

  PostureNote posture(const YamlNode& n) const {
    return {text(n, "id"), text(n, "cause"), texts(n, "words"), number(n, "prior").value_or(0.5),
            sources(n),    place(n)};
  }

  FitProblem problem(const YamlNode& n) const {
    return {text(n, "id"),      text(n, "name"),   text(n, "sign"),
            texts(n, "causes"), texts(n, "kinds"), place(n)};
  }

  static std::vector<const YamlNode*> maps(const YamlNode& n, std::string_view key) {
    std::vector<const YamlNode*> all;
    if (const YamlNode* list = n.find(key))
      for (const auto& item : list->items)
        if (item.kind == YamlNode::Kind::map) all.push_back(&item);
    return all;
  }

  static std::string text(const YamlNode& n, std::string_view key) {
    const YamlNode* value = n.find(key);
    return value != nullptr && value->kind == YamlNode::Kind::scalar ? value->text : std::string();
  }

  static std::vector<std::string> texts(const YamlNode& n, std::string_view key) {
    std::vector<std::string> all;
    if (const YamlNode* list = n.find(key))
      for (const auto& item : list->items)
        if (item.kind == YamlNode::Kind::scalar) all.push_back(item.text);
    return all;
  }

 private:
  Place place(const YamlNode& n) const {
    Place p{file_, n.line, {}};
    for (const auto& [key, value] : n.entries) {
      p.fields[key] = value.key_line;
      for (std::size_t i = 0; i < value.items.size(); ++i)
        p.fields[key + "/" + std::to_string(i)] = value.items[i].line;
      for (const auto& [inner, one] : value.entries) p.fields[key + "/" + inner] = one.key_line;
    }
    return p;
  }

  static std::optional<double> number_of(const YamlNode& value) {
    double x = 0.0;
    const char* end = value.text.data() + value.text.size();
    const auto [stop, error] = std::from_chars(value.text.data(), end, x);
    if (value.text.empty() || error != std::errc{} || stop != end) return std::nullopt;
    return x;
  }
  static std::optional<double> number(const YamlNode& n, std::string_view key) {
    const YamlNode* value = n.find(key);
    return value == nullptr ? std::nullopt : number_of(*value);
  }
  static std::optional<Of> of_in(const YamlNode& n, std::string_view key) {
    const std::string t = text(n, key);
    if (t == "half") return Of::half;
    if (t == "whole") return Of::whole;
    return std::nullopt;
  }
  static std::vector<Source> sources(const YamlNode& n) {
    std::vector<Source> all;
    for (const auto& t : texts(n, "sources")) all.push_back(read_source(t));
    return all;
  }

  Remedy remedy(const YamlNode& n) const {
    Remedy r;
    r.id = text(n, "id");
    r.name = text(n, "name");
    r.kinds = texts(n, "kinds");
    r.suits = text(n, "suits");
    r.usual_mm = number(n, "usual_mm");
    r.usual_of = of_in(n, "usual_of").value_or(Of::whole);
    r.smallest_mm = number(n, "smallest_mm");
    r.largest_mm = number(n, "largest_mm");
    r.beyond = text(n, "beyond");
    for (const YamlNode* s : maps(n, "steps")) {
      RemedyStep step;
      step.operation = text(*s, "operation");
      if (const YamlNode* options = s->find("options"))
        for (const auto& [key, value] : options->entries) step.options[key] = value.text;
      step.amount = text(*s, "amount");
      step.of = of_in(*s, "of");
      step.text = text(*s, "text");
      step.place = place(*s);
      r.steps.push_back(std::move(step));
    }
    r.follow = texts(n, "follow");
    r.sources = sources(n);
    r.place = place(n);
    return r;
  }

  const std::string& file_;
};

}  // namespace

Source read_source(const std::string& text) {
  const std::size_t colon = text.find(": ");
  if (colon == std::string::npos) return {text, ""};
  return {text.substr(0, colon), text.substr(colon + 2)};
}

Knowledge read_entries(const YamlNode& tree, const std::string& file) {
  const Reader r(file);
  Knowledge k;
  k.kinds = Reader::texts(tree, "kinds");
  for (const YamlNode* n : Reader::maps(tree, "features")) k.features.push_back(r.feature(*n));
  for (const YamlNode* n : Reader::maps(tree, "zones")) k.zones.push_back(r.zone(*n));
  for (const YamlNode* n : Reader::maps(tree, "words")) k.words.push_back(r.word_class(*n));
  for (const YamlNode* n : Reader::maps(tree, "tellings")) k.tellings.push_back(r.telling(*n));
  for (const YamlNode* n : Reader::maps(tree, "publications"))
    k.publications.push_back(r.publication(*n));
  for (const YamlNode* n : Reader::maps(tree, "signs")) k.signs.push_back(r.sign(*n));
  for (const YamlNode* n : Reader::maps(tree, "causes")) k.causes.push_back(r.cause(*n));
  for (const YamlNode* n : Reader::maps(tree, "measured")) k.measured.push_back(r.measured(*n));
  for (const YamlNode* n : Reader::maps(tree, "postures")) k.postures.push_back(r.posture(*n));
  for (const YamlNode* n : Reader::maps(tree, "problems")) k.problems.push_back(r.problem(*n));
  return k;
}

}  // namespace pinwright::knowledge
