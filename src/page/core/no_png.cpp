#include <stdexcept>

#include "swathe/write.hpp"

namespace swathe {

/// In place of write/png.cpp, which wants a Cairo that has PNG. A page has its own ways to dots.
std::string to_png(const Page&, const Font&, double) {
  throw std::runtime_error("a page writes no PNG");
}

}  // namespace swathe
