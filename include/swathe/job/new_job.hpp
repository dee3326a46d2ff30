#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace swathe {

/// A commented job file that makes without change: what `swathe new` writes.
std::string_view new_job_text();

/// Whether a job gives a key.
enum class Given {
  Default,   ///< left out, it has the value shown
  Needed,    ///< the value shown is an example
  Optional,  ///< left out, there is none; the value shown is an example
};

/// What a key of the job file means, in the words of `swathe new`.
struct KeyWords {
  std::string key;         ///< "cloth.flap", "bumper.from"
  std::string_view value;  ///< as it stands in a job: "\"2 in\""
  std::string_view meaning;
  std::string_view why;  ///< a sentence
  Given given = Given::Default;
};

/// Every key there is, in the order of the new job.
std::vector<KeyWords> key_words();

}  // namespace swathe
