#pragma once

// What the checks ask.

#include <string>
#include <vector>

namespace swathe {

/// What a check means, in words.
struct CheckWords {
  std::string id;    ///< Finding::id
  std::string asks;  ///< what is so where it passes, without a full stop
  std::string why;   ///< a sentence
};

/// Every check there is, in the order in which they are made.
std::vector<CheckWords> check_words();

}  // namespace swathe
