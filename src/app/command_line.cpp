#include "command_line.hpp"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "commands.hpp"
#include "operands.hpp"
#include "scale.hpp"
#include "swathe/version.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

constexpr const char* kIntroduction =
    "Lays out the fabric covers and team numbers of a robot's bumpers: full-size\n"
    "cloth patterns, numeral sheets, a check against the season's rules, and lists of\n"
    "what to cut and buy.\n";

std::string footer() {
  std::string ends;
  for (std::size_t k = 0; k < std::size(kExitWords); ++k)
    ends += fmt::format("{}{} {}", k == 0 ? "" : "; ", k, kExitWords[k]);
  return paragraph("", fmt::format("Exit status: {}. {}", ends, kExitOfMany)) +
         "More about a command:  swathe help make\n"
         "Begin with:  swathe new JOB.toml   then:  swathe make JOB.toml -o out\n";
}

constexpr const char* kFolder = "out";

/// What these words ask for together; `all` where there are none.
Wanted wanted_of(const std::vector<std::string>& words, Wanted all) {
  if (words.empty()) return all;
  Wanted wanted;
  for (const std::string& word : words) wanted = wanted | Wanted::of_word(word).value_or(Wanted());
  return wanted;
}

std::string kind_words() {
  std::string words;
  for (const std::string_view word : kWantedWords)
    words += (words.empty() ? "" : ", ") + std::string(word);
  return words;
}

/// The words of all commands, gathered while the line is read.
struct Words {
  std::string job;                ///< empty where none is named
  std::vector<std::string> jobs;  ///< where many may be named
  std::optional<std::string> folder;
  std::string fonts_folder;       ///< empty where no sheet of fonts is asked for
  std::string scale;              ///< empty where no models are wanted
  std::vector<std::string> only;  ///< kinds of files; empty for all
  std::string zip;                ///< empty where no archive is wanted
  bool strict = false;
  std::vector<std::string> seasons;
  std::optional<std::string> like;      ///< a kind of job
  std::optional<std::string> measured;  ///< a filled-in card; for new: the job of which it is
  std::string key;                      ///< or a check; empty where all are asked for
  std::vector<std::string> asked;       ///< to be explained: a word or several; empty for all
  std::optional<std::string> value;
  bool remove = false;
  bool quiet = false, verbose = false;
  std::function<Exit(Terminal&)> action;
};

/// An archive takes the folder's place, but for one that is asked for.
std::string folder_of(const Words& words) {
  if (!words.folder) return words.zip.empty() ? kFolder : "";
  return words.folder->empty() ? "." : *words.folder;
}

void add_common(CLI::App& command, Words& words) {
  command.set_help_flag("-h,--help", "Show this help");
  command.set_version_flag("--version", std::string("swathe ") + kVersion, "Show the version");
  command.add_flag("-q,--quiet", words.quiet, "Print only the answer and what is wrong");
  command.add_flag("-v,--verbose", words.verbose, "Say more about what is done");
}

class Commands {
 public:
  Commands(CLI::App& app, Words& words) : app_(app), words_(words) {}

  template <class Action>
  CLI::App& add(const char* name, const char* description, Action action) {
    CLI::App& command = *app_.add_subcommand(name, description);
    add_common(command, words_);
    command.callback([&said = words_, action] {  // outlives this maker of commands
      said.action = [action, words = said](Terminal& terminal) { return action(terminal, words); };
    });
    return command;
  }

  template <class Action>
  CLI::App& add_for_job(const char* name, const char* description, Action action) {
    CLI::App& command = add(name, description, action);
    command.add_option("JOB", words_.job, "The job file; - reads standard input")->required();
    return command;
  }

