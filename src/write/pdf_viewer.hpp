#pragma once

#include <string>

namespace swathe {

/// A PDF that asks what shows it to print pages at their true size, on one side of the paper, where
/// it would else fit them to the paper: Cairo has no word for that. The file is kept as it is, and
/// its catalog given anew behind it.
///
/// Requires: a PDF with a table of its objects that is not packed, as Cairo writes it up to
/// PDF 1.4, and before its version 1.17.6 up to 1.5. Source: ISO 32000-1, table 150 (PrintScaling,
/// Duplex) and 7.5.6 (incremental updates).
std::string with_true_size(std::string pdf);

}  // namespace swathe
