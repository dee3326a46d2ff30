#pragma once

#include <string>
#include <string_view>

#include "swathe/base/outcome.hpp"

namespace swathe::app {

enum class Loudness { Quiet, Normal, Verbose };

enum class Paint { Plain, Good, Doubtful, Bad };

/// Where a run speaks: the answer goes to standard output, the talk to standard error.
class Terminal {
 public:
  /// Looks at standard output and the environment (NO_COLOR) once.
  Terminal();

  void set_loudness(Loudness loudness) { loudness_ = loudness; }

  void answer(std::string_view text);          ///< what was asked for, quiet or not
  void say(std::string_view text) const;       ///< talk; not when quiet
  void detail(std::string_view text) const;    ///< talk; only when verbose
  void complain(std::string_view text) const;  ///< what went wrong, quiet or not
  void complain(const Refusals& refusals) const;

  /// The text in colour, where standard output is a terminal and NO_COLOR is unset.
  std::string painted(std::string_view text, Paint paint) const;

  /// Nothing, or why an answer did not go out whole: "No space left on device".
  const std::string& trouble() const { return trouble_; }

 private:
  Loudness loudness_ = Loudness::Normal;
  bool colour_ = false;
  std::string trouble_;
};

}  // namespace swathe::app
