#include <fmt/format.h>

#include <algorithm>

#include "commands.hpp"
#include "input.hpp"
#include "job/key_path.hpp"
#include "output.hpp"
#include "swathe/job/read_job.hpp"
#include "swathe/job/set_value.hpp"
#include "swathe/make/make.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

constexpr const char* kStandardInput = "-";

/// A value for people, on one line: a text without its quotes.
std::string shown(const std::string& value) {
  if (value.empty()) return "not given";
  const bool quoted = value.size() > 1 && value.front() == value.back() &&
                      (value.front() == '"' || value.front() == '\'') &&
                      value.find(value.front(), 1) == value.size() - 1;
  std::string words;
  for (const char c : quoted ? value.substr(1, value.size() - 2) : value)
    if (c != '\r') words += c == '\n' ? ' ' : c;
  return printable(words);
}

/// The faults of the new text that the old one has not: those that the change brings.
Refusals brought(const Refusals& before, const Refusals& after) {
  Refusals brought;
  for (const Refusal& fault : after)
    if (std::ranges::none_of(before, [&](const Refusal& one) {
          return one.why == fault.why && one.sentence == fault.sentence;
        }))
      brought.push_back(fault);
  return brought;
}

Refusals faults_of_making(const std::string& text, const std::string& name,
                          const std::string& job) {
  const auto made = make(text, name, read_files_beside(job, files_named(text)));
  return made ? Refusals() : made.error();
}

}  // namespace

std::vector<std::string> settable_names() {
  std::vector<std::string> names;
  for (const Key& key : job_keys()) names.push_back(with_number(key.path, 1));
  return names;
}

Exit set(Terminal& terminal, const std::string& job, const std::string& key,
         const std::optional<std::string>& value) {
  const auto old = read_job_text(job);
  if (!old) {
    terminal.complain(old.error());
    return Exit::WrongInput;
  }
  const auto change = value ? set_value(old->text, key, *value, old->name)
                            : remove_value(old->text, key, old->name);
  if (!change) {
    terminal.complain(change.error());
    return Exit::WrongInput;
  }
  const auto unread =
      brought(read_job(old->text, old->name).faults, read_job(change->text, old->name).faults);
  if (!unread.empty()) {
    terminal.complain(unread);
    terminal.complain(fmt::format("swathe: {} stays as it was", printable(old->name)));
    return Exit::WrongInput;
  }
  if (job == kStandardInput) {
    terminal.answer(change->text);
  } else if (change->text != old->text) {
    if (const auto done = replace_file(job, change->text); !done) {
      terminal.complain(fmt::format("swathe: {}", done.error().sentence));
      return Exit::MachineFailed;
    }
  }
  const std::string name = printable(change->key);
  if (change->text == old->text)
    terminal.say(fmt::format("{}: {} already", name, shown(change->after)));
  else
    terminal.say(fmt::format("{}: {} -> {}", name, shown(change->before), shown(change->after)));
  // What reads may still not be made: two values that only go together are set one after the other.
  const Refusals after = faults_of_making(change->text, old->name, job);
  if (after.empty()) return Exit::Done;
  const auto unmade = brought(faults_of_making(old->text, old->name, job), after);
  if (!unmade.empty()) {
    terminal.say("Before this job can be made, more has to change:");
    terminal.complain(unmade);
  }
  return Exit::Done;
}

}  // namespace swathe::app
