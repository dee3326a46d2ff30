#include "explain.hpp"

#include <fmt/format.h>

#include "base/nearest.hpp"
#include "commands.hpp"
#include "swathe/check.hpp"
#include "swathe/job.hpp"
#include "table.hpp"

namespace swathe::app {
namespace {

std::string_view given_words(Given given) {
  switch (given) {
    case Given::Needed:
      return "Needed, like";
    case Given::Optional:
      return "Optional, like";
    case Given::Default:
      break;
  }
  return "Default";
}

std::string in_two_lines(const KeyWords& key) {
  return paragraph("", fmt::format("{}: {}", key.key, key.meaning)) +
         paragraph("", fmt::format("{} {}. {}", given_words(key.given), key.value, key.why));
}

std::string in_two_lines(const CheckWords& check) {
  return paragraph("", fmt::format("{}: {}", check.id, check.asks)) + paragraph("", check.why);
}

std::string everything() {
  Table keys({{"key"}, {"what it means", Column::Align::Left, true}});
  for (const KeyWords& key : key_words()) keys.add({key.key, std::string(key.meaning)});
  Table checks({{"check"}, {"what it asks", Column::Align::Left, true}});
  for (const CheckWords& check : check_words()) checks.add({check.id, check.asks});
  return fmt::format("{}\n{}\nMore about one:  swathe explain cloth.flap\n", keys.to_text(),
                     checks.to_text());
}

}  // namespace

std::vector<std::string> explained_names() {
  std::vector<std::string> names;
  for (KeyWords& key : key_words()) names.push_back(std::move(key.key));
  for (CheckWords& check : check_words()) names.push_back(std::move(check.id));
  return names;
}

std::string explanation(std::string_view name) {
  std::string text;
  for (const KeyWords& key : key_words()) {
    const std::string_view last = std::string_view(key.key).substr(key.key.rfind('.') + 1);
    if (key.key == name || last == name) text += in_two_lines(key);
  }
  for (const CheckWords& check : check_words())
    if (check.id == name) text += in_two_lines(check);
  return text;
}

Exit explain(Terminal& terminal, const std::string& name) {
  if (name.empty()) {
    terminal.answer(everything());
    return Exit::Done;
  }
  if (const std::string text = explanation(name); !text.empty()) {
    terminal.answer(text);
    return Exit::Done;
  }
  const std::vector<std::string> names = explained_names();
  terminal.complain(
      fmt::format("swathe: {} is neither a key of a job nor a check; the nearest known one is {}",
                  named(name), nearest_name(name, {names.begin(), names.end()})));
  return Exit::WrongInput;
}

}  // namespace swathe::app
