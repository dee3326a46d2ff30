#pragma once

#include <string>
#include <vector>

#include "draw/furniture.hpp"
#include "swathe/draw.hpp"
#include "swathe/job.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// What stands across the top of a page, above its subject.
struct PageHead {
  TitleBlock title;
  std::vector<std::string> how;       ///< what to do with the page, beside the title
  bool scales = false;                ///< for pages whose subject is at full size
  std::vector<LineKind> key;          ///< kinds of line to explain
  std::vector<std::string> cautions;  ///< each two lines at most
};

/// Draws the head below the upper edge of `room`; returns what is left of the room.
plane::Box draw_page_head(Drawing& onto, const Font& labels, const plane::Box& room,
                          const PageHead& head);

/// An empty page of the job's paper: the longer way across, or the shorter.
Page empty_page(const PaperKeys& paper, bool wide);
/// A page less its unprintable margin.
plane::Box printable(const Page& page, const PaperKeys& paper);

/// "2 of 3" written into every page's head, once their number is known.
std::string of_pages(std::size_t page, std::size_t pages);

/// The kinds of line a drawing uses that a key explains, each once, in the key's order.
std::vector<LineKind> kinds_to_explain(const Drawing& drawing);

}  // namespace swathe
