#pragma once

// All of the library.

#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/check.hpp"
#include "swathe/draw.hpp"
#include "swathe/form.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"
#include "swathe/numeral.hpp"
#include "swathe/pattern.hpp"
#include "swathe/plane.hpp"
#include "swathe/rules.hpp"
#include "swathe/screen.hpp"
#include "swathe/sheet.hpp"
#include "swathe/sight.hpp"
#include "swathe/stock.hpp"
#include "swathe/type.hpp"
#include "swathe/version.hpp"
#include "swathe/write.hpp"
