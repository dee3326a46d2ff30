#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exit.hpp"
#include "swathe/write.hpp"
#include "terminal.hpp"

// What the commands do, one function each; the command line is read in command_line.cpp.
namespace swathe::app {

/// What is made of a job.
struct Making {
  Wanted wanted = Wanted::Everything;
  std::optional<double> scale;  ///< of proof models of the covers, where they are wanted
  bool strict = false;          ///< a rule that is not met ends with RuleNotMet
  std::string zip = {};         ///< the archive to write them into; empty for none
  std::string created = {};     ///< the date in PDF files; make_files() sets it
};

/// Asks the seven questions where somebody is there to answer.
Exit new_job(Terminal& terminal, const std::string& path);
/// One of job_kinds().
Exit new_job_like(Terminal& terminal, const std::string& kind, const std::string& path);
/// The inspector's card of a job as a file to fill in; no path: beside the job, named for it.
Exit new_measured(Terminal& terminal, const std::string& job, const std::string& path);
/// One job goes right into the folder, or into an archive, or both; of several each goes into a
/// folder there that is named for the job file's stem. An empty `folder` is none.
///
/// Requires: an archive, or a folder.
Exit make_files(Terminal& terminal, const std::vector<std::string>& jobs, const std::string& folder,
                const Making& making);
Exit check(Terminal& terminal, const std::string& job);
/// Finished bumpers, measured, against the rules: `file` is a card that was filled in.
Exit check_measured(Terminal& terminal, const std::string& job, const std::string& file);
Exit list(Terminal& terminal, const std::string& job);
Exit report(Terminal& terminal, const std::string& job);
/// `job` may be empty; so may `folder`, into which a sheet of the fonts goes.
Exit fonts(Terminal& terminal, const std::string& job, const std::string& folder);
/// `name` of a key or a check; may be empty, for a list of all.
Exit explain(Terminal& terminal, const std::string& name);
/// Gives a key of a job another value, in the file itself; none takes the key out of it.
Exit set(Terminal& terminal, const std::string& job, const std::string& key,
         const std::optional<std::string>& value);
/// The page for browsers as a new file.
Exit page(Terminal& terminal, const std::string& path);
/// `names` may be empty, for all.
Exit seasons(Terminal& terminal, const std::vector<std::string>& names);

}  // namespace swathe::app
