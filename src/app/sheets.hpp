#pragma once

#include <tl/expected.hpp>
#include <vector>

#include "exit.hpp"
#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// The sheets of a job, and the font in which they are lettered.
struct Sheets {
  Font labels;
  std::vector<Sheet> list;
};

/// If there is only an exit status, the terminal has been told what is wrong.
tl::expected<Sheets, Exit> sheets_of(Terminal& terminal, const Made& made);

}  // namespace swathe::app
