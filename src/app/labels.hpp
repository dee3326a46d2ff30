#pragma once

#include <tl/expected.hpp>

#include "exit.hpp"
#include "swathe/type.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// The face in which sheets are lettered, opened. What is wrong has been said where there is only
/// an exit status.
tl::expected<Font, Exit> open_labels(Terminal& terminal);

}  // namespace swathe::app
