#pragma once

#include <cairo.h>

#include <memory>
#include <new>
#include <stdexcept>
#include <string>

// Cairo's handles owned, its faults thrown, its bytes caught. For the sources of this room only.
namespace swathe {

struct CairoFree {
  void operator()(cairo_t* p) const { cairo_destroy(p); }
  void operator()(cairo_surface_t* p) const { cairo_surface_destroy(p); }
  void operator()(cairo_font_face_t* p) const { cairo_font_face_destroy(p); }
};
template <class T>
using CairoHandle = std::unique_ptr<T, CairoFree>;

inline void throw_on(cairo_status_t status) {
  if (status == CAIRO_STATUS_NO_MEMORY) throw std::bad_alloc();
  if (status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("drawing failed: ") + cairo_status_to_string(status));
}

/// Appends to the std::string behind `bytes`. Nothing is thrown through Cairo.
inline cairo_status_t append_bytes(void* bytes, const unsigned char* data, unsigned length) {
  try {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
  } catch (...) {
    return CAIRO_STATUS_NO_MEMORY;
  }
}

}  // namespace swathe
