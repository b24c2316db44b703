#include "api/exchange/object_reader.h"

#include <algorithm>
#include <cmath>

#include "engine/base/nearest_word.h"

namespace pinwright::api {
namespace {

std::string number_text(double value) { return Json(value).dump(); }

}  // namespace

std::string shown(const Json& value) {
  if (value.is_object()) return "an object";
  if (value.is_array()) return "a list";
  std::string text = value.dump(-1, ' ', true, Json::error_handler_t::replace);
  if (text.size() > 60) {
    text.resize(57);
    text.append("...");
  }
  return text;
}

const Json* list_or_note(const Json& value, const std::string& place, std::size_t most,
                         Problems& problems) {
  if (!value.is_array()) {
    problems.push_back({"type-wrong", place, "Here stands " + shown(value) + ".", "Write a list."});
    return nullptr;
  }
  if (value.size() > most) {
    problems.push_back({"list-size", place,
                        "The list has " + std::to_string(value.size()) + " entries.",
                        "Give at most " + std::to_string(most) + "."});
    return nullptr;
  }
  return &value;
}

ObjectReader::ObjectReader(const Json& value, std::string place, Problems& problems)
    : place_(std::move(place)), problems_(problems) {
  if (value.is_object()) {
    value_ = &value;
  } else {
    problems_.push_back(
        {"type-wrong", place_, "Here stands " + shown(value) + ".", "Write an object {...}."});
  }
}

void ObjectReader::note(std::string code, std::string_view name, std::string what,
                        std::string mend) {
  problems_.push_back({std::move(code), place_of(name), std::move(what), std::move(mend)});
}

void ObjectReader::note_type(std::string_view name, const Json& here, std::string_view wanted) {
  note("type-wrong", name, "Here stands " + shown(here) + ".",
       "Write " + std::string(wanted) + ".");
}

void ObjectReader::note_unknown_word(std::string_view name, const Json& here,
                                     const std::vector<std::string_view>& known) {
  std::string list;
  for (const std::string_view word : known) {
    list += (list.empty() ? "\"" : ", \"") + std::string(word) + "\"";
  }
  note(here.is_string() ? "value-unknown" : "type-wrong", name, shown(here) + " is not known here.",
       "Use one of: " + list + ".");
}

const Json* ObjectReader::field(std::string_view name, Need need) {
  asked_.emplace_back(name);
  if (value_ == nullptr) return nullptr;
  const auto found = value_->find(std::string(name));
  if (found != value_->end()) return &*found;
  if (need == Need::required) {
    note("field-missing", name, "The field \"" + std::string(name) + "\" is missing.", "Add it.");
  }
  return nullptr;
}

std::string ObjectReader::text(std::string_view name, Need need, std::size_t most_bytes) {
  const Json* here = field(name, need);
  if (here == nullptr) return {};
  if (!here->is_string()) {
    note_type(name, *here, "text in quotes");
    return {};
  }
  const std::string& text = here->get_ref<const std::string&>();
  if (text.size() > most_bytes || (need == Need::required && text.empty())) {
    note("text-size", name, "The text is empty or too long.",
         "Give 1 to " + std::to_string(most_bytes) + " bytes.");
    return {};
  }
  return text;
}

std::optional<double> ObjectReader::number(std::string_view name, Need need, double least,
                                           double most) {
  const Json* here = field(name, need);
  if (here == nullptr) return std::nullopt;
  if (!here->is_number()) {
    note_type(name, *here, "a plain number without quotes");
    return std::nullopt;
  }
  const double value = here->get<double>();
  if (!(value >= least && value <= most)) {
    note("value-range", name, shown(*here) + " is out of range.",
         "Write a number from " + number_text(least) + " to " + number_text(most) + ".");
    return std::nullopt;
  }
  return value;
}

std::optional<bool> ObjectReader::flag(std::string_view name, Need need) {
  const Json* here = field(name, need);
  if (here == nullptr) return std::nullopt;
  if (!here->is_boolean()) {
    note_type(name, *here, "true or false");
    return std::nullopt;
  }
  return here->get<bool>();
}

std::vector<std::string> ObjectReader::texts(std::string_view name, Need need) {
  const Json* here = field(name, need);
  std::vector<std::string> out;
  if (here == nullptr || list_or_note(*here, place_of(name), 64, problems_) == nullptr) return out;
  std::size_t i = 0;
  for (const Json& item : *here) {
    const std::string where = member(place_of(name), i++);
    if (!item.is_string()) {
      problems_.push_back(
          {"type-wrong", where, "Here stands " + shown(item) + ".", "Write text in quotes."});
    } else if (item.get_ref<const std::string&>().size() > 1000) {
      problems_.push_back(
          {"text-size", where, "The text is too long.", "Give at most 1000 bytes."});
    } else {
      out.push_back(item.get<std::string>());
    }
  }
  return out;
}

std::vector<std::string> ObjectReader::take_rest() {
  std::vector<std::string> rest;
  if (value_ == nullptr) return rest;
  for (const auto& item : value_->items()) {
    if (std::find(asked_.begin(), asked_.end(), item.key()) == asked_.end()) {
      rest.push_back(item.key());
    }
  }
  asked_.insert(asked_.end(), rest.begin(), rest.end());
  return rest;
}

void ObjectReader::refuse_rest() {
  const std::vector<std::string> known = asked_;
  for (const std::string& name : take_rest()) {
    note("field-unknown", name, "There is no field \"" + name.substr(0, 64) + "\" here.",
         "Take it out; did you mean \"" + nearest_word(name, known) + "\"?");
  }
}

}  // namespace pinwright::api
