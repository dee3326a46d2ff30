#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace swathe::app {

struct EverydayWord {
  std::string word;                ///< small, one of a thing: "noodle", "paper size"
  std::vector<std::string> names;  ///< keys of a job, tables of it and checks that are about it
};

/// What people call things (data/en/everyday_words.txt), as the file has them.
const std::vector<EverydayWord>& everyday_words();

/// The names that are about what somebody calls a thing, whether it is one or many, in capital
/// letters or not; none where nobody is known to call anything so.
std::vector<std::string> names_about(std::string_view called);

/// A word in small letters, without the s of many.
std::string plain_word(std::string_view word);

}  // namespace swathe::app
