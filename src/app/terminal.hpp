#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"

namespace swathe::app {

enum class Loudness { Quiet, Normal, Verbose };

/// More faults than this at once help nobody.
inline constexpr std::size_t kMostTold = 50;

enum class Paint { Plain, Good, Doubtful, Bad };

/// Where a run writes: the answer goes to standard output, messages go to standard error.
class Terminal {
 public:
  /// Looks at standard output, standard error and the environment (NO_COLOR) once.
  Terminal();

  /// One that keeps what it is told, for this one to pass on; it speaks in the same way.
  /// `subject` is what its work is about, such as a job's name.
  Terminal keeping(std::string_view subject) const;
  /// Says what the other kept, in the order in which it was told; the other forgets it.
  void pass_on(Terminal& kept);

  void set_loudness(Loudness loudness) { loudness_ = loudness; }

  void answer(std::string_view text);        ///< what was asked for, quiet or not
  void say(std::string_view text);           ///< a message; not when quiet
  void detail(std::string_view text);        ///< a message; only when verbose
  void complain(std::string_view text);      ///< what went wrong, quiet or not
  void complain(const Refusals& refusals);   ///< the first kMostTold, and how many more there are
  void out_of_memory() noexcept;             ///< a complaint that takes no memory
  static void say_out_of_memory() noexcept;  ///< the same where there is no terminal

  /// A line that stands until something else is said; not when quiet, and only where standard error
  /// is a terminal. Requires: printable.
  void progress(std::string_view line);

  /// A line without an end, behind which somebody answers.
  void prompt(std::string_view text);
  /// Whether somebody sees what is said: standard error is a terminal, and it is not to be quiet.
  bool watched() const { return watched_ && loudness_ != Loudness::Quiet; }

  /// The text in color, where standard output is a terminal and NO_COLOR is unset.
  std::string painted(std::string_view text, Paint paint) const;

  /// Nothing, or why an answer could not be written completely: "No space left on device".
  const std::string& trouble() const { return trouble_; }

 private:
  enum class To { Answer, Talk };
  struct Words {
    To to;
    std::string text;
  };

  void put(To to, std::string text);
  void talk(std::string_view text);
  void wipe_progress();

  Loudness loudness_ = Loudness::Normal;
  bool color_ = false, watched_ = false;
  std::size_t progress_ = 0;  ///< columns of the line that stands
  std::string subject_, trouble_;
  bool keeps_ = false, memory_gave_out_ = false;
  std::vector<Words> kept_;
};

}  // namespace swathe::app
