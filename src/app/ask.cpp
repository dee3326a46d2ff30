#include "ask.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <optional>
#include <vector>

#include "swathe/job.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

constexpr std::size_t kLongestAnswer = 4096;

/// A line that somebody types, without its end; nothing where input ends. What is past the longest
/// answer is dropped.
std::optional<std::string> read_line() {
  std::string line;
  bool any = false;
  while (true) {
    char c = 0;
    const ssize_t got = ::read(STDIN_FILENO, &c, 1);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return any ? std::optional(line) : std::nullopt;
    any = true;
    if (c == '\n') return line;
    if (line.size() < kLongestAnswer) line += c;
  }
}

/// What is wrong with the answer to a question; empty where nothing is.
std::string fault_of(const std::vector<std::string>& answers, std::size_t question) {
  const auto job = swathe::new_job(answers);
  if (job) return "";
  for (const Refusal& fault : job.error())
    if (fault.place.line == static_cast<int>(question) + 1) return fault.sentence;
  return "";
}

}  // namespace

bool can_ask(const Terminal& terminal) { return ::isatty(STDIN_FILENO) == 1 && terminal.watched(); }

tl::expected<std::string, Exit> ask_new_job(Terminal& terminal) {
  std::vector<std::string> answers;
  const std::size_t count = new_job_questions(answers).size();
  terminal.say(
      "Seven questions. Enter alone takes what stands in [ ]. Nothing is written before the "
      "last.\n");
  for (std::size_t k = 0; k < count; ++k) {
    const NewJobQuestion question = new_job_questions(answers)[k];
    const std::string number = fmt::format("{}. ", k + 1);
    terminal.say(paragraph(number, question.asks) +
                 paragraph(std::string(number.size(), ' '), "Such as: " + question.example));
    answers.emplace_back();
    while (true) {
      terminal.prompt(fmt::format("   [{}] ", question.usual));
      const auto line = read_line();
      if (!line) {
        terminal.complain("\nswathe: the input ended, and nothing is written");
        return tl::unexpected(Exit::WrongInput);
      }
      answers.back() = *line;
      const std::string fault = fault_of(answers, k);
      if (fault.empty()) break;
      terminal.complain(paragraph("   ", fault));
    }
    terminal.say("");
  }
  auto job = swathe::new_job(answers);
  if (job) return std::move(*job);
  terminal.complain(job.error());  // each answer was sound when it was given
  return tl::unexpected(Exit::WrongInput);
}

}  // namespace swathe::app