  void add_making(const char* name, const char* description, Wanted wanted) {
    CLI::App& command =
        add(name, description, [name, wanted](Terminal& terminal, const Words& words) {
          if (const auto asks = folder_meant(name, words.jobs)) {
            terminal.complain("swathe: " + *asks);
            return Exit::WrongInput;
          }
          return make_files(
              terminal, words.jobs, folder_of(words),
              {wanted_of(words.only, wanted), read_scale(words.scale), words.strict, words.zip});
        });
    command.add_option("JOB", words_.jobs, "The job files; - alone reads standard input")
        ->required();
    command
        .add_option("-o,--output", words_.folder,
                    "The folder to write into; many jobs get one each in it")
        ->type_name("DIR")
        ->default_str(kFolder);
    if (wanted == Wanted::Everything) add_choices(command);
    if (wanted != Wanted::Everything && wanted != Wanted::Patterns) return;
    command.add_option("--scale", words_.scale, "Also make a small model of each cover, of card")
        ->type_name("1/4")
        ->check([](const std::string& scale) {
          return read_scale(scale)
                     ? std::string()
                     : named(scale) + " is not a scale, expected 1/20 to 1, such as 1/4";
        });
  }

 private:
  void add_choices(CLI::App& command) {
    command.add_option("--only", words_.only, "Only files of these kinds, such as tiles,book")
        ->type_name("KINDS")
        ->delimiter(',')
        ->allow_extra_args(false)
        ->check([](const std::string& word) {
          return Wanted::of_word(word)
                     ? std::string()
                     : fmt::format("{} is not a kind, expected {}", named(word), kind_words());
        });
    command.add_option("--zip", words_.zip, "All into one archive; into a folder too only with -o")
        ->type_name("FILE")
        ->check([](const std::string& file) {
          return file.size() > std::string_view(".zip").size() && file.ends_with(".zip")
                     ? std::string()
                     : named(file) + " is no name for an archive, expected one like sheets.zip";
        });
    command.add_flag("--strict", words_.strict,
                     "End with 1 where a rule is not met; all is written");
  }

  CLI::App& app_;
  Words& words_;
};

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

void add_new(Commands& commands, Words& words) {
  CLI::App& command = commands.add(
      "new", "Ask about your bumpers and write a job file", [](Terminal& terminal, const Words& w) {
        const std::string path = w.job.empty() ? "job.toml" : w.job;
        if (w.measured) return new_measured(terminal, *w.measured, w.job);
        return w.like ? new_job_like(terminal, *w.like, path) : new_job(terminal, path);
      });
  command.add_option("JOB", words.job, "The new file to write; - for standard output")
      ->default_str("job.toml");
  CLI::Option* like =
      command
          .add_option("--like", words.like, "Ask nothing: a job like an example, such as hexagon")
          ->type_name("KIND");
  command.add_option("--measured", words.measured, "Write this job's inspector's card, to fill in")
      ->type_name("JOB")
      ->excludes(like);
}

void add_commands(CLI::App& app, Words& words) {
  Commands commands(app, words);
  add_new(commands, words);
  commands.add_making("make", "Make every sheet, list and report", Wanted::Everything);
  commands
      .add_for_job("check", "Check the job against its season's rules",
                   [](Terminal& terminal, const Words& w) {
                     return w.measured ? check_measured(terminal, w.job, *w.measured)
                                       : check(terminal, w.job);
                   })
      .add_option("--measured", words.measured, "Check what you measured: a card, filled in")
      ->type_name("FILE");
  commands.add_making("pattern", "Make the cloth patterns only", Wanted::Patterns);
  commands.add_making("numerals", "Make the numeral sheets only", Wanted::Numerals);
  commands.add_making("views", "Make the views only: what people see, who can read it",
                      Wanted::Views);
  commands.add_for_job("list", "List boards, padding, cloth, numerals and fasteners",
                       [](Terminal& terminal, const Words& w) { return list(terminal, w.job); });
  commands.add_for_job("report", "Print the report as JSON",
                       [](Terminal& terminal, const Words& w) { return report(terminal, w.job); });
  commands
      .add("page", "Write the page for browsers, with nothing to install",
           [](Terminal& terminal, const Words& w) {
             return page(terminal, w.job.empty() ? "swathe.html" : w.job);
           })
      .add_option("FILE", words.job, "The new file to write; - for standard output")
      ->default_str("swathe.html");
  CLI::App& fonts_command = commands.add(
      "fonts", "Measure the bundled fonts at the height in the rules",
      [](Terminal& terminal, const Words& w) { return fonts(terminal, w.job, w.fonts_folder); });
  fonts_command.add_option("JOB", words.job, "Measure for this job's season and number");
  fonts_command
      .add_option("-o,--output", words.fonts_folder,
                  "Also write fonts.pdf into it: the number in each font")
      ->type_name("DIR");
  commands
      .add("seasons", "List the seasons' rules, and how sure each value is",
           [](Terminal& terminal, const Words& w) { return seasons(terminal, w.seasons); })
      .add_option("SEASON", words.seasons, "Only these seasons");
  commands
      .add("explain", "Explain a key or table of the job, a check, or a word",
           [](Terminal& terminal, const Words& w) { return explain(terminal, joined(w.asked)); })
      .add_option("KEY", words.asked,
                  "Such as cloth.flap, numeral-stroke or noodle; leave it out to list all");
  CLI::App& setting = commands.add_for_job(
      "set", "Change one value in a job file, and keep all the others",
      [](Terminal& terminal, const Words& w) {
        if (w.value || w.remove) return set(terminal, w.job, w.key, w.value);
        terminal.complain("swathe: set has no VALUE, expected one, or --remove in its place");
        return Exit::WrongInput;
      });
  setting.add_option("KEY", words.key, "Such as frame.width or bumper.2.from")->required();
  CLI::Option* value = setting.add_option(
      "VALUE", words.value, "As the file has it, or text: 27.5, \"27 in\", '[\"front\", \"50%\"]'");
  CLI::Option* remove =
      setting.add_flag("--remove", words.remove, "Take the key out; give no VALUE then");
  remove->excludes(value);
}

