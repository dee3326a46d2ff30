#include <fmt/format.h>

#include <algorithm>

#include "commands.hpp"
#include "input.hpp"
#include "job/key_path.hpp"
#include "output.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

constexpr const char* kStandardInput = "-";

/// A value as people read it, on one line: a text has no quotes.
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

/// The faults that the new text has and the old one does not have: those that the change brings.
Refusals new_faults(const Refusals& before, const Refusals& after) {
  Refusals added;
  for (const Refusal& fault : after)
    if (std::ranges::none_of(before, [&](const Refusal& one) {
          return one.why == fault.why && one.sentence == fault.sentence;
        }))
      added.push_back(fault);
  return added;
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
  const auto unreadable =
      new_faults(read_job(old->text, old->name).faults, read_job(change->text, old->name).faults);
  if (!unreadable.empty()) {
    terminal.complain(unreadable);
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
  // A job that can be read may still not be made: two values that only go together have to be set
  // one after the other.
  const Refusals after = faults_of_making(change->text, old->name, job);
  if (after.empty()) return Exit::Done;
  const auto in_the_way = new_faults(faults_of_making(old->text, old->name, job), after);
  if (!in_the_way.empty()) {
    terminal.say("Something else has to change before this job can be made:");
    terminal.complain(in_the_way);
  }
  return Exit::Done;
}

}  // namespace swathe::app
