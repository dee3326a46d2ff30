#pragma once

namespace swathe {

/// Whether a sheet's pages are drawn. To be counted and measured they may be left blank wherever
/// their number and sizes are known without their drawings: they have names and sizes all the same.
enum class PageFill { Drawn, Blank };

}  // namespace swathe