void set_up(CLI::App& app, Words& words) {
  add_common(app, words);
  app.footer(footer());
  app.require_subcommand(1);
  app.get_formatter()->column_width(24);
  add_commands(app, words);
}

/// "help" and "version" as words, for those who do not think of an option: "swathe help make".
std::vector<const char*> with_options(int count, const char* const* words) {
  std::vector<const char*> all(words, words + count);
  if (count < 2) return all;
  const std::string_view first = all[1];
  if (first == "version" && count == 2) all[1] = "--version";
  if (first != "help") return all;
  all.erase(all.begin() + 1);
  all.push_back("--help");
  return all;
}

std::function<Exit(Terminal&)> answering(std::string text) {
  return [text = std::move(text)](Terminal& terminal) {
    terminal.answer(text);
    return Exit::Done;
  };
}

std::string no_command(const CLI::App& app, const std::string& word) {
  std::string names;
  for (const CLI::App* command : app.get_subcommands({}))
    names += (names.empty() ? "" : ", ") + command->get_name();
  return fmt::format("{}; the commands are {}",
                     word.empty() ? "no command is given" : named(word) + " is not a command",
                     names);
}

}  // namespace

tl::expected<Request, std::string> read_command_line(int count, const char* const* words) {
  CLI::App app(kIntroduction, "swathe");
  Words said;
  set_up(app, said);
  const auto loudness = [&] {
    return said.quiet ? Loudness::Quiet : said.verbose ? Loudness::Verbose : Loudness::Normal;
  };
  const std::vector<const char*> all = with_options(count, words);
  try {
    app.parse(static_cast<int>(all.size()), all.data());
  } catch (const CLI::CallForHelp&) {
    const auto chosen = app.get_subcommands();
    return Request{loudness(),
                   answering(chosen.empty() ? app.help() : chosen.front()->help("swathe"))};
  } catch (const CLI::CallForVersion&) {
    return Request{loudness(), answering(fmt::format("swathe {}\n", kVersion))};
  } catch (const CLI::ParseError& error) {
    // What the library says of a wrong first word, or none, does not say what there is.
    if (app.get_subcommands().empty())
      return tl::unexpected(no_command(app, all.size() > 1 ? all[1] : ""));
    return tl::unexpected(named(error.what()));
  }
  return Request{loudness(), said.action};
}

void describe_command_line(const std::function<void(const CLI::App&)>& look) {
  CLI::App app(kIntroduction, "swathe");
  Words words;
  set_up(app, words);
  look(app);
}

}  // namespace swathe::app
