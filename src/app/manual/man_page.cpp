#include <fmt/format.h>

#include <cctype>

#include "app/exit.hpp"
#include "app/manual/pages.hpp"
#include "app/text.hpp"

namespace swathe::app {
namespace {

/// Text that the formatter takes as it is.
std::string plain(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else if (c == '\'')
      out += "\\(aq";
    else
      out += c;
  }
  return out.starts_with('.') ? "\\&" + out : out;
}

std::string bold(std::string_view text) { return "\\fB" + plain(text) + "\\fR"; }
std::string slanted(std::string_view text) { return "\\fI" + plain(text) + "\\fR"; }

/// "The folder to write into (out)."
std::string sentence(std::string_view words, const std::string& preset) {
  std::string text(words);
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  if (!preset.empty()) text += fmt::format(" ({})", preset);
  return paragraph("", plain(text + "."));
}

/// "[JOB]", "JOB ..."
std::string operand(const OperandWords& words) {
  const std::string name = slanted(words.value.name) + (words.many ? " ..." : "");
  return words.needed ? name : "[" + name + "]";
}

std::string head(const CommandWords& command) {
  std::string text = bold(command.name);
  for (const OperandWords& words : command.operands) text += " " + operand(words);
  return text;
}

std::string tagged(const std::string& tag, const std::string& text) {
  return ".TP\n" + tag + "\n" + text;
}

std::string option(const OptionWords& words) {
  std::string tag;
  for (const std::string& name : words.names) tag += (tag.empty() ? "" : ", ") + bold(name);
  if (!words.value.name.empty()) tag += " " + slanted(words.value.name);
  return tagged(tag, sentence(words.words, words.preset));
}

std::string command_text(const CommandWords& command) {
  std::string text = tagged(head(command), sentence(command.words, ""));
  std::string below;
  for (const OperandWords& words : command.operands)
    below += tagged(slanted(words.value.name), sentence(words.words, words.preset));
  for (const OptionWords& words : command.options) below += option(words);
  return text + (below.empty() ? "" : ".RS\n" + below + ".RE\n");
}

std::string synopsis(const Description& description) {
  std::string text;
  for (const CommandWords& command : description.commands)
    text += fmt::format("{}{} {}{}\n", text.empty() ? ".SH SYNOPSIS\n" : ".br\n", bold("swathe"),
                        head(command),
                        command.options.empty() ? "" : " [" + slanted("OPTION") + " ...]");
  return text;
}

std::string small_first(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

constexpr std::string_view kJobs =
    R"(.PP
A job is a text file.
\fBswathe new\fR writes one to start from, and \fBswathe explain\fR says what its keys mean.
The answer goes to standard output, notes and errors go to standard error.
)";

constexpr std::string_view kEnvironment =
    R"(.SH ENVIRONMENT
.TP
.B SOURCE_DATE_EPOCH
The date to write into PDF files, in whole seconds since 1970; anything else is refused.
If it is not set, the date is fixed: the same job gives the same bytes.
.TP
.B NO_COLOR
If it is set, the terminal shows no colors.
)";

constexpr std::string_view kExamples =
    R"(.SH EXAMPLES
.nf
swathe new robot.toml
swathe check robot.toml
swathe make robot.toml \-o out
.fi
.SH CAUTIONS
The season\(aqs manual and its updates decide, and the inspector has the last word.
Print at 100 %, and measure the 100 mm scales of the test page before you print the rest.
)";

}  // namespace

std::string man_page(const Description& description, const std::string& name_line,
                     const std::string& version) {
  std::string text = fmt::format(".TH SWATHE 1 \"\" \"{}\" \"User Commands\"\n", plain(version));
  text += ".SH NAME\n" + paragraph("", "swathe \\- " + plain(small_first(name_line)));
  text += synopsis(description);
  text += ".SH DESCRIPTION\n" + paragraph("", plain(description.introduction));
  text += kJobs;
  text += ".SH COMMANDS\n";
  for (const CommandWords& command : description.commands) text += command_text(command);
  text += ".SH OPTIONS\nEvery command has these.\n";
  for (const OptionWords& words : description.options) text += option(words);
  text += kEnvironment;
  text += ".SH \"EXIT STATUS\"\n";
  for (std::size_t k = 0; k < std::size(kExitWords); ++k)
    text += tagged(bold(fmt::format("{}", k)), sentence(kExitWords[k], ""));
  text += ".PP\n" + paragraph("", plain(kExitOfMany));
  text += kExamples;
  return text;
}

}  // namespace swathe::app
