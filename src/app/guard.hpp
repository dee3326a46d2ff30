#pragma once

#include <fmt/format.h>

#include <exception>
#include <new>

#include "exit.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// How `action()` ends; if it throws, that is MachineFailed and the terminal has been told.
template <class Action>
Exit guarded(Terminal& terminal, Action action) {
  try {
    try {
      return action();
    } catch (const std::bad_alloc&) {
      throw;
    } catch (const std::exception& error) {
      terminal.complain(fmt::format("swathe: {}; this is a bug in swathe", error.what()));
    }
  } catch (const std::bad_alloc&) {
    terminal.out_of_memory();
  }
  return Exit::MachineFailed;
}

}  // namespace swathe::app
